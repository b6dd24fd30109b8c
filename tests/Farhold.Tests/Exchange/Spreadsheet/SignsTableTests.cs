using Farhold.Exchange.HandOver;
using Farhold.Exchange.Spreadsheet;

namespace Farhold.Tests.Exchange.Spreadsheet;

public class SignsTableTests
{
    [Fact]
    public void Every_look_is_a_row_with_its_numbers()
    {
        var table = Rows(SignsTable.Write(CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("12:00"))));
        var state = Demo.Record().Readings[0];
        Assert.Equal(1 + state.Of(Kind.SignsTaken).Length + state.Of(Kind.CasualtyLookedOver).Length, table.Count);
        Assert.All(table, row => Assert.Equal(table[0].Count, row.Count));
        var amended = table.Single(r => r[0] == "m2rt-3");
        Assert.Equal("88", amended[table[0].IndexOf("heartRate (/min)")]);
        Assert.Equal("yes", amended[table[0].IndexOf("corrected")]);
        Assert.Equal("", amended[table[0].IndexOf("spo2 (%)")]);
    }

    [Fact]
    public void A_look_over_the_casualty_is_a_row_among_them()
    {
        Entry Said(int number, string at, Payload what) =>
            EntryWriting.Write(new("a7k3", number), Happened.At(Some.At(at)), Some.At(at), "Ane", what);
        var rows = Rows(
            SignsTable.Write(
                CareFacts.Of(
                    new CareRecord(
                        [
                            Said(1, "08:00", new Payload.SignsTaken { HeartRate = 80 }),
                            Said(2, "08:05", new Payload.CasualtyLookedOver(BleedingElsewhere: false, VeryCold: true)),
                            Said(3, "08:10", new Payload.SignsTaken { HeartRate = 84 }),
                        ],
                        []
                    ),
                    ShippedRules.Book,
                    Some.At("08:30")
                )
            )
        );
        Assert.Equal(["id", "a7k3-1", "a7k3-2", "a7k3-3"], rows.Select(r => r[0]));
        Assert.All(rows, row => Assert.Equal(rows[0].Count, row.Count));
        string Cell(int row, string head) => rows[row][rows[0].IndexOf(head)];
        Assert.Equal(
            ("no", "yes", "", ""),
            (Cell(2, "bleedingElsewhere"), Cell(2, "veryCold"), Cell(2, "bloodThinner"), Cell(2, "heartRate (/min)"))
        );
        Assert.Equal("", Cell(3, "bleedingElsewhere"));
    }

    /// <summary>Source: OWASP, CSV Injection (from memory).</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+cmd|' /C calc'!A0")]
    [InlineData("-2")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\0=1")]
    [InlineData("  =HYPERLINK(\"x\")")]
    [InlineData("＝1")]
    public void No_name_becomes_a_formula(string name)
    {
        var entry = EntryWriting.Write(
            new("a7k3", 1),
            Happened.At(Some.At("08:00")),
            Some.At("08:00"),
            name,
            new Payload.SignsTaken { HeartRate = 80 }
        );
        var rows = Rows(SignsTable.Write(CareFacts.Of(new CareRecord([entry], []), ShippedRules.Book, Some.At("08:30"))));
        Assert.Equal("'" + name, rows[1][3]);
    }

    [Theory]
    [InlineData("Ane \"the\" second, of Skarvedal")]
    [InlineData("two\nlines")]
    [InlineData("Ąžuolas")]
    public void Any_other_name_comes_back_as_it_was(string name)
    {
        var entry = EntryWriting.Write(
            new("a7k3", 1),
            Happened.At(Some.At("08:00")),
            Some.At("08:00"),
            name,
            new Payload.SignsTaken { HeartRate = 80 }
        );
        var rows = Rows(SignsTable.Write(CareFacts.Of(new CareRecord([entry], []), ShippedRules.Book, Some.At("08:30"))));
        Assert.Equal(name, rows[1][3]);
    }

    /// <summary>A reader of RFC 4180 of its own.</summary>
    private static List<List<string>> Rows(string csv)
    {
        var rows = new List<List<string>> { new() };
        var (cell, quoted) = (new System.Text.StringBuilder(), false);
        for (var i = 0; i < csv.Length; i++)
        {
            if (quoted && csv[i] == '"' && i + 1 < csv.Length && csv[i + 1] == '"')
                cell.Append(csv[i++]);
            else if (csv[i] == '"')
                quoted = !quoted;
            else if (!quoted && csv[i] is ',' or '\n' && !quoted)
            {
                rows[^1].Add(cell.ToString().TrimEnd('\r'));
                cell.Clear();
                if (csv[i] == '\n')
                    rows.Add([]);
            }
            else
                cell.Append(csv[i]);
        }

        return rows[..^1];
    }
}
