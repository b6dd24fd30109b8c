namespace Farhold.WayOut.Pace;

/// <summary>Travel over a distance by means that carry a casualty: a spread of speeds and a fixed time around it.</summary>
/// <param name="LowKmh">Slow, P10 of speed.</param>
/// <param name="HighKmh">Fast, P90 of speed.</param>
public sealed record TravelSpeed(string What, double LowKmh, double HighKmh, double FixedMinutes, Evidence Mark, string Source)
{
    public static TravelSpeed OnRoad { get; } =
        new("Ambulance on roads: 40 to 70 km/h and 5 min", 40, 70, 5, Evidence.Assumption, "around 53 km/h computed from PMC4744536");

    public static TravelSpeed OnDirtRoad { get; } =
        new(
            "Vehicle on dirt roads: 20 to 45 km/h and 5 min",
            20,
            45,
            5,
            Evidence.Assumption,
            "around 30 km/h, Malaria Journal 2017, table 1"
        );

    public static TravelSpeed OnPath { get; } =
        new("All-terrain vehicle with a casualty on a trail: 4 to 15 km/h", 4, 15, 5, Evidence.Assumption, "no source found");

    public static TravelSpeed OnTrack { get; } =
        new("Four-wheel drive on a rough track, casualty on board: 8 to 25 km/h", 8, 25, 5, Evidence.Assumption, "no source found");

    public static TravelSpeed InFlight { get; } =
        new(
            "Helicopter: 200 to 230 km/h and 8 min",
            200,
            230,
            8,
            Evidence.Assumption,
            "around 229 km/h computed from 71.3 miles in 30 min, PMC4744536"
        );

    /// <summary>A speed the user gives, a quarter less to a quarter more in eight of ten cases.</summary>
    public static TravelSpeed Given(double kmh) =>
        new(
            FormattableString.Invariant($"Given speed {kmh:0.#} km/h, a quarter either way"),
            0.75 * kmh,
            1.25 * kmh,
            0,
            Evidence.Assumption,
            "the plan; the spread is ours"
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
