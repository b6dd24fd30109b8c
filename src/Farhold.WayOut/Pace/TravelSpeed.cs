namespace Farhold.WayOut;

/// <summary>Travel over a distance by means that carry a casualty: a spread of speeds and a fixed time around it.</summary>
/// <param name="LowKmh">Slow, P10 of speed.</param>
/// <param name="HighKmh">Fast, P90 of speed.</param>
public sealed record TravelSpeed(string What, double LowKmh, double HighKmh, double FixedMinutes, Evidence Mark, string Source)
{
    public static TravelSpeed OnRoad { get; } =
        new("Ambulance on roads: 40 to 70 km/h and 5 min", 40, 70, 5, Evidence.Assumption, "around 53 km/h computed from PMC4744536");

    public static TravelSpeed OnTrack { get; } =
        new("Four-wheel drive on a rough track, casualty on board: 8 to 25 km/h", 8, 25, 5, Evidence.Assumption, "no source found");

    public static TravelSpeed InFlight { get; } =
        new("Helicopter: 200 to 230 km/h and 8 min", 200, 230, 8, Evidence.Assumption, "around 229 km/h computed from 71.3 miles in 30 min, PMC4744536");

    /// <summary>Seconds on the move, without the fixed time.</summary>
    public LogNormal TimeSeconds(double distanceKm) =>
        LowKmh < HighKmh
            ? LogNormal.FromQuantiles(3600 * distanceKm / HighKmh, 3600 * distanceKm / LowKmh)
            : LogNormal.FromMedian(3600 * distanceKm / LowKmh, 0);
}
