using NodaTime;

namespace Farhold.App.Browser;

/// <summary>How far the phone's receiver has come.</summary>
public enum FixState
{
    /// <summary>Nothing yet.</summary>
    Waiting,

    /// <summary>There is a position.</summary>
    Found,

    /// <summary>The carer, or the phone's settings, do not let the app know.</summary>
    Refused,

    /// <summary>It is switched off, or sees no sky.</summary>
    Unavailable,

    /// <summary>This phone gives the app no positions at all.</summary>
    None,
}

/// <summary>What the phone's receiver says.</summary>
/// <param name="Lat">Degrees north, WGS 84, as all that follows only where <see cref="FixState.Found"/>.</param>
/// <param name="Lon">Degrees east.</param>
/// <param name="AccuracyM">Metres within which the place lies 95 times in 100 (W3C Geolocation, section 7.2).</param>
/// <param name="AltitudeM">Metres above the ellipsoid; null where it is not known.</param>
/// <param name="At">When it was found.</param>
public sealed record Fix(
    FixState State,
    double Lat = 0,
    double Lon = 0,
    double AccuracyM = 0,
    double? AltitudeM = null,
    Instant At = default
);

/// <summary>The phone's own receiver; it runs, and drains the battery, only between start and stop.</summary>
public interface IPositions
{
    /// <summary>Asks the carer's leave the first time.</summary>
    void Start();

    void Stop();

    Fix Latest();
}
