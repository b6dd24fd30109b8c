namespace Farhold.Signs;

/// <summary>The normal and Student distributions, as far as the signs need them.</summary>
internal static class Gauss
{
    /// <summary>Two-sided 5 % point of the normal distribution.</summary>
    internal const double TwoSided5Percent = 1.959963984540054;

    /// <summary>Two-sided 1 % point of the normal distribution.</summary>
    internal const double TwoSided1Percent = 2.5758293035489004;

    /// <summary>P(|Z| ≥ <paramref name="z"/>) for a standard normal Z; <paramref name="z"/> not negative.</summary>
    /// <remarks>
    /// Abramowitz and Stegun 1964, 26.2.11 (series) below 3 and 26.2.14 (continued fraction) above; within
    /// 1e-10 of a library's figure, relatively, from 0 to 12.
    /// </remarks>
    internal static double TwoSidedTail(double z)
    {
        var density = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
        if (z < 3)
        {
            var term = z;
            var sum = z;
            for (var k = 1; Math.Abs(term) > 1e-18; k++)
            {
                term *= z * z / ((2 * k) + 1);
                sum += term;
            }

            return 1 - (2 * density * sum);
        }

        var fraction = z;
        for (var k = 100; k >= 1; k--)
            fraction = z + (k / fraction);
        return 2 * density / fraction;
    }

    /// <summary>Two-sided 5 % point of Student's distribution with <paramref name="freedom"/> ≥ 4 degrees of freedom.</summary>
    /// <remarks>
    /// Expansion in 1/freedom, Abramowitz and Stegun 1964, 26.7.5; relative error below 4e-4 from 4 to 200, measured.
    /// </remarks>
    internal static double Student5Percent(int freedom)
    {
        const double z = TwoSided5Percent;
        var z3 = z * z * z;
        var z5 = z3 * z * z;
        var z7 = z5 * z * z;
        var z9 = z7 * z * z;
        var f = (double)freedom;
        return z
            + ((z3 + z) / (4 * f))
            + (((5 * z5) + (16 * z3) + (3 * z)) / (96 * f * f))
            + (((3 * z7) + (19 * z5) + (17 * z3) - (15 * z)) / (384 * f * f * f))
            + (((79 * z9) + (776 * z7) + (1482 * z5) - (1920 * z3) - (945 * z)) / (92160 * f * f * f * f));
    }
}
