namespace Farhold.WayOut.Chance;

/// <summary>A law whose logarithm is normal to either side of its median, with a spread of its own on each.</summary>
/// <remarks>For three figures that no shifted lognormal passes, such as 10, 59 and 60: none of what a person said is dropped.</remarks>
public sealed class SplitLogNormal : Distribution
{
    private readonly double median,
        below,
        above;

    /// <param name="p10">Not exceeded in one of ten cases; above 0.</param>
    public SplitLogNormal(double p10, double p50, double p90)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(p10);
        ArgumentOutOfRangeException.ThrowIfLessThan(p50, p10);
        ArgumentOutOfRangeException.ThrowIfLessThan(p90, p50);
        Finite(p90, nameof(p90));
        (median, below, above) = (p50, Math.Log(p50 / p10) / NormalLaw.Z90, Math.Log(p90 / p50) / NormalLaw.Z90);
    }

    public override double Mean => median * (Half(-below) + Half(above));

    public override double Variance => (median * median * (Half(-2 * below) + Half(2 * above))) - (Mean * Mean);

    public override double Cdf(double x)
    {
        if (x <= 0)
            return 0;
        var log = Math.Log(x / median);
        var spread = log < 0 ? below : above;
        return spread > 0 ? NormalLaw.Cdf(log / spread)
            : log < 0 ? 0
            : log > 0 ? 1
            : 0.5;
    }

    public override double Quantile(double p) => AtScore(NormalLaw.Quantile(p));

    public override double AtScore(double z) => median * Math.Exp((z < 0 ? below : above) * z);

    /// <summary>E of e^(s|Z|·sign) over one half of a standard normal Z: e^(s²/2) Φ(s).</summary>
    private static double Half(double s) => Math.Exp(s * s / 2) * NormalLaw.Cdf(s);
}
