namespace Farhold.Tests.WayOut;

/// <summary>Rows of the table that only trials answer: sums, shared luck, daylight gates.</summary>
public class SumTests
{
    private const string Perts =
        """{"mode":"wait","low":30,"likely":60,"high":180},{"mode":"carry","low":60,"likely":120,"high":300},{"mode":"vehicle","low":20,"likely":30,"high":60}""";

    private const string Tenths =
        """{"mode":"wait","p10":20,"p90":80},{"mode":"carry","p10":60,"p90":240},{"mode":"vehicle","p10":15,"p90":40}""";

    private static readonly Plan ThreeLegs = SomePlan.Of(Perts, "\"correlation\":0,");

    private static readonly CheckRow[] Checks = [.. CheckRow.Of("pert_checks.csv").Where(Simulated)];

    public static TheoryData<int, string> Rows => CheckRow.Theory("pert_checks.csv", Simulated, "check", "inputs", "quantity", "value");

    internal static bool Simulated(CheckRow row) =>
        row["check"] == "daylight_gate"
        || (row["check"].StartsWith("sum_", StringComparison.Ordinal) && row["check"] != "sum_normal_correlated");

    [Theory, MemberData(nameof(Rows))]
    public void Trials_agree_with_the_row_within_four_standard_errors(int row, string source)
    {
        var check = Checks[row];
        var quantity = check["quantity"];
        var value = check.Number("value");
        if (Shortcut(check) is { } shortcut)
        {
            Assert.True(Math.Abs(shortcut - value) <= check.Number("tolerance") + (1e-7 * Math.Abs(value)), source);
            return;
        }

        var minutes = Minutes(check);
        var (ours, error) = Measured(minutes, quantity);
        // The grid of the published convolution adds its tolerance.
        Assert.True(Math.Abs(ours - value) <= (4 * error) + check.Number("tolerance"), $"{ours} ± {error}: {source}");
        Assert.True(error < 0.05 * Math.Max(1, Math.Abs(value)), $"too coarse to tell: ± {error}");
    }

    // Three-leg sum of pert_checks.csv: median 244.616, P90 316.94 min and P(T>360) 0.02006, by convolution.
    [Fact]
    public void The_stated_interval_holds_the_truth_as_often_as_it_says()
    {
        var (median, p90, before, threeErrors) = (0, 0, 0, 0);
        for (var seed = 1UL; seed <= 400; seed++)
        {
            var sorted = Trials(seed);
            var (q50, q90, chance) = (
                QuantileEstimate.Of(sorted, 0.5),
                QuantileEstimate.Of(sorted, 0.9),
                Simulation.Before(sorted, 360 * 60)
            );
            median += q50.Low <= 244.616 * 60 && 244.616 * 60 <= q50.High ? 1 : 0;
            p90 += q90.Low <= 316.9408282 * 60 && 316.9408282 * 60 <= q90.High ? 1 : 0;
            before += chance.Low <= 1 - 0.020058 && 1 - 0.020058 <= chance.High ? 1 : 0;
            if (
                seed <= 100
                && Math.Abs(q90.Value - (316.9408282 * 60)) <= 3 * (q90.High - q90.Low) / 3.92
                && Math.Abs(chance.Value - (1 - 0.020058)) <= 3 * chance.StandardError
            )
                threeErrors++;
        }

        // 95 % of 400 is 380 with standard deviation 4.4: three of them either way, on fixed seeds.
        Assert.InRange(median, 367, 393);
        Assert.InRange(p90, 367, 393);
        Assert.InRange(before, 367, 393);
        Assert.True(threeErrors >= 95, $"{threeErrors} of 100 seeds agree within three standard errors");
    }

    private static double[] Trials(ulong seed)
    {
        var sorted = SomePlan.Seconds(ThreeLegs, null, 2000, seed);
        Array.Sort(sorted);
        return sorted;
    }

    private static (double Value, double Error) Measured(double[] minutes, string quantity)
    {
        var n = minutes.Length;
        var mean = minutes.Average();
        var variance = minutes.Sum(m => (m - mean) * (m - mean)) / (n - 1);
        if (quantity is "mean" or "mean_wait" or "mean take-off after 15:00")
            return (mean, Math.Sqrt(variance / n));
        if (quantity is "variance" or "sd")
        {
            var fourth = minutes.Sum(m => Math.Pow(m - mean, 4)) / n;
            var error = Math.Sqrt((fourth - (variance * variance)) / n);
            return quantity == "variance" ? (variance, error) : (Math.Sqrt(variance), error / (2 * Math.Sqrt(variance)));
        }

        if (quantity.StartsWith("quantile_", StringComparison.Ordinal))
        {
            var q = QuantileEstimate.Of(minutes, double.Parse(quantity[9..].Split(' ')[0]));
            return (q.Value, (q.High - q.Low) / 3.92);
        }

        var hits = quantity switch
        {
            "P(flies today)" => minutes.Count(m => m < 180),
            "P(wait=0)" => minutes.Count(m => m == 0),
            _ => minutes.Count(m => m > double.Parse(quantity[(quantity.IndexOf('>') + 1)..^1])),
        };
        var p = new ProbabilityEstimate(hits, n);
        return (p.Value, Math.Max(p.StandardError, 1.0 / n));
    }

    /// <summary>In rising order.</summary>
    private static double[] Minutes(CheckRow check)
    {
        const int trials = 200_000;
        var minutes = check["check"] switch
        {
            "sum_pert_3_legs" => FromPlan(Perts, 0, trials),
            "sum_pert_3_legs_fully_dependent" => FromPlan(Perts, 1, trials),
            "sum_pert_3_legs_gaussian_copula" => FromPlan(Perts, double.Parse(check["inputs"].Split("rho=")[1]), trials),
            "sum_lognormal_3_legs" => FromPlan(Tenths, 0, trials),
            "daylight_gate" => Gate(check, trials),
            var other => throw new FormatException(other),
        };
        Array.Sort(minutes);
        return minutes;
    }

    private static double[] FromPlan(string legs, double rho, int trials) =>
        [.. SomePlan.Seconds(SomePlan.Of(legs, FormattableString.Invariant($"\"correlation\":{rho},")), null, trials).Select(s => s / 60)];

    private static IEnumerable<double> Uniform(int trials) => Enumerable.Range(0, trials).Select(t => Slice.At(new Rng(5), t, 0, 0));

    /// <summary>Light from 06 to 18 on every day; as many ready times as trials through the gate of an aircraft leg.</summary>
    private static double[] Gate(CheckRow check, int trials)
    {
        var dark = SomePlan.NightsFrom(18, 12).Against(Some.At("00:00"));
        var later =
            check["inputs"] == "ready at 15:00 + exponential mean 120 min; window closes 18:00; next opens 06:00"
            || check["inputs"].StartsWith("ready at 15:00", StringComparison.Ordinal)
            || check["quantity"].Contains("15:00", StringComparison.Ordinal);
        return later
            ? [.. Uniform(trials).Select(u => -120 * Math.Log(u)).Select(m => (dark.NextLight((m + 900) * 60) / 60) - 900)]
            : [.. Uniform(trials).Select(u => 1440 * u).Select(m => (dark.NextLight(m * 60) / 60) - m)];
    }

    /// <summary>The rows that show how far a shortcut is off are formulas.</summary>
    private static double? Shortcut(CheckRow check)
    {
        if (
            !check["quantity"].EndsWith("normal approximation", StringComparison.Ordinal)
            && !check["quantity"].EndsWith("Fenton-Wilkinson", StringComparison.Ordinal)
        )
            return null;
        Distribution[] laws = check["check"] switch
        {
            "sum_pert_3_legs" => [new Pert(30, 60, 180), new Pert(60, 120, 300), new Pert(20, 30, 60)],
            _ => [LogNormal.FromQuantiles(20, 80), LogNormal.FromQuantiles(60, 240), LogNormal.FromQuantiles(15, 40)],
        };
        var (mean, sd) = (laws.Sum(l => l.Mean), Math.Sqrt(laws.Sum(l => l.Variance)));
        return check["quantity"].StartsWith("P(T>360)", StringComparison.Ordinal)
            ? 1 - NormalLaw.Cdf((360 - mean) / sd)
            : LogNormal.FromMean(mean, sd).Quantile(double.Parse(check["quantity"].Split('_', ' ')[1]));
    }
}
