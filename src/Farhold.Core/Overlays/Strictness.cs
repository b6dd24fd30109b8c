using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Overlays;

/// <summary>How a change compares: does it allow attempts in more cases, in fewer, the same, or can't it be told?</summary>
public enum Change
{
    Same,
    Tighter,
    Looser,

    /// <summary>Neither surely tighter nor the same: treated as looser.</summary>
    Different,
}

/// <summary>Compares parts of protocols by how often they let an attempt go ahead.</summary>
internal static class Strictness
{
    /// <summary>Both together: tighter only if neither is looser.</summary>
    public static Change With(this Change a, Change b) =>
        (a, b) switch
        {
            (Change.Same, _) => b,
            (_, Change.Same) => a,
            _ when a == b => a,
            _ => Change.Different,
        };

    public static bool IsLoosening(this Change change) => change is Change.Looser or Change.Different;

    public static Change Shorter(Duration before, Duration after) =>
        after < before ? Change.Tighter
        : after > before ? Change.Looser
        : Change.Same;

    public static Change Longer(Duration before, Duration after) => Shorter(after, before);

    /// <summary>Where more is tighter.</summary>
    public static Change Larger(double before, double after) =>
        after > before ? Change.Tighter
        : after < before ? Change.Looser
        : Change.Same;

    /// <summary>Of a criterion: one that is met more often is tighter, except where it states a requirement.</summary>
    public static Change Of(Criterion before, Criterion after)
    {
        if (before.Role != after.Role || before.Group != after.Group || before.Hard != after.Hard)
            return Change.Different;
        var met = MetMoreOften(before.Condition, after.Condition);
        return (before.Role == Role.Requires ? Reversed(met) : met)
            .With(Stricter(before.Stops, after.Stops))
            .With(Stricter(!before.AdviceLifts, !after.AdviceLifts))
            .With(
                (before.GivesWay, after.GivesWay) switch
                {
                    (null, null) => Change.Same,
                    (_, null) => Change.Tighter,
                    (null, _) => Change.Looser,
                    var (b, a) => Longer(b.Value, a.Value),
                }
            );
    }

    private static Change Stricter(bool before, bool after) =>
        before == after ? Change.Same
        : after ? Change.Tighter
        : Change.Looser;

    public static Change Of(AttemptStep before, AttemptStep after) =>
        before
            .Minimum.Keys.Union(after.Minimum.Keys)
            .Aggregate(Change.Same, (c, key) => c.With(Longer(before.Minimum.GetValueOrDefault(key), after.Minimum.GetValueOrDefault(key))))
            .With(
                before.Gate == after.Gate ? Change.Same
                : before.Gate is null ? Change.Tighter
                : Change.Different
            )
            .With(
                SameAsked(before.Twice, after.Twice) ? Change.Same
                : before.Twice is null ? Change.Tighter
                : Change.Different
            );

    public static bool SameGates(AttemptStep before, AttemptStep after) =>
        before.Gate == after.Gate && SameAsked(before.Twice, after.Twice);

    /// <summary>Looking at least as often at every time since slackening is no looser.</summary>
    public static Change Of(ObservationPlan before, ObservationPlan after)
    {
        Duration At(ObservationPlan plan, Duration since) =>
            plan.Periods.First(p => p.Until is null || since < p.Until).Every ?? Duration.Zero;
        return before
            .Periods.Concat(after.Periods)
            .Select(p => p.Until)
            .OfType<Duration>()
            .Append(Duration.Zero)
            .Aggregate(Change.Same, (c, since) => c.With(Shorter(At(before, since), At(after, since))))
            .With(Longer(before.AfterMove ?? Duration.Zero, after.AfterMove ?? Duration.Zero));
    }

    public static Change Of(CareTask before, CareTask after)
    {
        // What a task hangs on is not weighed: drink given where it was withheld is no tighter than drink withheld.
        if (
            before.Scope != after.Scope
            || before.DoneBy.Except(after.DoneBy).Any()
            || after.DoneBy.Except(before.DoneBy).Any()
            || before.Seen.Except(after.Seen).Any()
            || after.Seen.Except(before.Seen).Any()
            || before.ReplacedBy != after.ReplacedBy
            || !before.Again.SequenceEqual(after.Again)
            || before.OnlyStable != after.OnlyStable
            || before.Instead is null != after.Instead is null
            || !SameAsked(before.Condition, after.Condition)
            || !SameAsked(before.Unless, after.Unless)
            || !before.Drugs.SequenceEqual(after.Drugs)
        )
            return Change.Different;
        Change Compare(Duration? b, Duration? a) =>
            (b, a) switch
            {
                (null, null) => Change.Same,
                (null, _) => Change.Tighter,
                (_, null) => Change.Looser,
                ({ } x, { } y) => Shorter(x, y),
            };
        return Compare(before.Every, after.Every)
            .With(Compare(before.Unstable, after.Unstable))
            .With(Compare(before.Once, after.Once))
            .With(Compare(before.AtMost, after.AtMost))
            .With(Shorter(before.From, after.From))
            .With(Shorter(before.Night ?? Duration.Zero, after.Night ?? Duration.Zero))
            .With(Larger(before.People, after.People))
            .With(Stricter(before.AfterMove is not null, after.AfterMove is not null));
    }

    private static bool SameAsked(Condition? before, Condition? after) =>
        before is null ? after is null : after is not null && MetMoreOften(before, after) == Change.Same;

    /// <summary><see cref="Change.Tighter"/> where the condition after is met whenever the one before is.</summary>
    private static Change MetMoreOften(Condition before, Condition after) =>
        (before, after) switch
        {
            (Condition.All b, Condition.All a) => Parts(b.Parts, a.Parts, moreIs: Change.Looser),
            (Condition.Any b, Condition.Any a) => Parts(b.Parts, a.Parts, moreIs: Change.Tighter),
            (Condition.Not b, Condition.Not a) => Reversed(MetMoreOften(b.Part, a.Part)),
            (Condition.OneOf b, Condition.OneOf a) when b.Input == a.Input => a.Words.SetEquals(b.Words) ? Change.Same
            : a.Words.IsSupersetOf(b.Words) ? Change.Tighter
            : a.Words.IsSubsetOf(b.Words) ? Change.Looser
            : Change.Different,
            (Condition.Compare b, Condition.Compare a)
                when b.Input == a.Input && b.Comparison == a.Comparison && b.Measured == a.Measured => Limits(b, a),
            (_, Condition.Any a) => Parts([before], a.Parts, moreIs: Change.Tighter),
            _ => Change.Different,
        };

    /// <summary>Parts are compared in order; those that only one side has come last.</summary>
    private static Change Parts(ImmutableArray<Condition> before, ImmutableArray<Condition> after, Change moreIs)
    {
        var change = before.Zip(after).Aggregate(Change.Same, (c, pair) => c.With(MetMoreOften(pair.First, pair.Second)));
        return (after.Length - before.Length) switch
        {
            0 => change,
            > 0 => change.With(moreIs),
            < 0 => change.With(Reversed(moreIs)),
        };
    }

    private static Change Limits(Condition.Compare before, Condition.Compare after)
    {
        var upward = before.Comparison is Comparison.Above or Comparison.AtLeast;
        var ages = before.Bands.Concat(after.Bands).SelectMany(b => (double[])[b.FromYears, b.UnderYears]).Append(-1).Distinct();
        return ages.Aggregate(
            Change.Same,
            (c, age) =>
            {
                var (b, a) = (LimitAt(before, age), LimitAt(after, age));
                return c.With(
                    a == b ? Change.Same
                    : a < b == upward ? Change.Tighter
                    : Change.Looser
                );
            }
        );
    }

    private static double LimitAt(Condition.Compare compare, double age) =>
        compare.Bands.Where(b => age >= b.FromYears && age < b.UnderYears).Select(b => b.Limit).FirstOrDefault(compare.Limit);

    private static Change Reversed(Change change) =>
        change switch
        {
            Change.Tighter => Change.Looser,
            Change.Looser => Change.Tighter,
            _ => change,
        };
}
