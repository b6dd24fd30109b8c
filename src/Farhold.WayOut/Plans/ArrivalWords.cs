using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A forecast in plain words: ranges before points, and no more digits than it deserves.</summary>
public static class ArrivalWords
{
    /// <summary>Sentences, the range first. Times are of the plan's zone, else UTC.</summary>
    public static ImmutableArray<string> Sentences(Outlook outlook)
    {
        var zone = outlook.Plan.TimeZone ?? DateTimeZone.Utc;
        var said = ImmutableArray.CreateBuilder<string>();
        said.AddRange(Arrival(outlook));
        foreach (var chance in outlook.Deadlines)
            said.Add($"Before {chance.Deadline.Id} ({Clock(chance.Deadline.At, zone, outlook.Plan.Start, 1, 0)}): {Chance(chance.Before)}.");
        if (Leading(outlook) is { } leading)
            said.Add(leading);
        said.AddRange(outlook.Cautions);
        return said.ToImmutable();
    }

    /// <summary>Of these, the range of arrival and its middle.</summary>
    public static ImmutableArray<string> Arrival(Outlook outlook)
    {
        var zone = outlook.Plan.TimeZone ?? DateTimeZone.Utc;
        return [Range(outlook, zone), Middle(outlook, zone)];
    }

    /// <summary>What a change does, in a sentence.</summary>
    public static string Sentence(WhatIfAnswer answer, Outlook outlook)
    {
        var (later, error) = answer.LaterSeconds;
        var effect = !(Math.Abs(later) > 2 * error) || Math.Abs(later) < 60 ? "about the same arrival"
            : later > 0 ? $"about {Length(Duration.FromSeconds(later))} later on average"
            : $"about {Length(Duration.FromSeconds(-later))} sooner on average";
        var chances = answer.Deadlines.Select(d => $"before {d.Chance.Deadline.Id} {Chance(d.Chance.Before)}");
        var zone = outlook.Plan.TimeZone ?? DateTimeZone.Utc;
        var range = Ends(answer.Quantiles, zone, outlook.Plan.Start);
        return $"{answer.What}: {effect}; in eight of ten trials {string.Join("; ", chances.Prepend(range))}.";
    }

    /// <summary>A length as people say it: to 5 minutes under 2 hours, 15 under 6, then half hours, whole hours from a day on.</summary>
    public static string Length(Duration length)
    {
        var step = Step(length);
        var minutes = (long)Math.Round(length.TotalMinutes / step) * step;
        var (hours, rest) = (minutes / 60, minutes % 60);
        return hours == 0 ? $"{Math.Max(rest, 1)} min" : rest == 0 ? $"{hours} h" : $"{hours} h {rest} min";
    }

    /// <summary>A chance as a share of ten or a hundred, never none and never all.</summary>
    public static string Chance(ProbabilityEstimate p) => p.Value switch
    {
        < 0.01 => "less than 1 in 100",
        > 0.99 => "more than 99 in 100",
        < 0.1 => string.Create(CultureInfo.InvariantCulture, $"about {Math.Max(1, Math.Round(100 * p.Value)):0} in 100"),
        > 0.9 => string.Create(CultureInfo.InvariantCulture, $"about {Math.Min(99, Math.Round(100 * p.Value)):0} in 100"),
        _ when Math.Round(10 * p.Low) == Math.Round(10 * p.High) => string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(10 * p.Value):0} in 10"),
        _ => string.Create(CultureInfo.InvariantCulture, $"between {Math.Floor(10 * p.Low):0} and {Math.Ceiling(10 * p.High):0} in 10"),
    };

    private static string Range(Outlook outlook, DateTimeZone zone) =>
        $"Higher care {Ends(outlook.Quantiles, zone, outlook.Plan.Start)} in eight of ten trials.";

    private static string Ends(ImmutableArray<ArrivalQuantile> quantiles, DateTimeZone zone, Instant start)
    {
        var (early, late) = (quantiles.First(q => q.P == 0.1).At, quantiles.First(q => q.P == 0.9).At);
        // Rounded outwards, so that the words never promise more than the trials.
        return early is not { } from ? "not within 60 days"
            : late is not { } to ? $"not before {Spoken(from, zone, start, -1)}, and perhaps not at all"
            : $"between {Spoken(from, zone, start, -1)} and {Spoken(to, zone, start, 1)}";
    }

    private static string Middle(Outlook outlook, DateTimeZone zone) => outlook.At(0.5).At is { } middle
        ? $"As likely before as after {Spoken(middle, zone, outlook.Plan.Start, 0)}, about {Length(middle - outlook.Plan.Start)} after setting out."
        : "More likely than not, nothing comes within 60 days.";

    private static string? Leading(Outlook outlook)
    {
        var leading = outlook.Drivers.Where(d => d.Share > 0.1 && d.Share > 3 * d.StandardError).Take(3).ToArray();
        return leading.Length == 0 ? null
            : "What drives the spread most: " + string.Join("; ", leading.Select(d =>
                string.Create(CultureInfo.InvariantCulture, $"{d.What} (about {Math.Round(10 * d.Share):0} in 10)"))) + ".";
    }

    private static string Spoken(Instant at, DateTimeZone zone, Instant start, int outward) => Clock(at, zone, start, Step(at - start), outward);

    /// <summary>Hours and minutes, with the days after the start where there are any.</summary>
    private static string Clock(Instant at, DateTimeZone zone, Instant start, int stepMinutes, int outward)
    {
        var steps = at.ToUnixTimeTicks() / (double)(NodaConstants.TicksPerMinute * stepMinutes);
        var whole = outward < 0 ? Math.Floor(steps) : outward > 0 ? Math.Ceiling(steps) : Math.Round(steps);
        var local = Instant.FromUnixTimeSeconds((long)whole * stepMinutes * 60).InZone(zone);
        var days = Period.DaysBetween(start.InZone(zone).Date, local.Date);
        var clock = local.ToString("HH:mm", CultureInfo.InvariantCulture) + (zone == DateTimeZone.Utc ? " UTC" : "");
        return days == 0 ? clock : days == 1 ? clock + " next day" : clock + $" {(days > 0 ? "+" : "")}{days} days";
    }

    private static int Step(Duration length) => length.TotalHours switch
    {
        < 0.25 => 1,
        < 2 => 5,
        < 6 => 15,
        < 24 => 30,
        _ => 60,
    };
}
