using System.Collections.Immutable;

namespace Farhold.Tests.Records;

/// <summary>
/// Twenty thousand of the same: judged, and in time that grows with them and no faster (the benchmarks hold the figures).
/// </summary>
public class HeapTests
{
    private const int Many = 20_000;

    [Fact]
    public void Thousands_of_entries_under_one_id()
    {
        var record = Case.Well.Record;
        for (var i = 0; i < Many; i++)
            record.Add(Note("b", 1, $"variant {i}"));
        Assert.Equal(Many + 11, record.Count);
        Assert.Equal(["conflict-b-1", "conflicts-many"], record.Doubts.Select(d => d.Id));
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
    }

    [Fact]
    public void Thousands_of_conflicting_pairs()
    {
        var record = Case.Well.Record;
        for (var i = 0; i < Many; i++)
            foreach (var text in (string[])["one", "other"])
                record.Add(Note("b", i + 1, text));
        Assert.Equal(CareRecord.MaxReadings + 1, record.Doubts.Length);
        Assert.Contains("(20000)", record.Doubts.Single(d => !d.CanBeSettled).Text, StringComparison.Ordinal);
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
    }

    /// <summary>As many as can be judged are left once the rest is withdrawn: then looking settles them.</summary>
    [Fact]
    public void Conflicts_that_were_withdrawn_no_longer_stand_in_the_way()
    {
        var record = Case.Well.Record;
        for (var i = 0; i < 7; i++)
            foreach (var text in (string[])["one", "other"])
                record.Add(Note("b", i + 1, text));
        Assert.Contains(record.Doubts, d => !d.CanBeSettled);
        record.Add(Written("b", 8, new Payload.EntryWithdrawn(new("b", 1), "wrong")));
        Assert.Equal(6, record.Doubts.Length);
        Assert.All(record.Doubts, d => Assert.True(d.CanBeSettled));
        Assert.Equal(CareRecord.MaxReadings, record.Readings.Length);
    }

    [Fact]
    public void Thousands_of_tourniquets_on_one_limb()
    {
        var clock = Judged([.. Enumerable.Range(1, Many).Select(i => (Payload)new Payload.TourniquetTightened($"t{i}", Limb.LeftLeg))])
            .Limbs.Single()
            .Clock;
        Assert.Equal(Many, clock.Tourniquets.Length);
        Assert.Equal(Duration.FromSeconds(Many), clock.Occluded.Max);
    }

    [Fact]
    public void One_tourniquet_tightened_and_slackened_thousands_of_times()
    {
        var clock = Judged([
            .. Enumerable
                .Range(1, Many)
                .Select(i =>
                    i % 2 == 0 ? (Payload)new Payload.TourniquetSlackened("t1") : new Payload.TourniquetTightened("t1", Limb.LeftLeg)
                ),
        ])
            .Observed.Single()
            .Clock;
        Assert.Equal(Duration.FromSeconds(Many / 2), clock.Occluded.Max);
        Assert.Equal(Many / 2, clock.Stretches.Length);
    }

    [Fact]
    public void Thousands_of_wounds_each_looked_at()
    {
        var limb = Judged([
            new Payload.TourniquetTightened("t1", Limb.LeftLeg),
            .. Enumerable
                .Range(1, Many)
                .SelectMany(i =>
                    (Payload[])
                        [
                            new Payload.WoundFound($"w{i}", Limb.LeftLeg, null, WoundNature.Bleeding),
                            new Payload.BleedingChecked($"w{i}", Bleeding.None),
                        ]
                ),
        ])
            .Limbs.Single();
        var look = Assert.Single(limb.Findings.SelectMany(f => f.Used).Where(u => u.Input == "bleeding").Select(u => u.Value).Distinct());
        Assert.Equal("none", look);
    }

    [Fact]
    public void Thousands_of_entries_that_nobody_understands()
    {
        var record = Case.Well.Record;
        for (var i = 1; i <= 5_000; i++)
            record.Add(Written("b", i, new Payload.OfNewerVersion("signs.tcken")));
        Assert.Equal(5_000, record.Doubts.Length);
        Assert.Equal(Verdict.CheckFirst, VerdictOf(record));
    }

    /// <summary>One a second, the last just now.</summary>
    private static Judgement Judged(ImmutableArray<Payload> said) =>
        Judge.At(
            new(
                said.Select(
                    (p, i) =>
                        EntryWriting.Write(
                            new("a", i + 1),
                            Happened.At(Case.Now - Duration.FromSeconds(said.Length - i)),
                            Case.Now,
                            "Ane",
                            p
                        )
                ),
                []
            ),
            ShippedRules.Book,
            Case.Now
        );

    private static Verdict VerdictOf(CareRecord record) => Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict;

    private static Entry Note(string device, int number, string text) => Written(device, number, new Payload.NoteWritten(text));

    private static Entry Written(string device, int number, Payload what) =>
        EntryWriting.Write(new(device, number), Happened.At(Case.Now), Case.Now, "Tor", what);
}
