using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold;

/// <summary>Evaluates conditions against a scene in strong Kleene logic, keeping the tree.</summary>
internal sealed class Evaluating(Protocol protocol, Scene scene)
{
    private readonly Dictionary<Input, ImmutableArray<Reading>> seen = [];

    public Trace Of(Condition condition) => condition switch
    {
        Condition.All all => Of(all, all.Parts, Truth.Met, (a, b) => a.And(b)),
        Condition.Any any => Of(any, any.Parts, Truth.NotMet, (a, b) => a.Or(b)),
        Condition.Not not => Negated(not, Of(not.Part)),
        Condition.Compare compare => Of(compare),
        Condition.OneOf oneOf => Leaf(oneOf, oneOf.Input, r => Kleene.Of(oneOf.Words.Contains(r.Word!)), oneOf.Input),
        _ => throw new UnreachableException(),
    };

    private static Trace Negated(Condition not, Trace part) => new(not, part.State.Not(), [part], [], null);

    private Trace Of(Condition condition, ImmutableArray<Condition> conditions, Truth start, Func<Truth, Truth, Truth> join)
    {
        var parts = conditions.Select(Of).ToImmutableArray();
        return new(condition, parts.Aggregate(start, (t, p) => join(t, p.State)), parts, [], null);
    }

    private Trace Of(Condition.Compare compare)
    {
        var (limits, byAge) = Limits(compare);
        Truth Judge(Reading reading) => limits.Aggregate((Truth?)null, (t, limit) => Kleene.Agreed(t, Holds(reading, compare.Comparison, limit)))!.Value;
        var unsure = Leaf(compare, compare.Input, Judge, compare.Input);
        var ageDecides = unsure.State == Truth.Unknown && limits.Length > 1 && unsure.Used.Any(u => !u.Stale);
        return (ageDecides ? unsure with { Needs = Input.AgeYears } : unsure) with { Used = [.. unsure.Used, .. byAge] };
    }

    /// <summary>The limits that may apply: one where the age is known (or does not matter), else all of them.</summary>
    private (ImmutableArray<double> Limits, ImmutableArray<Used> Age) Limits(Condition.Compare compare)
    {
        if (compare.Bands.IsEmpty)
            return ([compare.Limit], []);
        var ages = Seen(Input.AgeYears);
        if (ages.IsEmpty)
            return ([compare.Limit, .. compare.Bands.Select(b => b.Limit).Distinct()], []);
        var limits = ages.Select(age => compare.Bands
            .Where(b => age.Low >= b.FromYears && age.Low < b.UnderYears)
            .Select(b => b.Limit).FirstOrDefault(compare.Limit));
        return ([.. limits.Distinct()], [.. ages.Select(a => Show(Input.AgeYears, a))]);
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

    private static Truth Sure(bool always, bool sometimes) => always ? Truth.Met : sometimes ? Truth.Unknown : Truth.NotMet;

    private Trace Leaf(Condition condition, Input input, Func<Reading, Truth> judge, Input needs)
    {
        Truth? state = null;
        var used = ImmutableArray.CreateBuilder<Used>();
        foreach (var reading in Seen(input))
        {
            var shown = Show(input, reading);
            used.Add(shown);
            state = Kleene.Agreed(state, shown.Stale ? Truth.Unknown : judge(reading));
        }

        var known = state ?? Truth.Unknown;
        return new(condition, known, [], used.ToImmutable(), known == Truth.Unknown ? needs : null);
    }

    private ImmutableArray<Reading> Seen(Input input)
    {
        if (!seen.TryGetValue(input, out var readings))
            seen.Add(input, readings = Looking.For(input, scene));
        return readings;
    }

    private Used Show(Input input, Reading reading)
    {
        var age = reading.When.Until(scene.Now);
        var stale = !reading.Lasting && protocol.Freshness.TryGetValue(input.Name, out var fresh) && age.Max > fresh;
        return new(input.Name, Value(input, reading), reading.Lasting && !input.Expires ? null : age, stale);
    }

    private static string Value(Input input, Reading reading) => reading.Word ?? input.Type switch
    {
        InputType.Duration when double.IsInfinity(reading.High) => double.IsInfinity(reading.Low)
            ? "passed" : "from " + Say.Duration(Duration.FromSeconds(reading.Low)),
        InputType.Duration => Say.Duration(Duration.FromSeconds(reading.High)),
        _ => Say.Number(reading.Low),
    };
}
