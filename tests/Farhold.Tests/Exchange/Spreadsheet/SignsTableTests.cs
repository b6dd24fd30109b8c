using Farhold.Exchange.HandOver;
using Farhold.Exchange.Spreadsheet;

namespace Farhold.Tests.Exchange.Spreadsheet;

public class SignsTableTests
{
    [Fact]
    public void Every_look_is_a_row_with_its_numbers()
    {
        var table = Rows(SignsTable.Write(CareFacts.Of(Demo.Record(), ShippedProtocol.Protocol, Some.At("12:00"))));
        Assert.Equal(1 + Demo.Record().Readings[0].Of(Kind.SignsTaken).Length, table.Count);
        Assert.All(table, row => Assert.Equal(table[0].Count, row.Count));
        var amended = table.Single(r => r[0] == "m2rt-3");
        Assert.Equal("88", amended[table[0].IndexOf("heartRate (/min)")]);
        Assert.Equal("yes", amended[table[0].IndexOf("corrected")]);
        Assert.Equal("", amended[table[0].IndexOf("spo2 (%)")]);
    }

    /// <summary>Source: OWASP, CSV Injection (from memory).</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+cmd|' /C calc'!A0")]
    [InlineData("-2")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("  =HYPERLINK(\"x\")")]
    [InlineData("＝1")]
    public void No_name_becomes_a_formula(string name)
    {
        var entry = EntryWriting.Write(new("a7k3", 1), Happened.At(Some.At("08:00")), Some.At("08:00"), name, new Payload.SignsTaken { HeartRate = 80 });
        var rows = Rows(SignsTable.Write(CareFacts.Of(new CareRecord([entry], []), ShippedProtocol.Protocol, Some.At("08:30"))));
        Assert.Equal("'" + name, rows[1][3]);
    }

    [Theory]
    [InlineData("Ane \"the\" second, of Skarvedal")]
    [InlineData("two\nlines")]
    [InlineData("Ąžuolas")]
    public void Any_other_name_comes_back_as_it_was(string name)
    {
        var entry = EntryWriting.Write(new("a7k3", 1), Happened.At(Some.At("08:00")), Some.At("08:00"), name, new Payload.SignsTaken { HeartRate = 80 });
        var rows = Rows(SignsTable.Write(CareFacts.Of(new CareRecord([entry], []), ShippedProtocol.Protocol, Some.At("08:30"))));
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
