using CsCheck;

namespace Farhold.Tests.Verdicts;

/// <summary>Where nobody knows whether a tourniquet is still tight, that is looked at before anything is begun.</summary>
public class PerhapsTightTests
{
    private static readonly Payload Slackened = new Payload.TourniquetSlackened("t1");

    /// <summary>Slackened, but perhaps before it was tightened forty minutes ago.</summary>
    private static readonly Case Perhaps = Case.Well.And(new Happened(Case.Ago("00:50"), Case.Ago("00:02")), Slackened);

    [Fact]
    public void A_tourniquet_that_is_perhaps_still_tight_is_felt_first()
    {
        Assert.Equal(Truth.Unknown, Perhaps.Limb.Clock.Tight);
        Assert.Equal(Verdict.CheckFirst, Perhaps.Verdict);
        Assert.Equal([Input.TourniquetTight], Perhaps.Limb.CheckFirst);
        Assert.Contains("tourniquet t1 perhaps tight, it is not known", JudgementText.Of(Perhaps.Judgement), StringComparison.Ordinal);
    }

    [Fact]
    public void What_forbids_an_attempt_forbids_it_all_the_same() =>
        Assert.Equal(
            (Verdict.LeaveOn, true),
            (Perhaps.Signs(s => s with { HeartRate = 140 }).Verdict, Perhaps.Signs(s => s with { HeartRate = 140 }).Limb.CheckFirst.IsEmpty)
        );

    [Fact]
    public void Whoever_tightened_it_again_knows_that_it_is_tight() =>
        Assert.Equal(
            (Truth.Met, Verdict.Attempt),
            Of(Perhaps.And("00:01", new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1")))
        );

    [Fact]
    public void Help_that_comes_soon_does_not_spare_the_look() => Assert.Equal(Verdict.CheckFirst, Perhaps.HelpIn("01:00").Verdict);

    /// <summary>
    /// One tourniquet on two limbs, slackened when it may have been on either: no clock stops, and neither is known to be tight.
    /// </summary>
    [Fact]
    public void Loosened_on_one_of_two_limbs_neither_is_known_to_be_tight()
    {
        var judged = Case
            .Well.And(new Happened(Case.Ago("00:30"), Case.Ago("00:10")), new Payload.TourniquetTightened("t1", Limb.RightLeg))
            .And("00:20", Slackened)
            .Judgement;
        Assert.All(judged.Limbs, l => Assert.Equal((Truth.Unknown, true), (l.Clock.Tight, l.CheckFirst.Contains(Input.TourniquetTight))));
        Assert.Equal(Duration.FromMinutes(40), judged.Limbs[0].Clock.CurrentStretch.Min);
    }

    /// <summary>But for help that was soon enough: where the limb's six hours may end before help is there, it no longer is.</summary>
    [Fact]
    public void Knowing_a_loosening_less_exactly_never_makes_for_an_attempt() =>
        Gen.Select(Gens.Record, Gen.Int[0, 200], Gen.Int[0, 200])
            .Sample(
                (written, earlier, later) =>
                {
                    var state = written.Record.Readings[0];
                    var vague = State.Of(
                        state.All.Select(d =>
                            d.What is Payload.TourniquetSlackened or Payload.TourniquetRemoved
                                ? d with
                                {
                                    When = new(
                                        d.When.Earliest - Duration.FromMinutes(earlier),
                                        d.When.Latest + Duration.FromMinutes(later)
                                    ),
                                }
                                : d
                        )
                    );
                    var before = Limbs(state, written.Now).ToDictionary(l => l.Limb, l => l.Verdict);
                    return Limbs(vague, written.Now)
                        .All(l =>
                            l.Verdict != Verdict.Attempt
                            || before.GetValueOrDefault(l.Limb, Verdict.LeaveOn) is Verdict.Attempt or Verdict.AwaitHelp
                        );
                },
                iter: Gens.Cases(3_000)
            );

    private static System.Collections.Immutable.ImmutableArray<LimbVerdict> Limbs(State state, Instant now) =>
        Judge.Of(state, [], ShippedRules.Book, now).Limbs;

    private static (Truth, Verdict) Of(Case scene) => (scene.Limb.Clock.Tight, scene.Verdict);
}
