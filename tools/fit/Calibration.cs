using System.Globalization;
using System.Text;
using NodaTime;

namespace Farhold.Tools.Fit;

/// <summary>One rescue set beside its forecast.</summary>
/// <param name="ActualMinutes">As reported.</param>
/// <param name="Low">Of the forecast, minutes: one in ten trials is sooner.</param>
/// <param name="High">Nine in ten trials are sooner.</param>
/// <param name="Inside">How much of what is reported lies between <paramref name="Low"/> and <paramref name="High"/>: 0 or 1 for one
/// rescue, a share for a published spread.</param>
public sealed record Calibrated(string Id, string What, double ActualMinutes, double Low, double Median, double High, double Inside)
{
    public double Ratio => ActualMinutes / Median;
}

/// <summary>
/// Plans every published rescue as a leader would and sets the forecast beside what happened. On the ground each case is left out in
/// turn and the pace fitted to the others.
/// </summary>
/// <remarks>
/// Pace on a trail: the median of the reported speeds, each first divided by what the table of priors says of team, night and snow; the
/// median, since two of six reports are of another kind (a light casualty, an upper bound). Coverage and ratio of all cases say whether
/// the other figures stand: 80 % ranges should hold 70 to 90 % of the cases, the geometric mean of actual over median lie between 0.85
/// and 1.15.
/// </remarks>
public static class Calibration
{
    private const int Trials = 8192;
    private const double Quartile = 0.6744897501960817;
    private static readonly Instant Noon = Instant.FromUtc(2031, 6, 1, 12, 0);
    private static readonly Instant Known = Noon + Duration.FromDays(20);

    /// <summary>The speed each reported carry on a trail would have had by day, with a full party, without snow; km/h.</summary>
    public static IReadOnlyList<(string Id, double Kmh)> TrailSpeeds(IEnumerable<CaseRow> ground) =>
        [
            .. ground
                .Where(c => c["interval"] == "carry" && c["ground"] == "path")
                .Select(c =>
                    (
                        c["case_id"],
                        60
                            * c.Number("carry_km")!.Value
                            / c.Number("actual_min")!.Value
                            / (Carry(c).SpeedFactor * (c.Number("night_share") > 0 ? LitterCarry.InTheDark : 1))
                    )
                ),
        ];

    public static double Median(IEnumerable<double> figures)
    {
        var sorted = figures.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    public static IReadOnlyList<Calibrated> Ground(IReadOnlyList<CaseRow> cases)
    {
        var speeds = TrailSpeeds(cases);
        return [.. cases.Select(c => Beside(c, Median(speeds.Where(s => s.Id != c["case_id"]).Select(s => s.Kmh))))];
    }

    public static IReadOnlyList<Calibrated> Air(IReadOnlyList<CaseRow> cases) => [.. cases.Select(Flown)];

    public static double Coverage(IEnumerable<Calibrated> cases) => cases.Average(c => c.Inside);

    /// <summary>Geometric mean of actual over median.</summary>
    public static double Ratio(IEnumerable<Calibrated> cases) => Math.Exp(cases.Average(c => Math.Log(c.Ratio)));

    public static IEnumerable<string> Table(string name, IReadOnlyList<Calibrated> cases)
    {
        yield return $"| {name} | reported, min | forecast 1 in 10, middle, 9 in 10 | actual over middle | inside |";
        yield return "|---|---|---|---|---|";
        foreach (var c in cases)
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"| {c.Id} {c.What} | {c.ActualMinutes:0} | {c.Low:0}, {c.Median:0}, {c.High:0} | {c.Ratio:0.00} | {c.Inside:0.##} |"
            );
        var worst = cases.OrderByDescending(c => Math.Abs(Math.Log(c.Ratio))).Take(2).Select(c => c.Id);
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"| **all {cases.Count}** | | | **{Ratio(cases):0.00}** | **{Coverage(cases):0.00}** |"
        );
        yield return "";
        yield return $"Fits worst: {string.Join(", ", worst)}.";
    }

    private static Calibrated Beside(CaseRow c, double trailKmh)
    {
        // A pace fitted without this case stands in for the shipped one by lengthening or shortening the ground.
        var km = c.Number("carry_km")!.Value * (c["ground"] == "path" ? LitterCarry.OnTrailKmh.Median / trailKmh : 1);
        var whole = c["interval"] != "carry";
        var legs = new List<string>();
        if (c.Number("message_out") > 0)
            legs.Add(Wait("message-out"));
        if (c.Number("team_to_casualty") > 0)
            legs.Add(Wait("team-to-casualty"));
        if (whole)
            legs.Add($$"""{"all":[{"legs":[{{Wait("bearers")}}]},{"legs":[{{Wait("packaging")}}]}]}""");
        legs.Add(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{{\"mode\":\"carry\",\"distanceKm\":{km},\"terrain\":\"{c["ground"]}\",\"snowCm\":{c.Number("snow_cm")},"
            )
                + (c.Number("people") is { } people ? string.Create(CultureInfo.InvariantCulture, $"\"bearers\":{people},") : "")
                + "\"packaging\":false}"
        );
        if (c.Number("vehicle_km") is > 0 and var ride)
            legs.Add(string.Create(CultureInfo.InvariantCulture, $$"""{"mode":"vehicle","terrain":"path","distanceKm":{{ride}}}"""));
        return Set(c["case_id"], c["interval"], c.Number("actual_min")!.Value, null, legs, c.Number("night_share") > 0);
    }

    private static Calibrated Flown(CaseRow c)
    {
        var arrival = c["service"].EndsWith("-arrival", StringComparison.Ordinal);
        List<string> legs = c["service"].StartsWith("none", StringComparison.Ordinal)
            ? [Wait("helicopter-no-service"), Wait("flight-to-scene")]
            : [Wait("call-handling"), Wait("helicopter-activation-day"), Wait("flight-to-scene")];
        if (!arrival)
            legs.AddRange([Wait(c["service"] == "none" ? "on-scene-landed" : "on-scene-mountain"), Wait("flight-to-hospital")]);
        (double, double)? quartiles = c.Number("low_quartile") is { } low && c.Number("high_quartile") is { } high ? (low, high) : null;
        return Set(c["case_id"], c["what"], c.Number("total_min")!.Value, quartiles, legs, night: false);
    }

    private static Calibrated Set(
        string id,
        string what,
        double actual,
        (double Low, double High)? quartiles,
        List<string> legs,
        bool night
    )
    {
        var json = $$"""{"start":"2031-06-01T12:00:00Z","legs":[{{string.Join(",", legs)}}]}""";
        var plan = PlanReader.Read(Encoding.UTF8.GetBytes(json), id) switch
        {
            Read<Plan>.Usable(var read) => read,
            Read<Plan>.Refused(var why) => throw new InvalidOperationException(string.Join("; ", why)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var darkness = Darkness.Of(night ? [(Noon, Known)] : [], Known);
        var outlook = Outlook.Of(new Simulation(CompiledPlan.Of(plan, darkness), new Rng(1), SamplingLimits.Exactly(Trials)).Run(), []);
        double Minutes(double p) => (outlook.At(p).At!.Value - Noon).TotalMinutes;
        var (p10, p90) = (Minutes(0.1), Minutes(0.9));
        return new(
            id,
            what,
            actual,
            p10,
            Minutes(0.5),
            p90,
            quartiles is { } q ? Share(q, p10, p90)
                : actual >= p10 && actual <= p90 ? 1
                : 0
        );
    }

    /// <summary>How much of a lognormal law with these quartiles lies between two times.</summary>
    private static double Share((double Low, double High) quartiles, double from, double to)
    {
        var law = LogNormal.FromMedian(
            Math.Sqrt(quartiles.Low * quartiles.High),
            Math.Log(quartiles.High / quartiles.Low) / (2 * Quartile)
        );
        return law.Cdf(to) - law.Cdf(from);
    }

    private static LitterCarry Carry(CaseRow c) =>
        new(
            new Stretch(c.Number("carry_km")!.Value),
            Surfaces.Find(c["ground"])!,
            (int?)c.Number("people"),
            SnowCm: c.Number("snow_cm") ?? 0
        );

    private static string Wait(string prior)
    {
        var p = PriorTable.Times.Single(t => t.Id == prior);
        return string.Create(
            CultureInfo.InvariantCulture,
            $$"""{"mode":"wait","p10":{{p.P10Minutes}},"p50":{{p.P50Minutes}},"p90":{{p.P90Minutes}}}"""
        );
    }
}
