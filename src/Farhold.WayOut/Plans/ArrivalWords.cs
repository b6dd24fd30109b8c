using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A forecast in plain words: ranges before points, and no more digits than it deserves.</summary>
public static class ArrivalWords
{
    /// <summary>Sentences, the answer first. Times are of the plan's zone, else UTC.</summary>
    public static ImmutableArray<string> Sentences(Outlook outlook)
    {
        var clock = ArrivalClock.Of(outlook.Plan);
        var said = ImmutableArray.CreateBuilder<string>();
        said.AddRange(Arrival(outlook));
        foreach (var chance in outlook.Deadlines)
            said.Add($"Before {chance.Deadline.Id} ({clock.Exactly(chance.Deadline.At)}): {Chance(chance.Before)}.");
        if (Leading(outlook) is { } leading)
            said.Add(leading);
        said.AddRange(outlook.Cautions);
        return said.ToImmutable();
    }

    /// <summary>Of these, the answer itself: by case, then as one range; the middle only where trials lie about it.</summary>
    public static ImmutableArray<string> Arrival(Outlook outlook)
    {
        var clock = ArrivalClock.Of(outlook.Plan);
        var said = ImmutableArray.CreateBuilder<string>();
        if (outlook.Cases.Choice is not null || outlook.Cases.None.Hits > 0)
            said.Add(CaseWords.Sentence(outlook.Cases, clock));
        said.AddRange(CaseWords.NotFeasible(outlook.Cases));
        said.Add($"Higher care {Ends(outlook.Quantiles, clock)} in eight of ten trials.");
        if (Middle(outlook, clock) is { } middle)
            said.Add(middle);
        return said.ToImmutable();
    }

    /// <summary>What a change does, in a sentence.</summary>
    public static string Sentence(WhatIfAnswer answer, Outlook outlook)
    {
        var (later, error) = answer.LaterSeconds;
        var effect =
            !(Math.Abs(later) > 2 * error) || Math.Abs(later) < 60 ? "about the same arrival"
            : later > 0 ? $"about {Length(Duration.FromSeconds(later))} later on average"
            : $"about {Length(Duration.FromSeconds(-later))} sooner on average";
        var chances = answer.Deadlines.Select(d => $"before {d.Chance.Deadline.Id} {Chance(d.Chance.Before)}");
        var range = Ends(answer.Quantiles, ArrivalClock.Of(outlook.Plan));
        var leads =
            answer.Cases.Choice is not null && answer.Cases.Leader is { } leader && leader.Name != outlook.Cases.Leader?.Name
                ? $"; then {leader.Name} is first most often"
                : "";
        return $"{answer.What}: {effect}; in eight of ten trials {string.Join("; ", chances.Prepend(range))}{leads}.";
    }

    /// <summary>A length as people say it: to 5 minutes under 2 hours, 15 under 6, then half hours, whole hours from a day on.</summary>
    public static string Length(Duration length)
    {
        var step = Step(length);
        var minutes = (long)Math.Round(length.TotalMinutes / step) * step;
        var (hours, rest) = (minutes / 60, minutes % 60);
        return hours == 0 ? $"{Math.Max(rest, 1)} min"
            : rest == 0 ? $"{hours} h"
            : $"{hours} h {rest} min";
    }

    /// <summary>A chance as a share of ten or a hundred, never none and never all.</summary>
    public static string Chance(ProbabilityEstimate p) =>
        p.Value switch
        {
            < 0.01 => "less than 1 in 100",
            > 0.99 => "more than 99 in 100",
            < 0.1 => string.Create(CultureInfo.InvariantCulture, $"about {Math.Max(1, Math.Round(100 * p.Value)):0} in 100"),
            > 0.9 => string.Create(CultureInfo.InvariantCulture, $"about {Math.Min(99, Math.Round(100 * p.Value)):0} in 100"),
            _ when Math.Round(10 * p.Low) == Math.Round(10 * p.High) => string.Create(
                CultureInfo.InvariantCulture,
                $"about {Math.Round(10 * p.Value):0} in 10"
            ),
            _ => string.Create(CultureInfo.InvariantCulture, $"between {Math.Floor(10 * p.Low):0} and {Math.Ceiling(10 * p.High):0} in 10"),
        };

    private static string Ends(ImmutableArray<ArrivalQuantile> quantiles, ArrivalClock clock)
    {
        var (early, late) = (quantiles.First(q => q.P == 0.1).At, quantiles.First(q => q.P == 0.9).At);
        return early is not { } from ? "not within 60 days"
            : late is not { } to ? $"not before {clock.At(from, -1)}, and perhaps not at all"
            : clock.Between(from, to);
    }

    /// <summary>Nothing where hardly a trial lies about the middle: between two humps it is a time at which nothing arrives.</summary>
    private static string? Middle(Outlook outlook, ArrivalClock clock) =>
        outlook.At(0.5).At is not { } middle ? "More likely than not, nothing comes within 60 days."
        : outlook.MiddleIsVoid ? null
        : $"As likely before as after {clock.At(middle)}, about {Length(middle - outlook.Plan.Start)} after setting out.";

    private static string? Leading(Outlook outlook)
    {
        var leading = outlook.Drivers.Where(d => d.Share > 0.1 && d.Share > 3 * d.StandardError).Take(3).ToArray();
        return leading.Length == 0
            ? null
            : "How uncertain arrival is hangs most on (they overlap): "
                + string.Join(
                    "; ",
                    leading.Select(d =>
                        string.Create(CultureInfo.InvariantCulture, $"{d.What} ({Math.Round(100 * d.Share):0} % of the variance)")
                    )
                )
                + ".";
    }

    internal static int Step(Duration length) =>
        length.TotalHours switch
        {
            < 0.25 => 1,
            < 2 => 5,
            < 6 => 15,
            < 24 => 30,
            _ => 60,
        };
}
