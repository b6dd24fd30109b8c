using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Evaluates criteria against a scene in strong Kleene logic, keeping the tree.</summary>
/// <remarks>
/// A clock of the limb that is known only as a range is never unknown: it is taken on the side that is worse for the
/// casualty, which is the side that stands against an attempt.
/// </remarks>
/// <param name="freshness">How long values stay fresh, by input; one that is not in it stays so for good.</param>
/// <param name="casualty">
/// The same for the casualty as a whole, if there is one: what asks nothing of the limb is evaluated there, once for all limbs.
/// </param>
internal sealed class CriterionEvaluator(
    ImmutableSortedDictionary<string, Duration> freshness,
    Scene scene,
    CriterionEvaluator? casualty = null
)
{
    private readonly Dictionary<Input, Sight> seen = [];
    private readonly Dictionary<Criterion, Finding> found = new(ReferenceEqualityComparer.Instance);

    /// <summary>A value that may still be fresh counts; for finding out whether a sign may have been there at all.</summary>
    public bool PossiblyFresh { get; init; }

    public Finding Of(Criterion criterion)
    {
        if (casualty is not null && !criterion.Condition.AsksOfLimb)
            return casualty.Of(criterion);
        if (!found.TryGetValue(criterion, out var finding))
        {
            finding = new(criterion, Of(criterion.Condition, criterion.Role == Role.Requires ? Truth.NotMet : Truth.Met));
            found.Add(criterion, finding = finding with { Lifted = Lifts.Of(finding, scene.Casualty) });
        }

        return finding;
    }

    /// <summary>Whether an input is surely known, by values no older than that.</summary>
    public bool IsKnown(Input input, Duration fresh) =>
        Seen(input).Readings is { IsEmpty: false } readings
        && readings.All(r => r is { Doubtful: false, Contradicted: false } && (r.Lasting || r.When.Until(scene.Now).Max <= fresh));

    public ImmutableArray<Reading> Readings(Input input) => Seen(input).Readings;

    /// <summary>A condition that warns when it is met; a clock's range counts on the side that warns.</summary>
    public Trace Of(Condition condition) => Of(condition, Truth.Met);

    private Trace Of(Condition condition, Truth worse) =>
        condition switch
        {
            Condition.All all => Of(all, all.Parts, worse, Truth.Met, static (a, b) => a.And(b)),
            Condition.Any any => Of(any, any.Parts, worse, Truth.NotMet, static (a, b) => a.Or(b)),
            Condition.Not not => Negated(not, Of(not.Part, worse.Not())),
            Condition.Compare compare => Of(compare, worse),
            Condition.OneOf oneOf => Leaf(new(oneOf, oneOf.Input, [], worse)),
            _ => throw new UnreachableException(),
        };

    private static Trace Negated(Condition not, Trace part) => new(not, part.State.Not(), [part], [], null);

    private Trace Of(Condition condition, ImmutableArray<Condition> conditions, Truth worse, Truth state, Func<Truth, Truth, Truth> join)
    {
        var parts = ImmutableArray.CreateBuilder<Trace>(conditions.Length);
        foreach (var part in conditions)
        {
            parts.Add(Of(part, worse));
            state = join(state, parts[^1].State);
        }

        return new(condition, state, parts.MoveToImmutable(), [], null);
    }

    private Trace Of(Condition.Compare compare, Truth worse)
    {
        var (limits, byAge) = Limits(compare);
        var asked = new Asked(compare, compare.Input, limits, worse);
        var unsure = Leaf(asked);
        if (compare.Measured && unsure.State == Truth.Unknown && IsUnmeasured(asked))
            return unsure with { State = Truth.NotMet, Needs = null };
        var ageDecides = unsure.State == Truth.Unknown && limits.Length > 1 && unsure.Used.Any(u => !u.Stale);
        return byAge.IsEmpty && !ageDecides
            ? unsure
            : unsure with
            {
                Needs = ageDecides ? Input.AgeYears : unsure.Needs,
                Used = [.. unsure.Used, .. byAge],
            };
    }

    /// <summary>The limits that may apply: one where the age is known (or does not matter), else all of them.</summary>
    private (ImmutableArray<double> Limits, ImmutableArray<Used> Age) Limits(Condition.Compare compare)
    {
        if (compare.Bands.IsEmpty)
            return ([compare.Limit], []);
        var ages = Seen(Input.AgeYears);
        return ages.Readings switch
        {
            [] => ([compare.Limit, .. compare.Bands.Select(b => b.Limit).Distinct()], []),
            [var age] => ([LimitAt(age, compare)], ages.Used),
            var several => (LimitsAt(several, compare), ages.Used),
        };
    }

    private static ImmutableArray<double> LimitsAt(ImmutableArray<Reading> ages, Condition.Compare compare) =>
        [.. ages.Select(age => LimitAt(age, compare)).Distinct()];

    private static double LimitAt(Reading age, Condition.Compare compare)
    {
        foreach (var band in compare.Bands)
            if (age.Low >= band.FromYears && age.Low < band.UnderYears)
                return band.Limit;
        return compare.Limit;
    }

    /// <summary>What is asked of one reading.</summary>
    private static Truth Answer(Asked asked, Reading reading)
    {
        if (asked.Condition is Condition.OneOf oneOf)
            return Kleene.Of(oneOf.Words.Contains(reading.Word!));
        var compare = (Condition.Compare)asked.Condition;
        Truth? all = null;
        foreach (var limit in asked.Limits)
            all = Kleene.Agreed(all, Holds(reading, compare.Comparison, limit));
        return all == Truth.Unknown && compare.Input.IsClock ? asked.Worse : all!.Value;
    }

    private static Truth Holds(Reading reading, Comparison comparison, double limit)
    {
        if (reading.Word is not null)
            return Truth.NotMet;
        return comparison switch
        {
            Comparison.Above => Sure(reading.Low > limit, reading.High > limit),
            Comparison.AtLeast => Sure(reading.Low >= limit, reading.High >= limit),
            Comparison.Below => Sure(reading.High < limit, reading.Low < limit),
            Comparison.AtMost => Sure(reading.High <= limit, reading.Low <= limit),
            _ => throw new UnreachableException(),
        };
    }

    private static Truth Sure(bool always, bool sometimes) =>
        always ? Truth.Met
        : sometimes ? Truth.Unknown
        : Truth.NotMet;

    /// <summary>Never measured, or last measured without meeting the condition, and too long ago to count.</summary>
    private bool IsUnmeasured(Asked asked)
    {
        var sight = Seen(asked.Input);
        for (var i = 0; i < sight.Readings.Length; i++)
            if (
                !sight.Used[i].Stale
                || sight.Readings[i].Doubtful
                || sight.Readings[i].Contradicted
                || Answer(asked, sight.Readings[i]) != Truth.NotMet
            )
                return false;
        return true;
    }

    /// <summary>Readings that disagree leave the answer open, except that of several at one look the worse one counts.</summary>
    private Trace Leaf(Asked asked)
    {
        Truth? state = null;
        var (input, worse) = (asked.Input, asked.Worse);
        var sight = Seen(input);
        for (var i = 0; i < sight.Readings.Length; i++)
        {
            var one = sight.Used[i].Stale || sight.Readings[i].Doubtful ? Truth.Unknown : Answer(asked, sight.Readings[i]);
            if (sight.Readings[i].Contradicted && one != worse)
                one = Truth.Unknown;
            state = input.IsSign && (one == worse || state == worse) ? worse : Kleene.Agreed(state, one);
        }

        var known = state ?? Truth.Unknown;
        return new(asked.Condition, known, [], sight.Used, known == Truth.Unknown ? input : null);
    }

    private Sight Seen(Input input)
    {
        if (casualty is not null && !input.OfLimb)
            return casualty.Seen(input);
        if (!seen.TryGetValue(input, out var sight))
            seen.Add(input, sight = Look(input));
        return sight;
    }

    private Sight Look(Input input)
    {
        var fresh = freshness.GetValueOrDefault(input.Name, Duration.MaxValue);
        var readings = InputReadings.For(input, scene, fresh);
        var used = ImmutableArray.CreateBuilder<Used>(readings.Length);
        foreach (var reading in readings)
            used.Add(Show(input, reading, fresh));
        return new(readings, used.MoveToImmutable());
    }

    private Used Show(Input input, Reading reading, Duration fresh)
    {
        var age = reading.When.Until(scene.Now);
        var stale = !reading.Lasting && (PossiblyFresh ? age.Min : age.Max) > fresh;
        return new(input.Name, Value(input, reading), reading.Lasting && !input.Expires ? null : age, stale)
        {
            Doubtful = reading.Doubtful || reading.Contradicted,
        };
    }

    private static Duration Least(double seconds) => Duration.FromSeconds(Math.Max(0, seconds));

    private static string Value(Input input, Reading reading) =>
        reading.Word
        ?? input.Type switch
        {
            InputType.Duration when double.IsInfinity(reading.High) => double.IsInfinity(reading.Low)
                ? "passed"
                : "from " + Say.Duration(Duration.FromSeconds(reading.Low)),
            InputType.Duration => Say.Elapsed(new(Least(reading.Low), Least(reading.High))),
            _ => Say.Number(reading.Low),
        };

    /// <summary>A leaf of the tree, and what it is asked with.</summary>
    /// <param name="Limits">Those that may apply; empty where it asks for words.</param>
    private readonly record struct Asked(Condition Condition, Input Input, ImmutableArray<double> Limits, Truth Worse);

    /// <summary>What was seen of an input, and each reading as it is shown.</summary>
    private readonly record struct Sight(ImmutableArray<Reading> Readings, ImmutableArray<Used> Used);
}
