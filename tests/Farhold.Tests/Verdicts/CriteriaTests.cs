namespace Farhold.Tests.Verdicts;

/// <summary>Every criterion of the shipped protocol, driven to each of its states by a record.</summary>
public class CriteriaTests
{
    private static readonly Case Lone = Case.Well.NewSigns(s => s with { Pale = true });

    /// <summary>Met, not met, unknown; null where the state can't be (what is known always, or known only one way).</summary>
    private static readonly Dictionary<string, (Case? Met, Case? NotMet, Case? Unknown)> Reached = new()
    {
        ["bleeding.active"] = (
            Case.Well.With("bleeding", new Payload.BleedingChecked("w1", Bleeding.Active)),
            Case.Well,
            Case.Well.With("bleeding", null)
        ),
        ["limit.time"] = (Case.Well.TightFor("06:00"), Case.Well, null),
        ["wound.amputation"] = (
            Case.Well.With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.PartialAmputation)),
            Case.Well,
            Case.Well.With("wound", null)
        ),
        ["rate.substitute"] = (
            Case.Well.Taking("bisoprolol"),
            null,
            Case.Well.Taking("bisoprolol").Signs(s => s with { Systolic = null, NoPressureCuff = true })
        ),
        ["shock.mental"] = Sign(s => s with { Mental = Mental.Confused }, s => s with { Mental = null }),
        ["shock.radial-pulse"] = Sign(s => s with { RadialPulse = RadialPulse.Weak }, s => s with { RadialPulse = null }),
        ["shock.heart-rate"] = Sign(s => s with { HeartRate = 121 }, s => s with { HeartRate = null }),
        ["shock.breath-rate"] = Sign(s => s with { RespiratoryRate = 31 }, s => s with { RespiratoryRate = null }),
        ["shock.systolic"] = Sign(s => s with { Systolic = 89 }, s => s with { Systolic = null }),
        ["shock.rate-over-pressure"] = Sign(s => s with { HeartRate = 106, Systolic = 105 }, s => s with { HeartRate = null }),
        ["shock.pale"] = Sign(s => s with { Pale = true }, s => s with { Pale = null }),
        ["shock.cool"] = Sign(s => s with { Cool = true }, s => s with { Cool = null }),
        ["shock.clammy"] = Sign(s => s with { Clammy = true }, s => s with { Clammy = null }),
        ["shock.dizzy"] = Sign(s => s with { Dizzy = true }, s => s with { Dizzy = null }),
        ["shock.low-pressure"] = Sign(s => s with { HeartRate = 115 }, s => s with { Systolic = null }),
        ["shock.refill"] = (
            Case.Well.NewSigns(s => s with { CapillaryRefillS = 3 }),
            Case.Well,
            Case.Well.With("earlier", Some.GoodSigns with { CapillaryRefillS = 3 }, "00:17")
        ),
        ["shock.child-rates"] = (
            Case.Well.Aged(8).Signs(s => s with { HeartRate = 119 }),
            Case.Well.Aged(8),
            Case.Well.Aged(8).Signs(s => s with { HeartRate = null })
        ),
        ["shock.soft-signs"] = (Case.Well.NewSigns(s => s with { Pale = true, Dizzy = true }), Lone, null),
        ["attempt.bled"] = (
            Case.Well.Tried("00:30", "00:20", AttemptOutcome.Bled),
            Case.Well.Tried("00:30", "00:20", AttemptOutcome.Abandoned),
            null
        ),
        ["advice.no"] = (Case.Well.Refused(), Case.Well.Advised(), null),
        ["limit.start"] = (Case.Well, Case.Well.TightFor("05:41"), null),
        ["shock.soft-stays"] = (Case.Well.Signs(s => s with { Pale = true }), Lone, null),
        ["materials.packing"] = (Case.Well, Without("gauze", "plain-gauze", "haemostatic-gauze", "cloth"), Without("gauze", "plain-gauze")),
        ["materials.dressing"] = (
            Case.Well,
            Without("dressing", "pressure-dressing", "elastic-bandage", "cloth"),
            Case.Well.With("dressing", null)
        ),
        ["watch.able"] = (Case.Well, Case.Well.With("watch", new Payload.WatchStated(false)), Case.Well.With("watch", null)),
        ["tourniquet.tight"] = (
            Case.Well,
            null,
            Case.Well.And(new Happened(Case.Ago("00:41"), Case.Ago("00:10")), new Payload.TourniquetSlackened("t1"))
        ),
        ["record.whole"] = (Case.Well, null, null), // what makes it unknown: see the doubts of a record
        ["rest.bleeding"] = (Case.Well.LookedOver(o => o with { BleedingElsewhere = true }), Case.Well, Case.Well.With("over", null)),
        ["limbs.one"] = (Case.Well.AndRightLeg("00:50"), Case.Well.AndRightLeg("00:30"), null),
        ["rest.breathing"] = (
            Case.Well.LookedOver(o => o with { BreathingHard = true }),
            Case.Well,
            Case.Well.LookedOver(o => o with { BreathingHard = null })
        ),
        ["rest.trunk"] = (
            Case.Well.LookedOver(o => o with { TrunkWound = true }),
            Case.Well,
            Case.Well.LookedOver(o => o with { TrunkWound = null })
        ),
        ["rest.cold"] = (
            Case.Well.LookedOver(o => o with { VeryCold = true }),
            Case.Well,
            Case.Well.LookedOver(o => o with { VeryCold = null })
        ),
        ["rest.blood-thinner"] = (
            Case.Well.Taking("apixaban"),
            Case.Well.Taking("aspirin"),
            Case.Well.LookedOver(o => o with { BloodThinner = null })
        ),
        ["shock.soft-sign"] = (Lone, Case.Well, null),
        ["looks.clear"] = (Case.Well, null, Case.Well.With("earlier", null)),
        ["late.oversight"] = (Case.Well.TightFor("02:00").Advised(), Case.Well.TightFor("02:00").Refused(), Case.Well.TightFor("02:00")),
        ["help.soon"] = (Case.Well.HelpIn("02:00"), Case.Well.HelpIn("02:01"), Case.Well.With("help", null)),
    };

    public static TheoryData<string> Ids => [.. ShippedProtocol.Protocol.Criteria.Select(c => c.Id)];

    [Theory, MemberData(nameof(Ids))]
    public void A_record_brings_every_criterion_to_each_of_its_states(string id)
    {
        var (met, notMet, unknown) = Reached[id];
        if (met is not null)
            Assert.Equal(Truth.Met, met.State(id));
        if (notMet is not null)
            Assert.Equal(Truth.NotMet, notMet.State(id));
        if (unknown is not null)
            Assert.Equal(Truth.Unknown, unknown.State(id));
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_criterion_that_is_unknown_asks_for_what_it_needs(string id)
    {
        if (Reached[id].Unknown is not { } unknown)
            return;
        Assert.Equal(Verdict.CheckFirst, unknown.Verdict);
        var asked = ShippedProtocol.Protocol.Criteria.Single(c => c.Id == id).Condition.Inputs;
        Assert.NotEmpty(unknown.Limb.CheckFirst.Intersect(asked));
    }

    /// <summary>One criterion, met: which verdict it alone gives (a soft sign alone: first a check).</summary>
    [Theory, MemberData(nameof(Ids))]
    public void What_stands_against_an_attempt_decides_by_its_role(string id)
    {
        var criterion = ShippedProtocol.Protocol.Criteria.Single(c => c.Id == id);
        var (met, notMet, _) = Reached[id];
        var (against, expected) = criterion.Role switch
        {
            Role.Forbids => (met, Verdict.LeaveOn),
            Role.Requires => (notMet, Verdict.LeaveOn),
            Role.Awaits => (met, Verdict.AwaitHelp),
            Role.Asks => (met, Verdict.CheckFirst),
            _ => (null, default),
        };
        if (against is not null)
            Assert.Equal(expected, against.Verdict);
    }

    private static (Case, Case, Case) Sign(
        Func<Payload.SignsTaken, Payload.SignsTaken> met,
        Func<Payload.SignsTaken, Payload.SignsTaken> unknown
    ) => (Case.Well.NewSigns(met), Case.Well, Case.Well.Signs(unknown));

    /// <summary>In place of a part of the scene, these items counted and found to be none.</summary>
    private static Case Without(string part, params string[] items) =>
        Case.Well.With(part, null).And("00:08", [.. items.Select(i => new Payload.SuppliesStated(i, 0))]);
}
