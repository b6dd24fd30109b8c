using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What is known to exist elsewhere and is not here counts like a gap: never milder, never an attempt.</summary>
public class ElsewhereTests
{
    private static KnownElsewhere Known(string device, int last, params ReadOnlySpan<string> unnumbered) =>
        new(KnownElsewhere.Nothing.Last.Add(device, last), [.. unnumbered]);

    private static Verdict Judged(CareRecord record) => Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict;

    private static CareRecord Well(KnownElsewhere known)
    {
        var record = Case.Well.Record;
        record.Elsewhere = known;
        return record;
    }

    private static Entry Note(string device, int number) =>
        EntryWriting.Write(new(device, number), Happened.At(Case.Now), Case.Now, "Tor", new Payload.NoteWritten("calm"));

    [Theory]
    [InlineData("a", 11, Verdict.Attempt, null)]
    [InlineData("a", 12, Verdict.CheckFirst, "elsewhere-a-12-12")]
    [InlineData("a", 40, Verdict.CheckFirst, "elsewhere-a-12-40")]
    [InlineData("n95", 3, Verdict.CheckFirst, "elsewhere-n95-1-3")]
    [InlineData("a", int.MaxValue, Verdict.CheckFirst, "elsewhere-a-12-2147483647")]
    public void Entries_that_others_have_stand_against_an_attempt(string device, int last, Verdict verdict, string? doubt)
    {
        var record = Well(Known(device, last));
        Assert.Equal(11, record.NextId("a").Number - 1);
        Assert.Equal(doubt, record.Doubts.SingleOrDefault()?.Id);
        Assert.Equal(verdict, Judged(record));
    }

    [Fact]
    public void So_do_lines_of_which_only_a_hash_is_known() =>
        Assert.Equal(Verdict.CheckFirst, Judged(Well(Known("a", 1, "0123456789abcdef"))));

    [Fact]
    public void Once_they_are_here_the_doubt_is_gone()
    {
        var record = Well(Known("b", 2));
        record.Add(Note("b", 1));
        Assert.Equal("elsewhere-b-2-2", Assert.Single(record.Doubts).Id);
        record.Add(Note("b", 2));
        Assert.Empty(record.Doubts);
        Assert.Equal(Verdict.Attempt, Judged(record));
    }

    [Fact]
    public void Whoever_looked_into_some_has_not_looked_into_more()
    {
        var record = Well(Known("b", 2));
        record.Add(EntryWriting.Write(record.NextId("c"), Happened.At(Case.Now), Case.Now, "Ane", new Payload.TaskDone("elsewhere-b-1-2")));
        Assert.Equal(Verdict.Attempt, Judged(record));
        record.Elsewhere = Known("b", 3);
        Assert.Equal(Verdict.CheckFirst, Judged(record));
    }

    [Fact]
    public void Knowing_of_more_never_makes_a_verdict_milder_and_never_makes_for_an_attempt()
    {
        var fewer = 0;
        Gen.Select(Gen.OneOf(Gens.Record, Gens.StrangeRecord), Gen.OneOf("a7k3", "m2rt", "Q", "zz9"), Gen.Int[0, 6], Gen.Int[0, 2])
            .Sample(
                (written, device, more, unnumbered) =>
                {
                    var before = written.Judged();
                    var record = written.Record;
                    var last = record.NextId(device).Number - 1;
                    var names = Enumerable.Range(0, unnumbered).Select(i => $"line {i}").ToImmutableSortedSet(StringComparer.Ordinal);
                    record.Elsewhere = new(KnownElsewhere.Nothing.Last.Add(device, (int)Math.Min((long)last + more, int.MaxValue)), names);
                    var after = Judge.At(record, ShippedRules.Book.By(ShippedProtocol.Protocol), written.Now);
                    Assert.Equal(before.Limbs.Select(l => l.Limb), after.Limbs.Select(l => l.Limb));
                    var lacking = unnumbered > 0 || (more > 0 && last < int.MaxValue);
                    foreach (var (was, now) in before.Limbs.Zip(after.Limbs))
                    {
                        Assert.True(now.Verdict >= was.Verdict, $"{was.Limb}: {was.Verdict} became {now.Verdict}");
                        if (lacking && now.Attempt is null)
                            Assert.NotEqual(Verdict.Attempt, now.Verdict);
                        if (was.Verdict != now.Verdict)
                            Interlocked.Increment(ref fewer);
                    }
                },
                iter: Gens.Cases(3_000)
            );
        Assert.True(fewer >= Gens.Cases(30), $"only {fewer} verdicts changed");
    }

    /// <summary>A gap: the entry behind the missing ones is here, a note; known elsewhere: it is not.</summary>
    [Fact]
    public void It_is_judged_as_a_gap_of_the_same_entries() =>
        Gen.Select(Gens.Record, Gen.Int[1, 4])
            .Sample(
                (written, more) =>
                {
                    var (gap, known) = (written.Record, written.Record);
                    var device = gap.Entries.First().Id.Device;
                    var last = gap.NextId(device).Number - 1;
                    gap.Add(
                        EntryWriting.Write(
                            new(device, last + more + 1),
                            Happened.At(written.Now),
                            Instant.Max(written.Now, gap.LastRecorded ?? written.Now),
                            "Ane",
                            new Payload.NoteWritten("calm")
                        )
                    );
                    known.Elsewhere = Known(device, last + more + 1);
                    var rules = ShippedRules.Book.By(ShippedProtocol.Protocol);
                    Assert.Equal(
                        Judge.At(gap, rules, written.Now).Limbs.Select(l => (l.Limb, l.Verdict)),
                        Judge.At(known, rules, written.Now).Limbs.Select(l => (l.Limb, l.Verdict))
                    );
                },
                iter: Gens.Cases(1_000)
            );
}
