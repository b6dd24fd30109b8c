using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>Day and night along a limb's line.</summary>
public static class LimbSky
{
    private static (GeoPoint Place, Interval Over, ImmutableArray<LightSpell> Spells)? last;

    /// <summary>From first tightening to twice the limit after it, or after now where that is later.</summary>
    /// <remarks>Night is as for walking: the sun more than 6 degrees down; a flat horizon and a clear sky.</remarks>
    public static ImmutableArray<LightSpell> Over(LimbPicture picture, PlanPlace from)
    {
        var place = new GeoPoint(from.LatDeg, from.LonDeg);
        var first = picture.Clock.FirstTightened.Earliest;
        // Whole days, so that the line is not worked out anew with every second; no longer than any limb's care.
        var days = Math.Min(60, (int)((picture.Now - first).TotalDays * 1.25) + 2);
        var over = new Interval(first - Duration.FromHours(2), first + Duration.FromDays(days));
        if (last is { } known && known.Place == place && known.Over == over)
            return known.Spells;
        var spells = Daylight
            .Along(over, place)
            .Select(s => new LightSpell(
                s.Start,
                s.End,
                s.Light switch
                {
                    Light.Day => Sky.Day,
                    Light.CivilTwilight => Sky.Twilight,
                    _ => Sky.Night,
                }
            ))
            .ToImmutableArray();
        last = (place, over, spells);
        return spells;
    }
}
