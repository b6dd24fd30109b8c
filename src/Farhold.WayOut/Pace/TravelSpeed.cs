using System.Globalization;

namespace Farhold.WayOut.Pace;

/// <summary>Travel over a distance by means that carry a casualty: a spread of speeds and a fixed time around it.</summary>
/// <param name="LowKmh">Slow, P10 of speed.</param>
/// <param name="HighKmh">Fast, P90 of speed.</param>
public sealed record TravelSpeed(string What, double LowKmh, double HighKmh, double FixedMinutes, Evidence Mark, string Source)
{
    public static TravelSpeed OnRoad => new(PaceTexts.Ambulance, 40, 70, 5, Evidence.Assumption, PaceTexts.SourceRoads);

    public static TravelSpeed OnDirtRoad => new(PaceTexts.OnDirtRoads, 20, 45, 5, Evidence.Assumption, PaceTexts.SourceDirtRoads);

    public static TravelSpeed OnPath => new(PaceTexts.OnTrail, 4, 15, 5, Evidence.Assumption, PaceTexts.NoSource);

    public static TravelSpeed OnTrack => new(PaceTexts.OnRoughTrack, 8, 25, 5, Evidence.Assumption, PaceTexts.NoSource);

    public static TravelSpeed InFlight => new(PaceTexts.InFlight, 200, 230, 8, Evidence.Assumption, PaceTexts.SourceFlight);

    /// <summary>A speed the user gives, a quarter less to a quarter more in eight of ten cases.</summary>
    public static TravelSpeed Given(double kmh) =>
        new(
            PaceTexts.GivenSpeed(kmh.ToString("0.#", CultureInfo.InvariantCulture)),
            0.75 * kmh,
            1.25 * kmh,
            0,
            Evidence.Assumption,
            PaceTexts.SourcePlanSpread
        );

    public static TravelSpeed OnGround(Surface? surface) =>
        surface switch
        {
            null or { Id: "road" } => OnRoad,
            { Id: "dirt-road" } => OnDirtRoad,
            { Id: "path" } => OnPath,
            _ => OnTrack,
        };

    /// <summary>Seconds on the move, without the fixed time.</summary>
    public LogNormal TimeSeconds(double distanceKm) => LogNormal.FromQuantiles(3600 * distanceKm / HighKmh, 3600 * distanceKm / LowKmh);
}
