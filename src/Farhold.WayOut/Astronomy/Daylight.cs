using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>A time throughout which the light is of one kind.</summary>
/// <param name="End">Belongs to the next stretch.</param>
public readonly record struct LightStretch(Instant Start, Instant End, Light Light)
{
    public Duration Length => End - Start;
}

/// <summary>Light, twilight and dark between two instants.</summary>
public static class Daylight
{
    /// <summary>Longer times are refused; a year of looks is some thousandths of a second of work for each month.</summary>
    public static readonly Duration Longest = Duration.FromDays(400);

    /// <returns>Stretches that follow one another without gap from start to end; neighbours differ. Empty for an empty time.</returns>
    /// <exception cref="ArgumentException">The interval has no start or no end, or is longer than <see cref="Longest"/>.</exception>
    public static ImmutableArray<LightStretch> Along(Interval interval, GeoPoint place)
    {
        if (!interval.HasStart || !interval.HasEnd || interval.Duration > Longest)
            throw new ArgumentException($"The time must have a start and an end at most {Longest.TotalDays} days apart.", nameof(interval));
        if (interval.Duration == Duration.Zero)
            return [];

        double[] altitudes = [.. Enumerable.Range(1, 4).Select(light => LightSteps.Beginning((Light)light))];
        var changes = SunCrossings
            .Find(interval.Start, interval.End, place, altitudes)
            .SelectMany((crossings, i) => crossings.Select(c => (c.At, Light: (Light)(c.Rising ? i + 1 : i))))
            .OrderBy(change => change.At)
            .ToList();

        var stretches = ImmutableArray.CreateBuilder<LightStretch>();
        var (start, light) = (interval.Start, Sun.LightAt(interval.Start, place));
        foreach (var change in changes)
        {
            Close(change.At);
            light = change.Light;
        }

        Close(interval.End);
        return stretches.ToImmutable();

        void Close(Instant end)
        {
            if (end <= start)
                return;
            if (stretches.Count > 0 && stretches[^1].Light == light)
                stretches[^1] = stretches[^1] with { End = end };
            else
                stretches.Add(new(start, end, light));
            start = end;
        }
    }

    /// <summary>How much of a time is at least as light as <paramref name="least"/>.</summary>
    public static Duration AtLeast(ImmutableArray<LightStretch> stretches, Light least) =>
        stretches.Where(s => s.Light >= least).Aggregate(Duration.Zero, (sum, s) => sum + s.Length);
}
