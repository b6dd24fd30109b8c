using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Respond;

/// <summary>
/// Re-siting: a second tourniquet, on the skin 5 to 7 cm above the wound, takes over before the first is let out (TCCC wording in
/// Holcomb 2023, Table 2).
/// </summary>
public class ReSitingTests
{
    [Theory]
    [InlineData(TourniquetMake.Improvised, TourniquetSite.AboveWound, true, "improvised")]
    [InlineData(TourniquetMake.Windlass, TourniquetSite.AboveWound, false, "over clothing")]
    [InlineData(TourniquetMake.Windlass, TourniquetSite.High, true, "high on the limb")]
    [InlineData(TourniquetMake.Windlass, TourniquetSite.OverJoint, true, "over a joint")]
    [InlineData(TourniquetMake.Windlass, TourniquetSite.AboveWound, true, null)]
    public void One_that_is_improvised_over_clothing_high_or_over_a_joint_is_resited(
        TourniquetMake make,
        TourniquetSite site,
        bool skin,
        string? because
    )
    {
        var act = Act(Sited(make, site, skin));
        Assert.Equal(because is null ? null : ReSitingStep.SecondOn, act?.Step);
        Assert.Equal(because, act?.First.Because.Single());
    }

    [Fact]
    public void Until_somebody_has_looked_where_it_sits_that_is_what_is_asked()
    {
        Assert.Equal(ReSitingStep.Look, Act(Case.Well)!.Step);
        Assert.Contains(Case.Well.Judgement.Due, d => d.Task == "site.left-leg");
    }

    [Fact]
    public void Step_by_step_one_stays_tight()
    {
        var high = Sited(TourniquetMake.Windlass, TourniquetSite.High, true);
        var second = high.And("00:05", Second);
        Assert.Equal(ReSitingStep.Check, Act(second)!.Step);
        Assert.Equal(ReSitingStep.Check, Act(second.And("00:04", new Payload.BleedingChecked("w1", Bleeding.Active)))!.Step);
        var stopped = second.And("00:04", new Payload.BleedingChecked("w1", Bleeding.None));
        Assert.Equal((ReSitingStep.SlackenFirst, "t1", "t2"), (Act(stopped)!.Step, Act(stopped)!.First.Tourniquet, Act(stopped)!.Second));
        var slackened = stopped.And("00:03", new Payload.TourniquetSlackened("t1"));
        Assert.Equal(ReSitingStep.Watch, Act(slackened)!.Step);
        Assert.Null(Act(slackened.And("00:02", new Payload.BleedingChecked("w1", Bleeding.None))));
        var clock = slackened.Limb.Clock;
        Assert.Equal((Truth.Met, Duration.FromMinutes(40)), (clock.Tight, clock.SinceFirstTightened.Min)); // the clock runs on
        Assert.Equal(Duration.FromMinutes(40), clock.Occluded.Min); // and no blood came through between
    }

    [Fact]
    public void An_amputation_is_resited_too()
    {
        var severed = Sited(TourniquetMake.Windlass, TourniquetSite.High, true)
            .With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Amputation), "00:39");
        Assert.Equal(ReSitingStep.SecondOn, Act(severed)!.Step);
        Assert.Equal(Verdict.LeaveOn, severed.Verdict);
        Assert.Contains(severed.Judgement.Due, d => d.Task == "re-site.left-leg");
    }

    [Fact]
    public void It_is_not_asked_for_in_shock_while_it_bleeds_or_past_the_limit()
    {
        var high = Sited(TourniquetMake.Windlass, TourniquetSite.High, true);
        Assert.DoesNotContain(
            high.NewSigns(s => s with { RadialPulse = RadialPulse.Weak }).Judgement.Due,
            d => d.Task == "re-site.left-leg"
        );
        Assert.DoesNotContain(high.TightFor("06:10").Judgement.Due, d => d.Task.StartsWith("re-site", StringComparison.Ordinal));
    }

    [Fact]
    public void No_word_of_it_is_one_of_conversion()
    {
        var due = Sited(TourniquetMake.Improvised, TourniquetSite.High, true).Judgement.Due.Single(d => d.Task == "re-site.left-leg");
        Assert.Contains("Re-site", due.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("convert", due.Text, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Over any record: the first is let out only where another one, rightly placed, is surely tight and nothing bleeds.</summary>
    [Fact]
    public void The_first_is_slackened_only_where_another_one_is_surely_tight() =>
        Gen.Select(
                Gen.Select(Gens.When, Gen.OneOf(Tightenings)).Array[1, 6],
                Gen.Select(Gens.When, Gen.OneOf(Others)).Array[0, 6],
                Gens.Moment
            )
            .Sample(
                (tightened, others, now) =>
                {
                    var entries = tightened
                        .Concat(others)
                        .Select((e, i) => EntryWriting.Write(new("a", i + 1), e.Item1, Late, "Ane", e.Item2));
                    var state = new CareRecord(entries, []).Readings[0];
                    if (ReSiting.Of(Limb.LeftLeg, state, now) is not { Step: ReSitingStep.SlackenFirst } act)
                        return;
                    Assert.NotEqual(act.First.Tourniquet, act.Second);
                    var without = State.Of(state.All.Where(d => NameOf(d.What) != act.First.Tourniquet));
                    Assert.Equal(Truth.Met, LimbClock.Of(Limb.LeftLeg, without, now)!.Tight);
                },
                iter: Gens.Cases(20_000)
            );

    private static readonly Instant Late = Some.At("23:00");

    private static readonly Payload[] Tightenings =
    [
        .. from name in (string[])["t1", "t2", "t3"]
        from site in (TourniquetSite?[])[TourniquetSite.High, TourniquetSite.AboveWound, null]
        select new Payload.TourniquetTightened(
            name,
            Limb.LeftLeg,
            null,
            TourniquetMake.Windlass,
            "w1",
            site == TourniquetSite.AboveWound ? TighteningReason.ReSited : null,
            site,
            true
        ),
    ];

    private static readonly Payload[] Others =
    [
        new Payload.TourniquetSlackened("t1"),
        new Payload.TourniquetSlackened("t2"),
        new Payload.TourniquetRemoved("t3"),
        new Payload.BleedingChecked("w1", Bleeding.None),
        new Payload.BleedingChecked("w1", Bleeding.None),
        new Payload.BleedingChecked("w1", Bleeding.Active),
        new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding),
    ];

    private static string? NameOf(Payload what) =>
        what switch
        {
            Payload.TourniquetTightened p => p.Tourniquet,
            Payload.TourniquetSlackened p => p.Tourniquet,
            Payload.TourniquetRemoved p => p.Tourniquet,
            _ => null,
        };

    private static Payload.TourniquetTightened Second { get; } =
        new("t2", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.ReSited, Site: TourniquetSite.AboveWound, OnSkin: true);

    private static Case Sited(TourniquetMake make, TourniquetSite site, bool skin) =>
        Case.Well.With(
            "tourniquet",
            new Payload.TourniquetTightened("t1", Limb.LeftLeg, null, make, "w1", Site: site, OnSkin: skin),
            "00:40"
        );

    private static ReSiting? Act(Case of) => ReSiting.Of(Limb.LeftLeg, of.Record.Readings[0], Case.Now);
}
