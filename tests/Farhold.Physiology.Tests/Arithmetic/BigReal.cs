using System.Numerics;

namespace Farhold.Physiology.Tests.Arithmetic;

/// <summary>Exponential and logarithm in whole numbers with 240 binary places: a reference that owes nothing to floating point.</summary>
internal static class BigReal
{
    private const int Places = 240;
    private static readonly BigInteger One = BigInteger.One << Places;

    private static readonly BigInteger Ln2 = 2 * Atanh(One / 3);

    /// <summary>The exact value of a double, times 2^240; what is smaller than that is cut off.</summary>
    private static BigInteger From(double x)
    {
        var bits = BitConverter.DoubleToInt64Bits(x);
        var exponent = (int)((bits >> 52) & 0x7FF);
        var mantissa = (bits & 0xFFFFFFFFFFFFF) | (exponent == 0 ? 0 : 1L << 52);
        var shift = Math.Max(exponent, 1) - 1075 + Places;
        var size = shift >= 0 ? (BigInteger)mantissa << shift : (BigInteger)mantissa >> -shift;
        return x < 0 ? -size : size;
    }

    /// <summary>How far <paramref name="found"/> is from e^x, in units of its own last place.</summary>
    public static double UlpsFromExp(double x, double found)
    {
        var exact = From(x);
        var k = BigInteger.Divide(exact, Ln2);
        var r = exact - (k * Ln2);
        BigInteger sum = One,
            term = One;
        for (var n = 1; !term.IsZero; n++)
        {
            term = ((term * r) >> Places) / n;
            sum += term;
        }

        return Ulps(found, sum, (int)k);
    }

    public static double UlpsFromLog(double x, double found)
    {
        var exponent = Math.ILogB(x);
        var m = From(Math.ScaleB(x, -exponent));
        var log = (exponent * Ln2) + (2 * Atanh(((m - One) << Places) / (m + One)));
        return Ulps(found, log, 0);
    }

    private static BigInteger Atanh(BigInteger y)
    {
        var square = (y * y) >> Places;
        BigInteger sum = 0,
            term = y;
        for (var n = 1; !term.IsZero; n += 2)
        {
            sum += term / n;
            term = (term * square) >> Places;
        }

        return sum;
    }

    /// <summary>Between a double and m · 2^(k − 240).</summary>
    private static double Ulps(double found, BigInteger m, int k)
    {
        if (found == 0)
            return m.IsZero ? 0 : double.PositiveInfinity;
        // Both as whole numbers of 2^-1400 or so: nothing is rounded until the end.
        var scaled = m << (1400 - Places + k);
        var bits = BitConverter.DoubleToInt64Bits(Math.Abs(found));
        var exponent = Math.Max((int)(bits >> 52), 1) - 1075;
        var mantissa = (bits & 0xFFFFFFFFFFFFF) | (bits >> 52 == 0 ? 0 : 1L << 52);
        var mine = (BigInteger)mantissa << (1400 + exponent);
        var away = BigInteger.Abs((found < 0 ? -mine : mine) - scaled);
        return (double)((away << 20) >> (1400 + exponent)) / (1 << 20);
    }
}
