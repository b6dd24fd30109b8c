using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>When it is too dark, at a place, to go on as by day.</summary>
/// <remarks>
/// Dark is the sun more than 6 degrees below the horizon: the end of civil twilight, up to which people manage outdoors without a
/// lamp (definition of the US Naval Observatory, from memory; that walking slows from there is a choice made here). A flat horizon
/// and a clear sky: in a gorge, in woods or in cloud it is dark earlier.
/// </remarks>
public static class Nightfall
{
    /// <summary>How far ahead nights are worked out; later ones repeat the last (design).</summary>
    public static readonly Duration Ahead = Duration.FromDays(14);

    public static Darkness At(GeoPoint place, Instant start, Duration? ahead = null)
    {
        var until = start + (ahead ?? Ahead);
        var light = Daylight.Along(new Interval(start, until), place);
        return Darkness.Of(light.Where(s => s.Light < Light.CivilTwilight).Select(s => (s.Start, s.End)), until);
    }

    /// <summary>Null where the plan has no place.</summary>
    public static Darkness? Of(Plan plan) => plan.From is { } from ? At(new(from.LatDeg, from.LonDeg), plan.Start) : null;
}
