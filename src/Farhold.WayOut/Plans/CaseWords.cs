using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Which way is first how often, in words that add up.</summary>
public static class CaseWords
{
    /// <summary>One sentence for a reader who sees no other: every way with its share and its range, and how often nothing comes.</summary>
    public static string Sentence(ByCase cases, ArrivalClock clock)
    {
        var tens = Tens([.. cases.Ways.Select(w => w.Share.Hits), cases.None.Hits]);
        var parts = cases
            .Ways.Select((way, w) => (Way: way, Tens: tens[w]))
            .Where(p => p.Way.Share.Hits > 0)
            .Select(p => Case(cases, p.Way, p.Tens, clock))
            .ToList();
        if (cases.None.Hits > 0)
            parts.Add(PlanTexts.CaseNone(Share(cases.None, tens[^1])));
        var said = string.Join("; ", parts);
        return char.ToUpperInvariant(said[0]) + said[1..] + ".";
    }

    /// <summary>What cannot be counted on, each with its reason.</summary>
    public static IEnumerable<string> NotFeasible(ByCase cases) =>
        cases.NotFeasible.Select(stopped => PlanTexts.NotFeasible(stopped.Place.Label, stopped.Why));

    /// <summary>How many times, of ten, each: whole numbers that add up to ten (largest remainders).</summary>
    public static ImmutableArray<int> Tens(ImmutableArray<int> hits) => Of(hits, 10);

    internal static ImmutableArray<int> Of(ImmutableArray<int> hits, int whole)
    {
        var all = (long)hits.Sum(h => (long)h);
        if (all == 0)
            return [.. hits.Select(_ => 0)];
        var shares = hits.Select(h => (int)(h * (long)whole / all)).ToArray();
        foreach (var i in Enumerable.Range(0, hits.Length).OrderByDescending(i => hits[i] * (long)whole % all).Take(whole - shares.Sum()))
            shares[i]++;
        return [.. shares];
    }

    private static string Share(ProbabilityEstimate share, int tens) =>
        share.Hits == share.Trials ? PlanTexts.InAll
        : tens == 0 ? PlanTexts.InFew
        : tens == 10 ? PlanTexts.InNearlyAll
        : PlanTexts.InTenths(tens);

    private static string Case(ByCase cases, WayCase way, int tens, ArrivalClock clock) =>
        cases.Choice is null
            ? PlanTexts.CaseReached(Share(way.Share, tens), Range(way, clock))
            : PlanTexts.CaseWay(Share(way.Share, tens), way.Name, Range(way, clock));

    private static string Range(WayCase way, ArrivalClock clock) =>
        way.At(0.1)?.At is { } early && way.At(0.9)?.At is { } late ? clock.Between(early, late) : "";
}
