namespace Farhold.WayOut.Pace;

/// <summary>How a casualty is carried.</summary>
/// <param name="Bearers">Nothing where nobody said: then a full party, as in the reported carries.</param>
/// <param name="SnowCm">How deep the boot sinks.</param>
public sealed record LitterCarry(Stretch Stretch, Surface Surface, int? Bearers = null, bool Wheel = false, double SnowCm = 0)
{
    /// <summary>Speed on a trail in daylight with a full party, fitted to seven reported carries of 0.70 to 2.68 km/h (median 1.54, sigma 0.427).</summary>
    /// <remarks>Sources: litter_cases.csv, c01 to c07; long carries are likelier to be written up. No published distribution was found.</remarks>
    public static LogNormal OnTrailKmh { get; } = LogNormal.FromMedian(1.5, 0.43);

    /// <summary>Off trail, boulders, thick brush: an assumption around case c07 (0.7 km/h).</summary>
    public static LogNormal OnRoughGroundKmh { get; } = LogNormal.FromMedian(0.7, 0.5);

    /// <summary>The low end of 1.5 to 2 on a smooth path; no published speed was found.</summary>
    public const double WheelFactor = 1.5;

    private bool WheelRuns => Wheel && !Surface.OffPath && SnowCm == 0;

    /// <summary>Everything that slows or speeds the carry beside the spread of the prior; 1 is a full party on a trail by day.</summary>
    public double SpeedFactor =>
        (Surface.Rough ? 1 : Surface.SpeedFactor)
        * (Bearers is { } people ? LitterTeam.SpeedFactor(people, Stretch.DistanceKm, WheelRuns) : 1)
        * (WheelRuns ? WheelFactor : 1)
        * Snow.SpeedFactor(SnowCm);

    /// <summary>Climbing counts as Scarf's eight to one: our choice, since the fitted carries went mostly down.</summary>
    public double EquivalentKm => Scarf.EquivalentKm(Stretch);

    /// <summary>Seconds on the move by daylight, without packaging or ropes.</summary>
    public LogNormal TimeSeconds()
    {
        var pace = Surface.Rough ? OnRoughGroundKmh : OnTrailKmh;
        return LogNormal.FromMedian(3600 * EquivalentKm / (pace.Median * SpeedFactor), pace.Sigma);
    }

    /// <summary>Getting the casualty onto the litter, minutes: 20, 30 and 60 at P10, P50 and P90.</summary>
    public static LogNormal PackagingMinutes { get; } = LogNormal.FromQuantiles(20, 30, 60);

    /// <summary>Setting up ropes, minutes a pitch: 20 to 60, taken as P10 and P90.</summary>
    public static LogNormal RopePitchMinutes { get; } = LogNormal.FromQuantiles(20, 60);

    public IEnumerable<Basis> Rests()
    {
        yield return Surface.Rough
            ? new("Litter on rough ground: 0.7 km/h, spread 0.5 (log)", Evidence.Assumption, "one reported carry (c07) and a rule of thumb")
            : new("Litter on a trail: 1.5 km/h, 0.9 to 2.7 in eight of ten", Evidence.Computed, "fit to seven reported carries, c01 to c07");
        if (Bearers is null)
            yield return new("Bearers not stated: a full party of 18 or more is assumed", Evidence.Assumption, "as in the reported carries");
        else
            yield return new($"{Bearers} bearers: a full party is 18 or more", Evidence.Assumption, "endurance of bearers, Knapik 2000, Rice 1996");
        if (Stretch.AscentM > 0)
            yield return new("Climbing with a litter counts eight to one as distance", Evidence.Assumption, "Scarf, made for walkers");
        if (WheelRuns)
            yield return new("A wheel on smooth ground: half as fast again", Evidence.Assumption, "no published speed found");
        if (SnowCm > 0)
            yield return new($"Boots sinking {SnowCm:0} cm: speed times {Snow.SpeedFactor(SnowCm):0.00}", Evidence.Computed, "ERDC regression at equal effort");
    }
}
