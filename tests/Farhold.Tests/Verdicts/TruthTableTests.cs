using System.Collections.Immutable;

namespace Farhold.Tests.Verdicts;

/// <summary>The decision, state by state, against a table written here by hand.</summary>
/// <remarks>
/// <para>
/// The shipped protocol has 38 criteria with three states each: 3^38 is more than a million million million. What the decision
/// may look at is only, for every criterion, its role, its state and whether it was lifted. So the following is covered
/// without gaps:
/// </para>
/// <list type="bullet">
/// <item>all 3^12 (531,441) combinations over twelve criteria, the other twenty-six being at rest: of every role at least one, and
/// all that make up the signs of shock (strong, soft, two soft, one soft);</item>
/// <item>every single criterion and every pair of criteria, in all nine pairs of states, with all other criteria in turn
/// all met, all not met, all unknown, and all at rest (nothing stands against an attempt);</item>
/// <item>every criterion that can be lifted, lifted, in front of the same backgrounds.</item>
/// </list>
/// <para>Pairs within one role over all backgrounds show that no criterion is treated apart from its role.</para>
/// </remarks>
public class TruthTableTests
{
    private static readonly ImmutableArray<Criterion> Criteria = ShippedProtocol.Protocol.Criteria;

    private static readonly Truth[] States = [Truth.NotMet, Truth.Unknown, Truth.Met];

    /// <summary>What each criterion is for, read off the protocol by a person: a criterion that changes sides fails here.</summary>
    private static readonly Dictionary<string, string> Sides = new()
    {
        ["bleeding.active"] = "forbids",
        ["limit.time"] = "forbids",
        ["wound.amputation"] = "forbids",
        ["rate.substitute"] = "requires",
        ["shock.mental"] = "forbids",
        ["shock.radial-pulse"] = "forbids",
        ["shock.heart-rate"] = "forbids",
        ["shock.breath-rate"] = "forbids",
        ["shock.systolic"] = "forbids",
        ["shock.rate-over-pressure"] = "forbids",
        ["shock.pale"] = "soft",
        ["shock.cool"] = "soft",
        ["shock.clammy"] = "soft",
        ["shock.dizzy"] = "soft",
        ["shock.low-pressure"] = "soft",
        ["shock.refill"] = "soft",
        ["shock.child-rates"] = "soft",
        ["shock.soft-signs"] = "forbids",
        ["attempt.bled"] = "forbids",
        ["advice.no"] = "forbids",
        ["limit.start"] = "requires",
        ["shock.soft-stays"] = "forbids",
        ["materials.packing"] = "requires",
        ["materials.dressing"] = "requires",
        ["watch.able"] = "requires",
        ["tourniquet.tight"] = "requires",
        ["record.whole"] = "requires",
        ["rest.bleeding"] = "asks",
        ["limbs.one"] = "asks",
        ["rest.breathing"] = "asks",
        ["rest.trunk"] = "asks",
        ["rest.cold"] = "asks",
        ["rest.blood-thinner"] = "asks",
        ["shock.soft-sign"] = "asks",
        ["looks.clear"] = "requires",
        ["late.oversight"] = "requires",
        ["help.soon"] = "awaits",
    };

    private static readonly string[] Twelve =
    [
        "bleeding.active",
        "limit.time",
        "shock.heart-rate",
        "shock.pale",
        "shock.soft-signs",
        "shock.soft-sign",
        "rest.trunk",
        "watch.able",
        "looks.clear",
        "late.oversight",
        "record.whole",
        "help.soon",
    ];

    [Fact]
    public void The_table_knows_every_criterion_and_its_side() =>
        Assert.Equal(Sides, Criteria.ToDictionary(c => c.Id, c => Wire.Word(c.Role)));

    [Fact]
    public void All_states_of_twelve_criteria_come_to_the_verdict_of_the_table()
    {
        var places = Twelve.Select(id => Criteria.ToList().FindIndex(c => c.Id == id)).ToArray();
        var states = Criteria.Select(AtRest).ToArray();
        var total = (int)Math.Pow(3, places.Length);
        for (var n = 0; n < total; n++)
        {
            var rest = n;
            foreach (var place in places)
            {
                states[place] = States[rest % 3];
                rest /= 3;
            }

            Check(states);
        }
    }

    [Fact]
    public void Every_pair_of_criteria_in_all_states_comes_to_the_verdict_of_the_table()
    {
        foreach (var background in Backgrounds)
            for (var a = 0; a < Criteria.Length; a++)
            for (var b = a; b < Criteria.Length; b++)
                foreach (var one in States)
                foreach (var two in States)
                {
                    var states = Criteria.Select(background).ToArray();
                    states[a] = one;
                    states[b] = two;
                    Check(states);
                }
    }

    [Fact]
    public void What_is_lifted_counts_as_not_so()
    {
        foreach (var background in Backgrounds)
            for (var i = 0; i < Criteria.Length; i++)
                foreach (var lift in (Lift[])[Lift.Advice, Lift.Unreached])
                    if (Sides[Criteria[i].Id] == "asks")
                    {
                        var states = Criteria.Select(background).ToArray();
                        states[i] = Truth.Met;
                        var findings = FindingsOf(states);
                        var lifted = LimbJudge.Decide(findings.SetItem(i, findings[i] with { Lifted = lift }));
                        states[i] = Truth.NotMet;
                        Assert.Equal(Expected(states), lifted);
                    }
    }

    private static readonly Func<Criterion, Truth>[] Backgrounds = [_ => Truth.Met, _ => Truth.NotMet, _ => Truth.Unknown, AtRest];

    private static ImmutableArray<Finding> FindingsOf(Truth[] states) => [.. Criteria.Select((c, i) => Found[i][(int)states[i] + 1])];

    private static void Check(Truth[] states)
    {
        var findings = FindingsOf(states);
        var expected = Expected(states);
        var actual = LimbJudge.Decide(findings);
        if (expected != actual)
            Assert.Fail($"{actual} instead of {expected} for {string.Join(", ", Criteria.Select((c, i) => $"{c.Id} {states[i]}"))}");
    }

    /// <summary>
    /// The table. Row by row, the first that fits: something forbidden is so, or something required is not: leave on. Any
    /// of those unknown, something that asks first so or unknown, a soft sign unknown: check first. Help soon: await help. Unknown
    /// whether: check first. Otherwise: attempt. A soft sign that is there decides by the number of them, which is forbidden for itself.
    /// </summary>
    private static Farhold.Verdicts.Verdict Expected(Truth[] states)
    {
        bool against = false,
            open = false,
            soon = false,
            perhapsSoon = false;
        for (var i = 0; i < states.Length; i++)
        {
            switch (Sides[Criteria[i].Id], states[i])
            {
                case ("forbids", Truth.Met) or ("requires", Truth.NotMet):
                    against = true;
                    break;
                case ("forbids" or "requires" or "asks" or "soft", Truth.Unknown) or ("asks", Truth.Met):
                    open = true;
                    break;
                case ("awaits", Truth.Met):
                    soon = true;
                    break;
                case ("awaits", Truth.Unknown):
                    perhapsSoon = true;
                    break;
            }
        }

        if (against)
            return Farhold.Verdicts.Verdict.LeaveOn;
        if (open)
            return Farhold.Verdicts.Verdict.CheckFirst;
        if (soon)
            return Farhold.Verdicts.Verdict.AwaitHelp;
        return perhapsSoon ? Farhold.Verdicts.Verdict.CheckFirst : Farhold.Verdicts.Verdict.Attempt;
    }

    private static Truth AtRest(Criterion criterion) => Sides[criterion.Id] == "requires" ? Truth.Met : Truth.NotMet;

    /// <summary>By criterion and state.</summary>
    private static readonly Finding[][] Found =
    [
        .. Criteria.Select(c => States.Select(s => new Finding(c, new Trace(c.Condition, s, [], [], null))).ToArray()),
    ];
}
