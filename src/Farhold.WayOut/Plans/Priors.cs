using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>A suggested time for something plans often contain, to be offered and changed, never applied unasked.</summary>
public sealed record Prior(string Id, string What, double P10Minutes, double P50Minutes, double P90Minutes, string Source)
{
    /// <summary>All of these are assumptions; the source says what they were built from.</summary>
    public Evidence Mark { get; } = Evidence.Assumption;
}

public static class Priors
{
    /// <summary>The prior that a leg was taken from, unchanged; null where its times are somebody's own.</summary>
    public static Prior? Behind(Travel leg) => leg.Extent is Percentiles { P50: { } middle } tenths
        ? All.FirstOrDefault(p => p.What == leg.Name && p.P10Minutes == tenths.P10.TotalMinutes
            && p.P50Minutes == middle.TotalMinutes && p.P90Minutes == tenths.P90.TotalMinutes)
        : null;

    public static ImmutableArray<Prior> All { get; } =
    [
        new("message-out", "injury to message out, with phone or satellite device", 3, 10, 40, "no source found"),
        new("beacon", "satellite beacon to rescue centre", 2, 5, 15, "programme requirement, from memory"),
        new("call-handling", "call handling and decision", 5, 15, 45, "no source found"),
        new("helicopter-activation-day", "helicopter activation, staffed base, day", 3, 6, 17, "Tomazin 2012: base means 2.9 to 17 min"),
        new("helicopter-activation-night", "helicopter activation, night or crew on call", 20, 40, 75, "United Kingdom standard 45 min by night"),
        new("flight-to-scene", "flight to the scene, distance unknown", 10, 20, 45, "Tomazin 2012: base means 10.4 to 45 min"),
        new("search", "search and look round", 2, 8, 30, "no source found"),
        new("on-scene-landed", "on scene, landed", 8, 15, 35, "Osteras 2016: median 11 min"),
        new("on-scene-hoist", "more on scene for a hoist", 8, 15, 30, "no source found"),
        new("team-to-road-head", "ground team, call to road head", 30, 60, 120, "New Hampshire carry-outs, c08"),
        new("team-to-casualty", "ground team, call to casualty 3 to 8 km in", 110, 165, 260, "New Hampshire carry-outs: 145 to 170 min"),
        new("bearers", "enough bearers after first contact", 30, 65, 130, "two reported carries: 60 and 85 min"),
        new("packaging", "getting the casualty onto the litter", 20, 30, 60, "no source found"),
        new("river", "crossing a river with a litter", 10, 20, 60, "no source found"),
    ];
}
