using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>The sun passing a given altitude.</summary>
internal readonly record struct SunCrossing(Instant At, bool Rising);

/// <summary>Finds when the sun passes an altitude, by looking rather than by a formula, so that grazing days, polar summers and
/// the poles themselves need no rule of their own.</summary>
internal static class SunCrossings
{
    /// <summary>Between two looks the altitude has at most one peak or one trough anywhere on earth.</summary>
    private static readonly Duration Step = Duration.FromMinutes(20);

    /// <summary>How close a crossing is pinned down.</summary>
    private static readonly Duration Fine = Duration.FromMilliseconds(50);

    /// <param name="altitudes">Degrees, any order.</param>
    /// <returns>For each altitude its crossings from <paramref name="start"/> to <paramref name="end"/>, in order.</returns>
    /// <remarks>A touch that lasts less than a few seconds can be missed.</remarks>
    public static List<SunCrossing>[] Find(Instant start, Instant end, GeoPoint place, ReadOnlySpan<double> altitudes)
    {
        var found = new List<SunCrossing>[altitudes.Length];
        for (var i = 0; i < found.Length; i++)
            found[i] = [];

        // A step further on both sides, so that a peak just inside an end is seen as one.
        var looks = Looks(start - Step, end + Step, place);
        for (var look = 1; look < looks.Count; look++)
        for (var i = 0; i < altitudes.Length; i++)
            if ((looks[look - 1].Altitude >= altitudes[i]) != (looks[look].Altitude >= altitudes[i]))
                found[i].Add(Pin(looks[look - 1], looks[look], place, altitudes[i]));
        foreach (var crossings in found)
            crossings.RemoveAll(c => c.At < start || c.At > end);
        return found;
    }

    // Every peak and trough is itself a look, so that the altitude only rises or only falls between two of them.
    private static List<(Instant At, double Altitude)> Looks(Instant start, Instant end, GeoPoint place)
    {
        var looks = new List<(Instant At, double Altitude)>();
        for (var at = start; at < end; at += Step)
            Add(at);
        Add(end);
        return looks;

        void Add(Instant at)
        {
            var look = (at, Sun.Altitude(at, place));
            if (looks.Count >= 2)
            {
                var (before, middle) = (looks[^2], looks[^1]);
                var turn = Math.Sign(middle.Altitude - before.Altitude) * Math.Sign(look.Item2 - middle.Altitude);
                if (turn < 0)
                {
                    var extreme = Extreme(before.At, at, place, middle.Altitude > before.Altitude);
                    looks.Insert(extreme.At < middle.At ? looks.Count - 1 : looks.Count, extreme);
                }
            }

            looks.Add(look);
        }
    }

    private static (Instant At, double Altitude) Extreme(Instant low, Instant high, GeoPoint place, bool peak)
    {
        while (high - low > Duration.FromSeconds(1))
        {
            var third = (high - low) / 3;
            var (a, b) = (low + third, high - third);
            var rising = Sun.Altitude(a, place) < Sun.Altitude(b, place);
            (low, high) = rising == peak ? (a, high) : (low, b);
        }

        var middle = low + ((high - low) / 2);
        return (middle, Sun.Altitude(middle, place));
    }

    private static SunCrossing Pin(
        (Instant At, double Altitude) before,
        (Instant At, double Altitude) after,
        GeoPoint place,
        double altitude
    )
    {
        var rising = after.Altitude >= altitude;
        var (low, high) = (before.At, after.At);
        while (high - low > Fine)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = (Sun.Altitude(middle, place) >= altitude) == rising ? (low, middle) : (middle, high);
        }

        return new(high, rising);
    }
}
