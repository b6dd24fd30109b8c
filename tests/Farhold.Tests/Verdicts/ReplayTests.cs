using CsCheck;

namespace Farhold.Tests.Verdicts;

public class ReplayTests
{
    private static readonly Instant Start = Some.At("01:40");
    private static readonly Instant End = Some.At("18:00");

    /// <summary>
    /// The demo record, changed: entries dropped, some known only as a range, help sooner, the tourniquet never slackened.
    /// </summary>
    private static readonly Gen<CareRecord> Records = Gen.Select(
        Gen.Int[0, 72].HashSet[0, 20],
        Gen.Int[0, 72].HashSet[0, 12],
        Gen.Int[0, 480],
        Gen.Bool,
        (dropped, blurred, sooner, kept) =>
            new CareRecord(
                Demo.Record()
                    .Entries.Where(
                        (e, i) =>
                            !dropped.Contains(i)
                            && !(
                                kept
                                && e.Payload
                                    is Payload.TourniquetSlackened
                                        or Payload.TourniquetRemoved
                                        or Payload.AttemptStarted
                                        or Payload.AttemptEnded
                            )
                    )
                    .Select(
                        (e, i) =>
                            blurred.Contains(i)
                                ? e with
                                {
                                    Happened = new(e.Happened.Earliest - Duration.FromMinutes(7), e.Happened.Latest),
                                }
                                : e
                    )
                    .Select(e => HelpSooner(e, Duration.FromMinutes(sooner))),
                []
            )
    );

    private static Entry HelpSooner(Entry entry, Duration by) =>
        entry.Payload is Payload.HelpExpected help
            ? entry with
            {
                Payload = help with { Likely = help.Likely - by, Earliest = help.Earliest - by, Latest = help.Latest - by },
            }
            : entry;

    [Fact]
    public void The_outcome_is_constant_between_turns() =>
        Gen.Select(Records, Gen.Long[0, (long)(End - Start).TotalSeconds].Array[40])
            .Sample(
                (record, seconds) =>
                {
                    var turns = Replay.Of(record, ShippedRules.Book, End).ToArray();
                    foreach (var at in seconds.Select(s => Start + Duration.FromSeconds(s)))
                    {
                        var before = turns.LastOrDefault(t => t.JustAfter ? t.At < at : t.At <= at);
                        var told = Outcome.Of(Judge.At(record, ShippedRules.Book, at));
                        Assert.Equal(before?.After.Limbs ?? [], told.Limbs);
                        Assert.True(before is null || before.After.Shock == told.Shock);
                    }
                },
                iter: Gens.LongCases(28),
                threads: 1
            );

    [Fact]
    public void Every_turn_changes_something_and_has_a_cause()
    {
        var turns = Replay.Of(Demo.Record(), ShippedRules.Book, End).ToArray();
        Assert.NotEmpty(turns);
        Assert.All(
            turns,
            t =>
            {
                Assert.NotEqual(t.Before, t.After);
                Assert.NotEmpty(t.Because);
                Assert.NotEmpty(t.After.Since(t.Before));
                Assert.All(t.Because, Assert.NotEmpty);
            }
        );
        Assert.All(turns.Zip(turns.Skip(1)), pair => Assert.Equal(pair.First.After, pair.Second.Before));
    }

    [Fact]
    public void Signs_expire_just_after_their_time()
    {
        var expiry = Replay.Of(Demo.Record(), ShippedRules.Book, End).First(t => t.JustAfter);
        Assert.Equal(Some.At("03:04"), expiry.At);
        Assert.Contains("heart rate", Assert.Single(expiry.Because));
        Assert.EndsWith("older than 15 min", expiry.Because[0]);
    }

    [Fact]
    public void Help_comes_within_what_counts_as_soon()
    {
        // Surgery at the latest at 05:25 instead of 21:00; two hours before that waiting gains more than trying.
        var early = Demo.Record()
            .Entries.Where(e => e.Id.Device == "a7k3" && e.Id.Number <= 20)
            .Select(e => HelpSooner(e, Duration.FromMinutes(935)));
        var soon = Replay.Of(new(early, []), ShippedRules.Book, End).Single(t => t.At == Some.At("03:25"));
        Assert.Equal((false, "2 h 00 min left to the latest time of help"), (soon.JustAfter, Assert.Single(soon.Because)));
        Assert.Equal((Verdict.Attempt, Verdict.AwaitHelp), (soon.Before.Limbs[0].Verdict, soon.After.Limbs[0].Verdict));
    }

    [Fact]
    public void The_limit_is_reached_at_its_instant()
    {
        var entries = Demo.Record()
            .Entries.Where(e =>
                e.Payload
                    is not (Payload.TourniquetSlackened or Payload.TourniquetRemoved or Payload.AttemptStarted or Payload.AttemptEnded)
            );
        var limit = Replay.Of(new(entries, []), ShippedRules.Book, End).Single(t => t.At == Some.At("07:50"));
        Assert.False(limit.JustAfter);
        Assert.Equal("left leg: 6 h 00 min since first tightened", limit.Because[0]);
        Assert.Equal(Verdict.LeaveOn, Assert.Single(limit.After.Limbs).Verdict);
    }

    /// <summary>A verdict that stays while its reasons change is still the same verdict, and a new one is not.</summary>
    [Fact]
    public void What_stays_is_called_still_and_what_is_new_is_not()
    {
        var (well, fast, faster) = (
            Of(Case.Well),
            Of(Case.Well.Signs(s => s with { HeartRate = 140 })),
            Of(Case.Well.Signs(s => s with { HeartRate = 140, Mental = Mental.Confused }))
        );
        Assert.StartsWith(
            "left leg: leave-on (",
            Assert.Single(fast.Since(well), l => l.StartsWith("left leg", StringComparison.Ordinal)),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "left leg: still leave-on (",
            Assert.Single(faster.Since(fast), l => l.StartsWith("left leg", StringComparison.Ordinal)),
            StringComparison.Ordinal
        );

        static Outcome Of(Case scene) => Outcome.Of(scene.Judgement);
    }
}
