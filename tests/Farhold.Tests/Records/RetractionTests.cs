using CsCheck;

namespace Farhold.Tests.Records;

/// <summary>What one phone withdraws or corrects of another's counts with the worse of both until somebody accepts it.</summary>
public class UnsayingTests
{
    [Fact]
    public void One_line_of_an_unknown_phone_that_withdraws_a_bad_sign_lets_go_of_nothing()
    {
        var record = Case.Well.And("00:01", new Payload.SignsTaken { HeartRate = 140 }).Record;
        var bad = record.Entries.Last(e => e.Payload is Payload.SignsTaken).Id;
        Assert.Equal(Verdict.LeaveOn, VerdictOf(record));
        record.Add(Said("zzz", 1, new Payload.EntryWithdrawn(bad, "mistyped")));
        Assert.Equal(Verdict.LeaveOn, VerdictOf(record));
        var unsaid = Assert.Single(record.Unaccepted);
        Assert.True(unsaid.Withdraws);
        Assert.Equal(bad, unsaid.Target.Id);
        Assert.Contains(record.Doubts, d => d.Id == "unsaid-zzz-1" && d.Text.Contains($"withdraws {bad} (", StringComparison.Ordinal));

        record.Add(Said("a", record.NextId("a").Number, new Payload.TaskDone("unsaid-zzz-1")));
        Assert.Empty(record.Unaccepted);
        Assert.Equal(Verdict.Attempt, VerdictOf(record));
    }

    [Fact]
    public void A_correction_for_the_worse_counts_at_once()
    {
        var record = Case.Well.Record;
        var signs = record.Entries.Last(e => e.Payload is Payload.SignsTaken).Id;
        record.Add(Said("zzz", 1, new Payload.EntryAmended(signs, JsonText.Of("""{"heartRate":140}"""))));
        Assert.Equal(Verdict.LeaveOn, VerdictOf(record));
    }

    [Theory]
    [InlineData("a", true)] // wrote what is unsaid
    [InlineData("zzz", false)] // can't accept itself
    [InlineData("c", false)] // a third one
    public void Who_wrote_it_accepts(string device, bool accepted)
    {
        var record = Case.Well.Record;
        record.Add(Said("zzz", 1, new Payload.EntryWithdrawn(new("a", 1), "twice")));
        record.Add(Said(device, record.NextId(device).Number, new Payload.TaskDone("unsaid-zzz-1")));
        Assert.Equal(accepted, record.Unaccepted.IsEmpty);
    }

    [Fact]
    public void The_phone_that_reads_accepts_and_what_it_unsays_itself_needs_nobody()
    {
        var record = new CareRecord(Case.Well.Record.Entries, []) { Writer = "c" };
        record.Add(Said("zzz", 1, new Payload.EntryWithdrawn(new("a", 1), "twice")));
        record.Add(Said("c", 1, new Payload.EntryWithdrawn(new("a", 2), "twice")));
        Assert.Equal("unsaid-zzz-1", Assert.Single(record.Unaccepted).Task);
        record.Add(Said("c", 2, new Payload.TaskDone("unsaid-zzz-1")));
        Assert.Empty(record.Unaccepted);
    }

    [Fact]
    public void The_log_shows_the_entry_as_standing_and_says_that_nobody_accepted()
    {
        var record = Case.Well.Record;
        record.Add(Said("zzz", 1, new Payload.EntryWithdrawn(new("a", 1), "twice")));
        record.Add(Said("zzz", 2, new Payload.EntryAmended(new("a", 2), JsonText.Of("""{"happened":"2031-05-04T11:00:00Z"}"""))));
        var lines = LogText.Lines(record).Where(l => l.Changes.Count > 0).ToArray();
        Assert.Equal(2, lines.Length);
        Assert.All(lines, l => Assert.False(l.Withdrawn));
        Assert.All(
            lines,
            l =>
                Assert.EndsWith(
                    "nobody has accepted this, so the worse of the two readings is used",
                    l.Changes.Single(),
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void A_phone_mends_its_own_without_asking()
    {
        var record = Case.Well.Record;
        record.Add(Said("a", record.NextId("a").Number, new Payload.EntryWithdrawn(new("a", 1), "twice")));
        Assert.Empty(record.Unaccepted);
    }

    /// <summary>Whatever another phone unsays, no limb is judged milder before somebody has accepted it.</summary>
    [Fact]
    public void Unsaying_makes_no_verdict_milder() =>
        Gen.Select(Gens.Record, Gen.Int[0, 99].Array[1, 4], Gen.Bool.Array[4])
            .Sample(
                (written, which, withdraws) =>
                {
                    var before = Verdicts(written.Record, written.Now);
                    var record = written.Record;
                    for (var i = 0; i < which.Length; i++)
                    {
                        var target = written.Entries[which[i] % written.Entries.Length];
                        record.Add(
                            EntryWriting.Write(
                                new("zzz", i + 1),
                                Happened.At(written.Now),
                                written.Now,
                                "Nobody",
                                withdraws[i]
                                    ? new Payload.EntryWithdrawn(target.Id, "no")
                                    : new Payload.EntryAmended(
                                        target.Id,
                                        JsonText.Of("""{"heartRate":80,"breathRate":14,"bleeding":"none","dizzy":false,"able":true}""")
                                    )
                            )
                        );
                    }

                    var after = Verdicts(record, written.Now);
                    foreach (var (limb, verdict) in before)
                        Assert.True(after.TryGetValue(limb, out var now) && now >= verdict, $"{limb}: {verdict} before");
                },
                iter: Gens.Cases(2_000)
            );

    private static Dictionary<Limb, Verdict> Verdicts(CareRecord record, Instant now) =>
        Judge.At(record, ShippedRules.Book, now).Limbs.ToDictionary(l => l.Limb, l => l.Verdict);

    private static Entry Said(string device, int number, Payload what) =>
        EntryWriting.Write(new(device, number), Happened.At(Case.Now), Case.Now, device, what);

    private static Verdict VerdictOf(CareRecord record) => Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict;
}
