using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>A planned route, and the ways from it to higher care.</summary>
/// <param name="Start">When a casualty is assumed, at every point alike; null where nobody says, and then light is unknown.</param>
/// <param name="Call">What has to pass from the injury until help is on its way, one after another.</param>
/// <param name="Hands">From then until there are enough people to move the casualty; null where the party at hand moves at once.</param>
/// <param name="Back">Onward from the start of the route; null where that is no way out.</param>
/// <param name="End">Onward from the end of the route; null where that is no way out.</param>
public sealed record Route(
    string? Id,
    string? Title,
    TrackFile Track,
    double SpacingM,
    Instant? Start,
    DateTimeZone? TimeZone,
    double Correlation,
    double Lambda,
    Moving Moving,
    ImmutableArray<NamedTime> Call,
    Extent? Hands,
    WayEnd? Back,
    WayEnd? End,
    ImmutableArray<SideExit> Exits,
    ImmutableArray<PickUp> PickUps,
    Helicopter? Helicopter
)
{
    /// <summary>Metres between points where the route says nothing (design).</summary>
    public const double UsualSpacingM = 100;

    /// <summary>How far an exit or pick-up may lie off the route, metres (design).</summary>
    public const double FurthestOffM = 500;

    /// <summary>Whether it can't be told without knowing when it is dark.</summary>
    public bool NeedsLight =>
        Moving.Dark == DarkRule.Stop || Helicopter?.Window == FlightWindow.Daylight || PickUps.Any(p => p.Window == FlightWindow.Daylight);
}

/// <summary>How the casualty is moved along the route and its exits.</summary>
/// <param name="Mode">On foot: walking or carried.</param>
/// <param name="Bearers">Null where nobody said: then a full party.</param>
public sealed record Moving(
    TravelMode Mode,
    Surface Surface,
    int? Bearers,
    double SnowCm,
    PaceRule Rule,
    double Spread,
    DarkRule Dark,
    bool Packaging
);

public sealed record NamedTime(string Name, Extent Time);

/// <summary>An end of the route that leads to higher care.</summary>
/// <param name="Onward">From there to higher care; null where it is there.</param>
public sealed record WayEnd(string Name, Extent? Onward);

/// <summary>A way down off the route.</summary>
/// <param name="AlongM">Where it leaves the route, metres from the start.</param>
/// <param name="Ground">Ground to cover at the route's pace; null where <paramref name="Time"/> is given.</param>
/// <param name="Surface">Null for the route's own.</param>
/// <param name="Onward">From its foot to higher care; null where it is there.</param>
public sealed record SideExit(string Name, GeoPoint Place, double AlongM, Stretch? Ground, Surface? Surface, Extent? Time, Extent? Onward);

/// <summary>A place on the route to which a vehicle, boat or aircraft can come.</summary>
/// <param name="Probability">That it comes at all. If not, that shows when it was due, and the party goes on from there.</param>
/// <param name="Wait">From the call until it is there.</param>
public sealed record PickUp(
    string Name,
    GeoPoint Place,
    double AlongM,
    TravelMode Mode,
    double Probability,
    FlightWindow Window,
    Extent Wait,
    Extent? Onward
);

/// <summary>A helicopter that may come to the casualty wherever that is, while the party moves.</summary>
/// <param name="From">Not before; null for any time.</param>
/// <param name="Wait">From the call until it has the casualty.</param>
public sealed record Helicopter(double Probability, Instant? From, FlightWindow Window, Extent Wait, Extent? Onward);
