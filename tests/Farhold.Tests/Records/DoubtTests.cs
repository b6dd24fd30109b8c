namespace Farhold.Tests.Records;

/// <summary>A doubt about the record stands against an attempt until a person has surely looked.</summary>
public class DoubtTests
{
    private static readonly Payload Looked = new Payload.TaskDone("gap-a-12");

    /// <summary>Everything well, but the last entry but one of the device is missing.</summary>
    private static CareRecord Gap(Happened looked) =>
        new(
            [.. Case.Well.Record.Entries, EntryWriting.Write(new("a", 13), looked, Instant.Max(Case.Now, looked.Latest), "Ane", Looked)],
            []
        );

    [Fact]
    public void The_scene_of_these_tests_would_allow_an_attempt() => Assert.Equal(Verdict.Attempt, Case.Well.Verdict);

    [Theory]
    [InlineData("00:05", "00:05", Verdict.Attempt)]
    [InlineData("00:05", "-00:05", Verdict.CheckFirst)]
    [InlineData("-00:05", "-00:05", Verdict.CheckFirst)]
    public void It_is_settled_once_someone_has_surely_looked(string earliest, string latest, Verdict verdict)
    {
        var record = Gap(new(Ago(earliest), Ago(latest)));
        Assert.Equal("gap-a-12", Assert.Single(record.Doubts).Id);
        Assert.Equal(verdict, Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict);
    }

    [Fact]
    public void More_conflicts_than_can_be_judged_are_settled_by_nobody()
    {
        var record = Case.Well.Record;
        for (var i = 0; i < 7; i++)
            foreach (var text in (string[])["one", "other"])
                record.Add(EntryWriting.Write(new("b", i + 1), Happened.At(Case.Now), Case.Now, "Tor", new Payload.NoteWritten(text)));
        Assert.Equal(CareRecord.MaxReadings, record.Readings.Length);
        Settle(record, [.. record.Doubts]);
        var limb = Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single();
        Assert.Equal(Verdict.CheckFirst, limb.Verdict);
        Assert.Equal([Input.RecordWhole], limb.CheckFirst);
    }

    [Fact]
    public void As_many_conflicts_as_can_be_judged_may_be_settled()
    {
        var record = Case.Well.Record;
        for (var i = 0; i < 6; i++)
            foreach (var text in (string[])["one", "other"])
                record.Add(EntryWriting.Write(new("b", i + 1), Happened.At(Case.Now), Case.Now, "Tor", new Payload.NoteWritten(text)));
        Settle(record, [.. record.Doubts]);
        Assert.Equal(Verdict.Attempt, Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict);
    }

    private static void Settle(CareRecord record, Doubt[] doubts)
    {
        foreach (var doubt in doubts)
            record.Add(EntryWriting.Write(record.NextId("c"), Happened.At(Case.Now), Case.Now, "Ane", new Payload.TaskDone(doubt.Id)));
    }

    private static Instant Ago(string time) => time[0] == '-' ? Case.Now + (Case.Now - Case.Ago(time[1..])) : Case.Ago(time);
}
