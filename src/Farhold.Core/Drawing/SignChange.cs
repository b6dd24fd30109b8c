using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>How far the last value of a sign is from what it was.</summary>
/// <param name="Reference">What it was, from <paramref name="Since"/> on.</param>
/// <param name="Marked">Large enough for a mark.</param>
/// <remarks>
/// The reference is the middle one of the first three readings of the four hours before the last (of two, the one further from the
/// last): one slip of counting moves it little. After a longer gap it is the reading before (design). A mark from a fifth on: proposal
/// of Farhold, beside the smallest change worth telling.
/// </remarks>
public sealed record SignChange(double Reference, Instant Since, double Last, bool InPercent, bool Marked)
{
    private const double Fifth = 20;
    private const int TenTimes = 10;
    private const int Readings = 3;
    private static readonly Duration Back = Duration.FromHours(4);

    /// <summary>Negative where it fell; percent of the reference, or in the unit of the sign.</summary>
    public double By => InPercent ? 100 * (Last - Reference) / Reference : Last - Reference;

    /// <summary>Null with fewer than two readings, or where it changed by less than is worth telling.</summary>
    /// <param name="readings">In order of time.</param>
    public static SignChange? From(ImmutableArray<Seen<double>> readings, ChartedSign sign)
    {
        if (readings.Length < 2)
            return null;
        var last = readings[^1];
        var before = readings[..^1];
        var from = last.When.Latest - Back;
        var first = before.Where(r => r.When.Latest >= from).Take(Readings).ToArray();
        if (first.Length == 0)
            first = [before[^1]];
        var reference = first.Length == 2 ? Furthest(first, last.Value) : first.Order(ByValue).ElementAt(first.Length / 2).Value;
        // Of next to nothing there is no percentage worth reading: a heart that beats again is more than a change.
        var inPercent = sign.InPercent && Math.Abs(last.Value - reference) < TenTimes * Math.Abs(reference);
        var change = new SignChange(reference, first[0].When.Latest, last.Value, inPercent, false);
        return Math.Abs(last.Value - reference) < sign.SmallestChange
            ? null
            : change with
            {
                Marked = !inPercent || Math.Abs(change.By) >= Fifth,
            };
    }

    private static readonly Comparer<Seen<double>> ByValue = Comparer<Seen<double>>.Create((a, b) => a.Value.CompareTo(b.Value));

    private static double Furthest(Seen<double>[] readings, double from) => readings.MaxBy(r => Math.Abs(r.Value - from)).Value;
}
