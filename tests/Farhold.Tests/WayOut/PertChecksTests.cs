namespace Farhold.Tests.WayOut;

/// <summary>Every row of the table that a formula or a distribution answers; sums by simulation are in <see cref="SumTests"/>.</summary>
public class PertChecksTests
{
    private static readonly CheckRow[] Rows = [.. CheckRow.Of("pert_checks.csv")];

    public static TheoryData<int, string> Exact => CheckRow.Theory("pert_checks.csv", Answerable, "check", "inputs", "quantity", "value");

    private static bool Answerable(CheckRow row) => !SumTests.Simulated(row);

    [Theory, MemberData(nameof(Exact))]
    public void The_exact_answer_is_within_tolerance(int row, string source)
    {
        var check = Rows.Where(Answerable).ElementAt(row);
        var ours = Answer(check);
        var tolerance = Math.Max(check.Number("tolerance"), Math.Abs(check.Number("value")) * 1e-9);
        Assert.True(Math.Abs(ours - check.Number("value")) <= tolerance, $"{ours}: {source}");
    }

    private static double Answer(CheckRow check) =>
        check["check"] switch
        {
            "pert" => Pert(check),
            "pert_activity_published" => Published(check),
            "pert_network_published" => Network(check),
            "lognormal_from_P10_P90" => Of(LogNormal.FromQuantiles(Given(check, "P10"), Given(check, "P90")), check["quantity"]),
            "lognormal_from_P50_P90" => Of(LogNormal.FromMedianAndP90(Given(check, "P50"), Given(check, "P90")), check["quantity"]),
            "lognormal_from_mean_sd" => Of(LogNormal.FromMean(Given(check, "mean"), Given(check, "sd")), check["quantity"]),
            "copula_conversion" => Converted(check),
            "sum_normal_correlated" => NormalSum(check),
            "monte_carlo_error" when check["quantity"] == "standard_error_of_proportion" => new ProbabilityEstimate(
                500,
                10_000
            ).StandardError,
            "monte_carlo_error" => QuantileError(),
            _ => double.NaN,
        };

    private static double Given(CheckRow check, string key) => check.Parameter("inputs", key) ?? throw new FormatException(key);

    private static double Pert(CheckRow check)
    {
        var pert = new Pert(Given(check, "min"), Given(check, "mode"), Given(check, "max"), Given(check, "lambda"));
        return check["quantity"] switch
        {
            "alpha" => pert.Alpha,
            "beta" => pert.Beta,
            "variance_exact_beta" => pert.Variance,
            "variance_classical_((max-min)/6)^2" => pert.ClassicalVariance,
            var other => Of(pert, other),
        };
    }

    private static double Published(CheckRow check)
    {
        var three = check["inputs"].Split(": ")[1].Split(' ')[0].Split(',').Select(double.Parse).ToArray();
        var pert = new Pert(three[0], three[1], three[2]);
        return check["quantity"] == "mean" ? pert.Mean : Math.Sqrt(pert.ClassicalVariance);
    }

    private static double Network(CheckRow check)
    {
        var parts = check["inputs"].Split("; ");
        double mean,
            variance;
        if (parts[0].StartsWith("means", StringComparison.Ordinal))
        {
            mean = parts[0][6..].Split(',').Sum(double.Parse);
            variance = parts[1][3..].Split(',').Sum(sd => double.Parse(sd) * double.Parse(sd));
        }
        else
        {
            mean = double.Parse(parts[0][5..]);
            variance = double.Parse(parts[1][9..]);
        }

        var below = NormalLaw.Cdf((double.Parse(parts[2][2..]) - mean) / Math.Sqrt(variance));
        return check["quantity"].StartsWith("P(total>=", StringComparison.Ordinal) ? 1 - below : below;
    }

    private static double Converted(CheckRow check)
    {
        var rho = double.Parse(check["inputs"].Split("rho=")[1]);
        if (check["quantity"] == "spearman")
            return new Copula(rho).Spearman;
        if (check["quantity"] == "kendall")
            return new Copula(rho).Kendall;
        // Correlation of two lognormals from that of their logarithms, closed form.
        var (a, b) = (LogNormal.FromQuantiles(20, 80).Sigma, LogNormal.FromQuantiles(60, 240).Sigma);
        return double.ExpM1(rho * a * b) / Math.Sqrt(double.ExpM1(a * a) * double.ExpM1(b * b));
    }

    private static double NormalSum(CheckRow check)
    {
        var rho = double.Parse(check["inputs"].Split("rho=")[1]);
        double[] deviations = [15, 30, 10];
        var variance = deviations.Sum(d => d * d) + (rho * ((15 * 30) + (15 * 10) + (30 * 10)) * 2);
        return check["quantity"] switch
        {
            "variance" => variance,
            "P90" => 210 + (NormalLaw.Z90 * Math.Sqrt(variance)),
            var other => 1 - NormalLaw.Cdf((double.Parse(other[4..^1]) - 210) / Math.Sqrt(variance)),
        };
    }

    private static double QuantileError()
    {
        var pert = new Pert(60, 120, 300);
        var x = pert.Quantile(0.9);
        var density = (pert.Cdf(x + 1e-3) - pert.Cdf(x - 1e-3)) / 2e-3;
        return Math.Sqrt(0.9 * 0.1 / 10_000) / density;
    }

    private static double Of(Distribution law, string quantity) =>
        quantity switch
        {
            "mean" => law.Mean,
            "variance" => law.Variance,
            "sd" => Math.Sqrt(law.Variance),
            "median" => law.Quantile(0.5),
            "mu_ln" => ((LogNormal)law).Mu,
            "sigma_ln" => ((LogNormal)law).Sigma,
            _ when quantity.StartsWith("quantile_", StringComparison.Ordinal) => law.Quantile(double.Parse(quantity[9..])),
            _ when quantity.StartsWith("cdf_at_", StringComparison.Ordinal) => law.Cdf(double.Parse(quantity[7..])),
            _ when quantity.StartsWith("P(T>", StringComparison.Ordinal) => 1 - law.Cdf(double.Parse(quantity[4..^1])),
            _ when quantity[0] == 'P' => law.Quantile(double.Parse(quantity[1..]) / 100),
            _ => double.NaN,
        };
}
