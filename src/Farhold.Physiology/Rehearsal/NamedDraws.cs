namespace Farhold.Physiology.Rehearsal;

/// <summary>Chance by name: each draw depends on the seed and its own name alone, never on what was drawn before it.</summary>
/// <remarks>
/// So a course with one more look, or one other act, draws the same for everything else. The bits are those of SplitMix64 (Steele, Lea,
/// Flood 2014) at the place that the name's FNV-1a hash gives.
/// </remarks>
public sealed class NamedDraws(ulong seed)
{
    public ulong Seed { get; } = seed;

    /// <summary>Between 0 and 1, never either.</summary>
    public double Uniform(string name)
    {
        unchecked
        {
            // With the half added, 52 bits still fit a double exactly, so none rounds up to 1.
            var bits = Mix(Mix(Seed + 0x9E3779B97F4A7C15) ^ BitHash.Of(name));
            return ((long)(bits >> 12) + 0.5) * (1.0 / (1UL << 52));
        }
    }

    /// <summary>Quantile of the standard normal distribution. Wichura 1988, Applied Statistics 37:477, algorithm AS 241 (PPND16).</summary>
    /// <param name="p">Between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is 0, 1 or beyond.</exception>
    internal static double Normal(double p)
    {
        if (!(p > 0 && p < 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "Between 0 and 1.");
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
            return q * Ratio(0.180625 - (q * q), Middle);
        var r = Math.Sqrt(-ExactMath.Log(q < 0 ? p : 1 - p));
        var size = r <= 5 ? Ratio(r - 1.6, Side) : Ratio(r - 5, Tail);
        return q < 0 ? -size : size;
    }

    private static double Ratio(double r, (double[] Above, double[] Below) of)
    {
        var (above, below) = (0.0, 0.0);
        for (var i = of.Above.Length - 1; i >= 0; i--)
        {
            above = (above * r) + of.Above[i];
            below = (below * r) + of.Below[i];
        }

        return above / below;
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    private static readonly (double[], double[]) Middle = (
        [
            3.3871328727963666080e0,
            1.3314166789178437745e2,
            1.9715909503065514427e3,
            1.3731693765509461125e4,
            4.5921953931549871457e4,
            6.7265770927008700853e4,
            3.3430575583588128105e4,
            2.5090809287301226727e3,
        ],
        [
            1,
            4.2313330701600911252e1,
            6.8718700749205790830e2,
            5.3941960214247511077e3,
            2.1213794301586595867e4,
            3.9307895800092710610e4,
            2.8729085735721942674e4,
            5.2264952788528545610e3,
        ]
    );

    private static readonly (double[], double[]) Side = (
        [
            1.42343711074968357734e0,
            4.63033784615654529590e0,
            5.76949722146069140550e0,
            3.64784832476320460504e0,
            1.27045825245236838258e0,
            2.41780725177450611770e-1,
            2.27238449892691845833e-2,
            7.74545014278341407640e-4,
        ],
        [
            1,
            2.05319162663775882187e0,
            1.67638483018380384940e0,
            6.89767334985100004550e-1,
            1.48103976427480074590e-1,
            1.51986665636164571966e-2,
            5.47593808499534494600e-4,
            1.05075007164441684324e-9,
        ]
    );

    private static readonly (double[], double[]) Tail = (
        [
            6.65790464350110377720e0,
            5.46378491116411436990e0,
            1.78482653991729133580e0,
            2.96560571828504891230e-1,
            2.65321895265761230930e-2,
            1.24266094738807843860e-3,
            2.71155556874348757815e-5,
            2.01033439929228813265e-7,
        ],
        [
            1,
            5.99832206555887937690e-1,
            1.36929880922735805310e-1,
            1.48753612908506148525e-2,
            7.86869131145613259100e-4,
            1.84631831751005468180e-5,
            1.42151175831644588870e-7,
            2.04426310338993978564e-15,
        ]
    );
}
