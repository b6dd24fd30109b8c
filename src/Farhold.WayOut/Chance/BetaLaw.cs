namespace Farhold.WayOut.Chance;

/// <summary>The beta law on 0 to 1.</summary>
public static class BetaLaw
{
    /// <summary>ln Γ(x) for x ≥ 0.5, relative error about 1e-15.</summary>
    /// <remarks>Source: Lanczos 1964 with g = 7 and nine terms (Godfrey's coefficients).</remarks>
    internal static double LogGamma(double x)
    {
        ReadOnlySpan<double> terms =
        [
            676.5203681218851,
            -1259.1392167224028,
            771.32342877765313,
            -176.61502916214059,
            12.507343278686905,
            -0.13857109526572012,
            9.9843695780195716e-6,
            1.5056327351493116e-7,
        ];
        x -= 1;
        var sum = 0.99999999999980993;
        for (var i = 0; i < terms.Length; i++)
            sum += terms[i] / (x + i + 1);
        var t = x + 7.5;
        return 0.91893853320467274178 + ((x + 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }

    internal static double LogNorm(double a, double b) => LogGamma(a + b) - LogGamma(a) - LogGamma(b);

    /// <summary>The regularised incomplete beta function I_x(a, b) for a, b ≥ 0.5, absolute error about 1e-14.</summary>
    /// <remarks>Source: continued fraction DLMF 8.17.22, by the modified method of Lentz (Thompson and Barnett 1986).</remarks>
    public static double Cdf(double x, double a, double b) => Cdf(x, a, b, LogNorm(a, b));

    internal static double Cdf(double x, double a, double b, double logNorm)
    {
        if (x <= 0)
            return 0;
        if (x >= 1)
            return 1;
        var front = Math.Exp(logNorm + (a * Math.Log(x)) + (b * double.LogP1(-x)));
        return x < (a + 1) / (a + b + 2) ? front * Fraction(x, a, b) / a : 1 - (front * Fraction(1 - x, b, a) / b);
    }

    /// <summary>The x with I_x(a, b) = p, by Newton's steps kept inside a shrinking bracket.</summary>
    public static double Quantile(double p, double a, double b)
    {
        if (p <= 0)
            return 0;
        if (p >= 1)
            return 1;
        // The nearer tail keeps its digits.
        return p <= 0.5 ? Lower(p, a, b, LogNorm(a, b), a / (a + b)) : 1 - Lower(1 - p, b, a, LogNorm(a, b), b / (a + b));
    }

    /// <param name="guess">Where to begin; a good one saves steps and changes no more than the last digits.</param>
    internal static double Lower(double p, double a, double b, double logNorm, double guess)
    {
        double low = 0,
            high = 1,
            x = guess;
        for (var step = 0; step < 200; step++)
        {
            var miss = Cdf(x, a, b, logNorm) - p;
            if (miss > 0)
                high = x;
            else
                low = x;
            var density = Math.Exp(logNorm + ((a - 1) * Math.Log(x)) + ((b - 1) * double.LogP1(-x)));
            var next = x - (miss / density);
            // Far below the bulk Newton crawls; the tail is nearly a power of x, so halve its exponent's error instead.
            if (!(next > low && next < high))
                next = low > 0 ? Math.Sqrt(low * high) : high / 16;
            if (Math.Abs(next - x) <= 1e-15 * x || high - low <= 1e-16 * high)
                return next;
            x = next;
        }

        return x;
    }

    private static double Fraction(double x, double a, double b)
    {
        const double tiny = 1e-300;
        double c = 1,
            d = 1 / NotZero(1 - ((a + b) * x / (a + 1))),
            f = d;
        for (var m = 1; m <= 500; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d));
            c = NotZero(1 + (even / c));
            f *= c * d;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d));
            c = NotZero(1 + (odd / c));
            var last = c * d;
            f *= last;
            if (Math.Abs(last - 1) < 1e-15)
                break;
        }

        return f;

        static double NotZero(double value) => Math.Abs(value) < tiny ? tiny : value;
    }
}
