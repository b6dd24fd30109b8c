using System.Globalization;

namespace Farhold.WayOut.Pace;

/// <summary>How a casualty is carried.</summary>
/// <param name="Bearers">Nothing where nobody said: then a full party, as in the reported carries.</param>
/// <param name="SnowCm">How deep the boot sinks.</param>
public sealed record LitterCarry(Stretch Stretch, Surface Surface, int? Bearers = null, bool Wheel = false, double SnowCm = 0)
{
    private static readonly Figure Trail = PriorTable.Figure("litter-trail-kmh");
    private static readonly Figure Rough = PriorTable.Figure("litter-rough-kmh");
    private static readonly Figure Dark = PriorTable.Figure("litter-night");
    private static readonly Figure SoftFloor = PriorTable.Figure("litter-snow-floor");
    private static readonly Figure Wheeled = PriorTable.Figure("litter-wheel");

    /// <summary>Speed on a trail in daylight with a full party.</summary>
    /// <remarks>Long carries are likelier to be written up. No published distribution was found.</remarks>
    public static LogNormal OnTrailKmh { get; } = LogNormal.FromMedian(Trail.Value, Trail.Spread!.Value);

    /// <summary>Off trail, boulders, thick brush.</summary>
    public static LogNormal OnRoughGroundKmh { get; } = LogNormal.FromMedian(Rough.Value, Rough.Spread!.Value);

    /// <summary>Speed in the dark against daylight, wherever it is carried.</summary>
    public static double InTheDark => Dark.Value;

    private bool WheelRuns => Wheel && !Surface.OffPath && SnowCm == 0;

    /// <summary>Everything that slows or speeds the carry beside the spread of the prior; 1 is a full party on a trail by day.</summary>
    public double SpeedFactor =>
        Soft * (Bearers is { } people ? LitterTeam.SpeedFactor(people, WheelRuns) : 1) * (WheelRuns ? Wheeled.Value : 1);

    /// <summary>Ground and snow together, no slower than on a trail that many feet have trodden.</summary>
    private double Soft => Math.Max(SoftFloor.Value, (Surface.Rough ? 1 : Surface.SpeedFactor) * Snow.SpeedFactor(SnowCm));

    /// <summary>Climbing counts as Scarf's eight to one: our choice, since the fitted carries went mostly down.</summary>
    public double EquivalentKm => Scarf.EquivalentKm(Stretch);

    /// <summary>Seconds on the move by daylight, without packaging or ropes.</summary>
    public LogNormal TimeSeconds()
    {
        var pace = Surface.Rough ? OnRoughGroundKmh : OnTrailKmh;
        return LogNormal.FromMedian(3600 * EquivalentKm / (pace.Median * SpeedFactor), Sigma);
    }

    /// <summary>Spread of the pace (log): a small party is less sure.</summary>
    public double Sigma =>
        (Surface.Rough ? OnRoughGroundKmh : OnTrailKmh).Sigma + (Bearers is { } people ? LitterTeam.AddedSpread(people, WheelRuns) : 0);

    public IEnumerable<Basis> Rests()
    {
        yield return (Surface.Rough ? Rough : Trail).Basis;
        if (Bearers is null)
            yield return new(PaceTexts.BearersNotStated(LitterTeam.Full), Evidence.Assumption, PaceTexts.SourceCarries);
        else
            yield return new(
                PaceTexts.BearersPace(Bearers.Value, Hundredths(LitterTeam.SpeedFactor(Bearers.Value, WheelRuns))),
                PriorTable.Figure("litter-team-power").Mark,
                PriorTable.Figure("litter-team-power").Source
            );
        if (Stretch.AscentM > 0)
            yield return new(PaceTexts.ClimbAsDistance, Evidence.Assumption, PaceTexts.SourceScarf);
        if (WheelRuns)
            yield return Wheeled.Basis;
        if (SnowCm > 0)
            yield return new(
                PaceTexts.BootsSink(SnowCm.ToString("0", CultureInfo.InvariantCulture), Hundredths(Soft)),
                SoftFloor.Mark,
                SoftFloor.Source
            );
    }

    private static string Hundredths(double factor) => factor.ToString("0.00", CultureInfo.InvariantCulture);
}
