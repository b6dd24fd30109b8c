using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Astronomy;

/// <summary>A night by the sun.</summary>
/// <param name="Cut">The dark is longer: only its middle is taken.</param>
public readonly record struct DarkNight(NightSpan Span, bool Cut);

/// <summary>Nights of a place by its daylight, for whoever sleeps while it is dark.</summary>
public static class DarkNights
{
    private const double SecondsPerDegree = 240;

    /// <summary>
    /// From the end of civil dusk to civil dawn, but never wider than <see cref="Rhythm.LongestNight"/>, from two days before
    /// an instant to four days after it. An evening after which it does not get dark has none.
    /// </summary>
    /// <remarks>A flat horizon and a clear sky, as in <see cref="SunDay"/>.</remarks>
    public static ImmutableArray<DarkNight> Around(Instant at, GeoPoint place)
    {
        // Days by the sun of the place: a clock set for another longitude would have no noon, or two, near its twelve.
        var zone = DateTimeZone.ForOffset(Offset.FromSeconds((int)(place.Longitude * SecondsPerDegree)));
        var first = at.InZone(zone).Date.PlusDays(-2);
        var days = Enumerable.Range(0, 8).Select(d => SunDay.Of(first.PlusDays(d), zone, place)).ToArray();
        return [.. days.Zip(days.Skip(1), Between).OfType<DarkNight>()];
    }

    private static DarkNight? Between(SunDay day, SunDay next)
    {
        if (Edge(day.CivilDusk, day.Noon) is not { } from || Edge(next.CivilDawn, next.Noon) is not { } to || to <= from)
            return null;
        var midnight = day.Noon + ((next.Noon - day.Noon) / 2);
        var half = Rhythm.LongestNight / 2;
        var span = new NightSpan(Instant.Max(from, midnight - half), Instant.Min(to, midnight + half));
        return new(span, span.From > from || span.To < to);
    }

    /// <summary>Noon where it stays dark all day; null where it does not get dark.</summary>
    private static Instant? Edge(SunEvent end, Instant noon) =>
        end switch
        {
            SunEvent.At at => at.Instant,
            SunEvent.StaysBelow => noon,
            _ => null,
        };
}
