namespace Farhold.Physiology.Arithmetic;

/// <summary>Exponential, logarithm and power that give the same bits on every platform.</summary>
/// <remarks>
/// Made of + − × ÷ √ and rounding only, which IEEE 754 fixes to the last bit; the library's own functions ask each platform's C library.
/// Method and coefficients of <see cref="Exp"/> and <see cref="Log"/>: Sun Microsystems 1993, e_exp.c and e_log.c of fdlibm 5.3
/// ("freely granted" permission notice), error stated there as below 1 ulp.
/// </remarks>
public static class ExactMath
{
    // ln 2 with 21 zero bits at its end, so that a whole number below 2^20 times it is exact; and the rest.
    internal const double Ln2High = 6.93147180369123816490e-01;
    internal const double Ln2Low = 1.90821492927058770002e-10;
    internal const double PerLn2 = 1.44269504088896338700e+00;

    internal const double E1 = 1.66666666666666019037e-01;
    internal const double E2 = -2.77777777770155933842e-03;
    internal const double E3 = 6.61375632143793436117e-05;
    internal const double E4 = -1.65339022054652515390e-06;
    internal const double E5 = 4.13813679705723846039e-08;

    internal const double L1 = 6.666666666666735130e-01;
    internal const double L2 = 3.999999999940941908e-01;
    internal const double L3 = 2.857142874366239149e-01;
    internal const double L4 = 2.222219843214978396e-01;
    internal const double L5 = 1.818357216161805012e-01;
    internal const double L6 = 1.531383769920937332e-01;
    internal const double L7 = 1.479819860511658591e-01;

    /// <summary>Beyond these the result is 0, or infinite.</summary>
    internal const double ExpFrom = -746;
    internal const double ExpTo = 710;

    /// <summary>Added to a whole number k, leaves k + 1023 in the low bits: 1.5 · 2^52 + 1023.</summary>
    internal const double ExponentBias = 6755399441055744.0 + 1023;

    internal const long SqrtHalfBits = 0x3FE6A09E667F3BCD;
    internal const double SmallestNormal = 2.2250738585072014e-308;
    internal const double TwoTo54 = 18014398509481984.0;

    /// <summary>e to the power of <paramref name="x"/>; at most 1 ulp off.</summary>
    /// <remarks>Without branches, so that eight at once go the same way (<c>Lanes</c>).</remarks>
    public static double Exp(double x)
    {
        x = x < ExpFrom ? ExpFrom : x;
        x = x > ExpTo ? ExpTo : x;
        var k = Math.Floor((x * PerLn2) + 0.5);
        var high = x - (k * Ln2High);
        var low = k * Ln2Low;
        var r = high - low;
        var t = r * r;
        var c = r - (t * (E1 + (t * (E2 + (t * (E3 + (t * (E4 + (t * E5)))))))));
        var y = 1 - (low - (r * c / (2 - c)) - high);
        // In two halves, so that what is below the smallest normal number is rounded once.
        var half = Math.Floor(k * 0.5);
        return y * TwoTo(half) * TwoTo(k - half);
    }

    /// <summary>Natural logarithm of <paramref name="x"/>; at most 1 ulp off. Of 0 it is −∞, below 0 not a number.</summary>
    public static double Log(double x)
    {
        if (!(x > 0) || double.IsPositiveInfinity(x))
            return x == 0 ? double.NegativeInfinity
                : double.IsPositiveInfinity(x) ? x
                : double.NaN;
        var k = 0.0;
        if (x < SmallestNormal)
        {
            x *= TwoTo54;
            k = -54;
        }

        // x = 2^k (1 + f) with 1 + f between √½ and √2.
        var above = unchecked(BitConverter.DoubleToInt64Bits(x) - SqrtHalfBits);
        k += above >> 52;
        var f = BitConverter.Int64BitsToDouble((above & 0x000FFFFFFFFFFFFF) + SqrtHalfBits) - 1;
        var s = f / (2 + f);
        var z = s * s;
        var w = z * z;
        var odd = z * (L1 + (w * (L3 + (w * (L5 + (w * L7))))));
        var even = w * (L2 + (w * (L4 + (w * L6))));
        var half = 0.5 * f * f;
        return (k * Ln2High) - (half - ((s * (half + (odd + even))) + (k * Ln2Low)) - f);
    }

    /// <summary><paramref name="x"/> to the power of <paramref name="y"/>, for <paramref name="x"/> above 0.</summary>
    /// <remarks>By way of <see cref="Log"/>: 2 + 2·|y · ln x| ulp off at most. The model's powers have |y · ln x| below 10.</remarks>
    public static double Pow(double x, double y) => Exp(y * Log(x));

    /// <summary>2 to the power of a whole number from −1022 to 1023.</summary>
    private static double TwoTo(double k) => BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(k + ExponentBias) << 52);
}
