using System.Text;

namespace Farhold.Tests.Records;

/// <summary>What this version can't make anything of may be what forbids an attempt: a doubt until a person has looked.</summary>
public class NotUnderstoodTests
{
    private const string Head = """{"id":"b-1","happened":"2031-05-04T11:58:00Z","recorded":"2031-05-04T11:58:00Z","by":"Tor","kind":""";

    /// <param name="names">What of the line is not understood; with the value where it is a field.</param>
    [Theory]
    [InlineData("\"signs.tcken\",\"heartRate\":150}", "signs.tcken")]
    [InlineData("\"signs.taken\",\"heartRbte\":150}", "heartRbte 150")]
    [InlineData("\"note\",\"text\":\"calm\",\"heartRate\":150}", "heartRate 150")]
    [InlineData("\"note\",\"text\":\"calm\",\"mood\":{\"x\":[1]}}", "mood {\"x\":[1]}")]
    [InlineData("\"signs.taken\",\"gcs\":{\"eye\":4,\"motpr\":1}}", "gcs.motpr 1")]
    [InlineData("\"signs.taken\",\"gcs\":{\"eye\":4,\"heartRate\":150}}", "gcs.heartRate 150")]
    [InlineData("\"note\",\"text\":\"calm\",\"practice\":\"perhaps\"}", "practice perhaps")]
    [InlineData("\"note\",\"text\":\"calm\",\"$schema\":\"x\"}", "$schema x")]
    [InlineData("\"entry.withdrawn\",\"target\":\"a-99\",\"reason\":\"twice\",\"unless\":true}", "unless true")]
    public void A_kind_or_a_field_that_is_not_known_blocks_an_attempt_until_someone_has_looked(string rest, string names)
    {
        var record = Case.Well.Record;
        record.Add(Read(Head + rest));
        var doubt = Assert.Single(record.Doubts);
        Assert.EndsWith(": " + names, doubt.Text, StringComparison.Ordinal);
        Assert.Contains("b-1", doubt.Text, StringComparison.Ordinal);
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
        record.Add(
            EntryWriting.Write(
                new("c", 1),
                Happened.At(Case.Now),
                Case.Now,
                "Ane",
                new Payload.TaskDone(doubt.Id, "nothing to do with the limb")
            )
        );
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
        Assert.Equal([doubt], record.Doubts);
    }

    [Theory]
    [InlineData("\"note\",\"text\":\"calm\",\"practice\":true}")]
    [InlineData("\"note\",\"text\":\"calm\",\"previous\":\"0000000000000000000000000000000000000000000000000000000000000000\"}")]
    [InlineData("\"note\",\"text\":\"calm\",\"heartRate\":null,\"mood\":null}")]
    [InlineData("\"signs.taken\",\"gcs\":{\"eye\":null,\"mood\":null}}")]
    public void What_every_entry_may_carry_and_what_is_null_is_no_doubt(string rest)
    {
        var record = Case.Well.Record;
        record.Add(Read(Head + rest));
        Assert.Empty(record.Doubts);
    }

    /// <summary>Read on the phone that mends it.</summary>
    private static CareRecord Here => new(Case.Well.Record.Entries, []) { Writer = "c" };

    [Fact]
    public void A_range_of_time_with_more_in_it_than_its_ends_is_not_understood() =>
        Assert.Equal(
            "happened.likely",
            Assert
                .Single(
                    Read(
                        """{"id":"b-1","happened":{"earliest":"2031-05-04T11:00:00Z","latest":"2031-05-04T11:58:00Z","likely":"2031-05-04T11:30:00Z"},"recorded":"2031-05-04T11:58:00Z","by":"Tor","kind":"note","text":"calm"}"""
                    ).NotUnderstood
                )
                .Name
        );

    [Fact]
    public void Whoever_withdraws_such_an_entry_has_settled_it()
    {
        var record = Here;
        record.Add(Read(Head + "\"signs.taken\",\"heartRbte\":150}"));
        record.Add(
            EntryWriting.Write(new("c", 1), Happened.At(Case.Now), Case.Now, "Ane", new Payload.EntryWithdrawn(new("b", 1), "mistyped"))
        );
        Assert.Empty(record.Doubts);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    [Fact]
    public void Whoever_corrects_it_so_that_nothing_strange_is_left_has_settled_it()
    {
        var record = Here;
        record.Add(Read(Head + "\"signs.taken\",\"heartRbte\":84}"));
        record.Add(Amends(1, "b-1", """{"heartRbte":null,"heartRate":84}"""));
        Assert.Empty(record.Doubts);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    [Theory]
    [InlineData("""{"heartRate":84}""", "heartRbte 150")]
    [InlineData("""{"heartRbte":null,"mood":1}""", "mood 1")]
    [InlineData("""{"heartRbte":null,"heartRcte":null}""", "heartRcte null")]
    public void A_correction_that_leaves_or_brings_what_is_not_understood_is_a_doubt(string replace, string names)
    {
        var record = Here;
        record.Add(Read(Head + "\"signs.taken\",\"heartRbte\":150}"));
        var before = Assert.Single(record.Doubts);
        record.Add(Amends(1, "b-1", replace));
        var after = Assert.Single(record.Doubts);
        Assert.EndsWith(": " + names, after.Text, StringComparison.Ordinal);
        Assert.NotEqual(before.Id, after.Id);
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
    }

    [Fact]
    public void A_correction_that_misspells_what_it_takes_back_is_a_doubt()
    {
        var record = Here;
        var signs = record.Entries.Last(e => e.Payload is Payload.SignsTaken).Id;
        record.Add(Amends(1, signs.ToString(), """{"heartRbte":null}"""));
        Assert.EndsWith(": heartRbte null", Assert.Single(record.Doubts).Text, StringComparison.Ordinal);
        record.Add(Amends(2, signs.ToString(), """{"spo2":null}"""));
        Assert.Empty(record.Doubts);
    }

    [Fact]
    public void What_two_entries_of_one_id_say_is_doubted_of_both()
    {
        var record = Case.Well.Record;
        record.Add(Read(Head + "\"note\",\"text\":\"calm\"}"));
        record.Add(Read(Head + "\"note\",\"text\":\"calm\",\"z\":1}"));
        record.Add(Read(Head + "\"note\",\"text\":\"calm\",\"y\":1}"));
        Assert.Equal(["conflict", "unknown", "unknown"], record.Doubts.Select(d => d.Id.Split('-')[0]));
    }

    [Fact]
    public void It_is_the_same_doubt_however_the_line_is_written_and_another_once_the_entry_says_something_else()
    {
        var doubt = Doubt.OfNotUnderstood(Read(Head + "\"note\",\"text\":\"calm\",\"mood\":1}"));
        Assert.Equal(doubt.Id, Doubt.OfNotUnderstood(Read(Head + " \"note\", \"mood\":1.0, \"text\":\"c\\u0061lm\" }")).Id);
        Assert.NotEqual(doubt.Id, Doubt.OfNotUnderstood(Read(Head + "\"note\",\"text\":\"calm\",\"mood\":2}")).Id);
    }

    [Fact]
    public void The_log_shows_what_it_says()
    {
        var record = new CareRecord(
            [
                Read(Head + "\"signs.taken\",\"heartRbte\":150}"),
                Read(Head.Replace("b-1", "b-2", StringComparison.Ordinal) + "\"signs.tcken\",\"heartRate\":151}"),
            ],
            []
        );
        Assert.Equal(
            [
                "Signs taken, none that this version knows [NOT UNDERSTOOD: heartRbte 150]",
                "Entry of a newer version (signs.tcken): kept, counted in nothing [NOT UNDERSTOOD: heartRate 151]",
            ],
            LogText.Lines(record).Select(l => l.Text)
        );
    }

    [Fact]
    public void Each_is_named_with_its_line_and_column()
    {
        var text =
            Head + "\"note\",\"text\":\"é\",\"mood\":1}\n\n" + Head.Replace("b-1", "b-2", StringComparison.Ordinal) + "\"signs.tcken\"}\n";
        var file = ((Read<RecordFile>.Usable)RecordReader.Read(Encoding.UTF8.GetBytes(text), "x")).Value;
        Assert.Equal(
            [(1, text.IndexOf("\"mood", StringComparison.Ordinal) + 1), (3, Head.Length + 2)],
            file.NotUnderstood("x").Select(r => (r.Line, r.Column))
        );
        Assert.Equal(
            [
                "the field mood is not understood in an entry of the kind note: it is kept, and counts for nothing",
                "the kind signs.tcken is not known to this version: the entry is kept, and counts for nothing",
            ],
            file.NotUnderstood("x").Select(r => r.Reason)
        );
    }

    [Fact]
    public void What_a_correction_replaces_is_named_where_it_stands_in_its_own_line()
    {
        var target = Case.Well.Record.Entries.Last(e => e.Payload is Payload.SignsTaken);
        var amendment = Amends(1, target.Id.ToString(), """{"pale":true,"gcs":{"motpr":3},"heartRbte":150}""");
        var line = amendment.Json.ToString();
        Assert.Equal(
            [
                ("gcs.motpr", line.IndexOf("\"gcs\"", StringComparison.Ordinal)),
                ("heartRbte", line.IndexOf("\"heartRbte\"", StringComparison.Ordinal)),
            ],
            Amendments.NotUnderstood(target, amendment).Select(n => (n.Name, n.Offset))
        );
    }

    private static Verdict VerdictOf(CareRecord record) => Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict;

    private static Entry Amends(int number, string target, string replace) =>
        EntryWriting.Write(
            new("c", number),
            Happened.At(Case.Now),
            Case.Now,
            "Ane",
            new Payload.EntryAmended(EntryId.TryParse(target)!.Value, JsonText.Of(replace))
        );

    private static Entry Read(string line) => ((Read<Entry>.Usable)new EntryReader().Read(Encoding.UTF8.GetBytes(line), "line", 1)).Value;
}
