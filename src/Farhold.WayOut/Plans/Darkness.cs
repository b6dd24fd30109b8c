using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>When it is dark along the way, as far ahead as someone worked it out.</summary>
/// <remarks>Beyond <see cref="KnownUntil"/> the last 24 hours are taken to repeat.</remarks>
public sealed class Darkness
{
    private Darkness(ImmutableArray<(Instant From, Instant To)> stretches, Instant knownUntil) =>
        (Stretches, KnownUntil) = (stretches, knownUntil);

    /// <summary>In order, apart from one another.</summary>
    public ImmutableArray<(Instant From, Instant To)> Stretches { get; }

    public Instant KnownUntil { get; }

    /// <param name="stretches">Dark from and to, in any order; overlapping ones count once.</param>
    /// <param name="knownUntil">Until when the stretches tell the whole truth: a day after the plan's start at least.</param>
    /// <exception cref="ArgumentException">A stretch ends before it begins.</exception>
    public static Darkness Of(IEnumerable<(Instant From, Instant To)> stretches, Instant knownUntil)
    {
        var merged = new List<(Instant From, Instant To)>();
        foreach (var (from, to) in stretches.OrderBy(s => s.From))
        {
            if (to < from)
                throw new ArgumentException($"It can't be dark from {from} to {to}.", nameof(stretches));
            if (merged.Count > 0 && from <= merged[^1].To)
                merged[^1] = (merged[^1].From, Instant.Max(merged[^1].To, to));
            else if (from < to)
                merged.Add((from, to));
        }

        return new([.. merged.Where(s => s.From < knownUntil).Select(s => (s.From, Instant.Min(s.To, knownUntil)))], knownUntil);
    }

    public bool IsDark(Instant at) => Stretches.Any(s => s.From <= at && at < s.To);

    /// <exception cref="ArgumentException">Less than a day is known after the start.</exception>
    internal DarkClock Against(Instant start)
    {
        var day = Duration.FromDays(1);
        if (KnownUntil < start + day)
            throw new ArgumentException($"Darkness is known until {KnownUntil}, less than a day after {start}.", nameof(start));
        var all = Stretches.ToList();
        var lastDay = Of(
            Stretches.Select(s => (Instant.Max(s.From, KnownUntil - day), s.To)).Where(s => s.Item1 < s.To),
            KnownUntil
        ).Stretches;
        for (var days = 1; KnownUntil + (day * (days - 1)) < start + DarkClock.Horizon; days++)
            all.AddRange(lastDay.Select(s => (s.From + (day * days), s.To + (day * days))));
        var merged = Of(all, start + DarkClock.Horizon).Stretches;
        return new([.. merged.Select(s => (s.From - start).TotalSeconds)], [.. merged.Select(s => (s.To - start).TotalSeconds)]);
    }
}

/// <summary>Darkness in seconds after a start, for use within trials.</summary>
internal sealed class DarkClock(double[] from, double[] until)
{
    /// <summary>Who has not arrived by then never does, as far as a forecast goes.</summary>
    public static readonly Duration Horizon = Duration.FromDays(60);

    private static readonly double HorizonSeconds = Horizon.TotalSeconds;

    public bool IsDark(double at) => Next(at) is var i && i < from.Length && from[i] <= at;

    /// <summary>The first moment of light from then on.</summary>
    public double NextLight(double at)
    {
        var i = Next(at);
        var light = i < from.Length && from[i] <= at ? until[i] : at;
        return light < HorizonSeconds ? light : double.PositiveInfinity;
    }

    /// <summary>How much work gets done between two moments, if only this share of each dark second counts.</summary>
    public double Work(double at, double to, double rate)
    {
        var dark = 0.0;
        for (var i = Next(at); i < from.Length && from[i] < to; i++)
            dark += Math.Min(until[i], to) - Math.Max(from[i], at);
        return Math.Max(0, to - at - dark + (rate * dark));
    }

    /// <summary>The first take-off from then on whose flight is all by daylight, its landing too; infinite where there is none.</summary>
    public double TakeOff(double at, double flight)
    {
        for (var i = Next(at); i < from.Length; i++)
        {
            if (at + flight < from[i])
                break;
            at = until[i];
        }

        return at + flight < HorizonSeconds ? at : double.PositiveInfinity;
    }

    /// <summary>When so many seconds of work by day are done, if only this share of each dark second counts.</summary>
    public double Advance(double at, double work, double rate)
    {
        if (rate == 1)
            return at + work;
        for (var i = Next(at); i < from.Length; i++)
        {
            if (at < from[i])
            {
                if (at + work <= from[i])
                    return at + work;
                work -= from[i] - at;
                at = from[i];
            }

            if (work <= 0)
                return at;
            var here = (until[i] - at) * rate;
            if (work <= here)
                return at + (work / rate);
            work -= here;
            at = until[i];
        }

        return at + work < HorizonSeconds ? at + work : double.PositiveInfinity;
    }

    /// <summary>The first stretch that ends after then.</summary>
    private int Next(double at)
    {
        int low = 0,
            high = until.Length;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (until[middle] <= at)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
