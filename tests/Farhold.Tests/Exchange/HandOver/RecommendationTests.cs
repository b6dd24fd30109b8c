using CsCheck;
using Farhold.Exchange.HandOver;

namespace Farhold.Tests.Exchange.HandOver;

public class RecommendationTests
{
    private static readonly Rulebook Shipped = ShippedRules.Book;

    [Fact]
    public void A_limb_is_advised_no_milder_than_its_verdict_and_to_convert_only_where_that_is_attempt()
    {
        var attempts = 0;
        Gen.OneOf(Gens.Record, Gens.StrangeRecord)
            .Sample(
                r =>
                {
                    var facts = CareFacts.Of(r.Record, Shipped, r.Now);
                    var all = Recommendation.All(facts);
                    foreach (var limb in facts.Limbs)
                    {
                        var said = Assert.Single(all, a => a.Limb == limb.Limb && a.Act != Advised.Warned);
                        if (limb.Verdict?.Verdict == Verdict.Attempt)
                            Interlocked.Increment(ref attempts);
                        Assert.True(Caution(said.Act) >= Caution(limb), $"{said.Text}\n{limb.Verdict?.Verdict}");
                        Assert.Equal(limb.Verdict?.Verdict == Verdict.Attempt, said.Text.Contains("convert", StringComparison.Ordinal));
                        if (limb.Verdict is { Verdict: not Verdict.Attempt })
                            Assert.Contains("no attempt", said.Text, StringComparison.Ordinal);
                    }
                },
                iter: Gens.Cases(3_000),
                print: r => r.ToString()
            );
        Assert.True(attempts >= Gens.Cases(20), $"only {attempts} attempts");
    }

    [Fact]
    public void No_line_speaks_of_converting_where_no_verdict_is_attempt() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, Shipped, r.Now);
                if (facts.Judgement.Limbs.Any(l => l.Verdict == Verdict.Attempt))
                    return;
                var words = new FactWords(facts, DateTimeZone.Utc);
                Assert.DoesNotContain(words.Recommendations.Concat(words.NeedLines), l => l.Contains("onvert", StringComparison.Ordinal));
            },
            iter: Gens.Cases(500),
            print: r => r.ToString()
        );

    [Fact]
    public void What_is_due_changes_nothing_in_it() =>
        Gens.Record.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, Shipped, r.Now);
                var without = facts with { Judgement = facts.Judgement with { Due = [] } };
                Assert.Equal(Recommendation.All(facts), Recommendation.All(without));
                Assert.Equal(Needs.Of(facts), Needs.Of(without));
            },
            iter: Gens.Cases(100),
            print: r => r.ToString()
        );

    [Fact]
    public void A_limb_past_its_limit_is_left_on_with_its_time_and_the_reason()
    {
        var text = Said("16:20", ("10:00", Story.Tight("t1"))).Single(a => a.Limb == Limb.LeftLeg).Text;
        Assert.StartsWith(
            "Leave the tourniquet on the left leg on, first tightened 6 h 20 min ago; no attempt in the field.",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("six hours", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limb_that_bleeds_is_tightened_first() =>
        Assert.Equal(
            Advised.Tighten,
            Said(
                    "11:00",
                    ("10:00", Story.Wound("w1", Limb.LeftLeg)),
                    ("10:01", Story.Tight("t1", wound: "w1")),
                    ("10:55", new Payload.BleedingChecked("w1", Bleeding.Active))
                )
                .Single(a => a.Limb == Limb.LeftLeg)
                .Act
        );

    /// <summary>Rule <c>cold</c>, below 36 °C: Joint Trauma System, burn care.</summary>
    [Fact]
    public void A_warning_sign_is_told_with_what_to_do() =>
        Assert.Contains(
            Said("11:00", ("10:50", new Payload.SignsTaken { TemperatureC = 34.9 })),
            a => a is { Limb: null, Act: Advised.Warned } && a.Text.StartsWith("The casualty is getting cold", StringComparison.Ordinal)
        );

    [Fact]
    public void Signs_of_shock_too_old_to_decide_by_are_still_told() =>
        Assert.Contains(
            Said(
                "15:00",
                ("09:50", new Payload.CasualtyOpened("Runa", AgeYears: 34)),
                ("10:00", Story.Tight("t1")),
                ("10:50", Some.GoodSigns with { HeartRate = 130 })
            ),
            a => a.Text.Contains("shock", StringComparison.OrdinalIgnoreCase) && a.Limb is null
        );

    private static System.Collections.Immutable.ImmutableArray<Recommendation> Said(string at, params (string, Payload)[] told) =>
        Recommendation.All(CareFacts.Of(Story.Written(told), Shipped, Some.At(at)));

    /// <summary>Greater is more cautious.</summary>
    private static int Caution(Advised act) =>
        act switch
        {
            Advised.Convert => 0,
            Advised.Watch => 0,
            Advised.AwaitHelp => 1,
            Advised.CheckFirst or Advised.Look => 2,
            Advised.LeaveOn => 3,
            Advised.Tighten => 4,
            _ => -1,
        };

    private static int Caution(LimbFact limb) =>
        limb switch
        {
            { Verdict.Verdict: var verdict } => (int)verdict,
            { Observed.Bleeding: Truth.Met } => 4,
            { Observed.Bleeding: Truth.Unknown } => 2,
            _ => 0,
        };
}
