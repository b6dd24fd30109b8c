namespace Farhold.WayOut.Ground;

/// <summary>The series of a geodesic on WGS-84, to sixth order in ε.</summary>
/// <remarks>
/// Source: Karney 2013, J. Geodesy 87:43–55: A₁ (17), C₁ (18), C₁′ (21), A₂ (42), C₂ (43), A₃ (24), C₃ (25); equation numbers from memory.
/// Rows hold the highest power first.
/// </remarks>
internal static class GeodesicSeries
{
    /// <summary>Length of an array that takes the coefficients of a series; index 0 stays unused.</summary>
    public const int Size = 7;

    // In ε²; row l − 1 belongs to ε to the power l.
    private static readonly double[] A1 = Over(256, 1, 4, 64, 0);
    private static readonly double[] A2 = Over(256, -11, -28, -192, 0);

    private static readonly double[][] C1 =
    [
        Over(32, -1, 6, -16),
        Over(2048, -9, 64, -128),
        Over(768, 9, -16),
        Over(512, 3, -5),
        Over(1280, -7),
        Over(2048, -7),
    ];

    private static readonly double[][] C1Reverted =
    [
        Over(1536, 205, -432, 768),
        Over(12288, 4005, -4736, 3840),
        Over(384, -225, 116),
        Over(7680, -7173, 2695),
        Over(7680, 3467),
        Over(61440, 38081),
    ];

    private static readonly double[][] C2 =
    [
        Over(32, 1, 2, 16),
        Over(2048, 35, 64, 384),
        Over(768, 15, 80),
        Over(512, 7, 35),
        Over(1280, 63),
        Over(2048, 77),
    ];

    // In ε, each coefficient a polynomial in n, which is a number once the ellipsoid is fixed.
    private static readonly double[] A3 = [InN(128, -3), InN(64, -2, -3), InN(16, -1, -3, -1), InN(8, 3, -1, -2), InN(2, 1, -1), InN(1, 1)];

    private static readonly double[][] C3 =
    [
        [InN(128, 3), InN(128, 2, 5), InN(64, -1, 3, 3), InN(8, -1, 0, 1), InN(4, -1, 1)],
        [InN(256, 5), InN(128, 1, 3), InN(64, -3, -2, 3), InN(32, 1, -3, 2)],
        [InN(512, 7), InN(384, -10, 9), InN(192, 5, -9, 5)],
        [InN(512, 7), InN(512, -14, 7)],
        [InN(2560, 21)],
    ];

    /// <summary>ε from k² = e′² cos² α₀.</summary>
    public static double Epsilon(double kSquared) => kSquared / ((2 * (1 + Math.Sqrt(1 + kSquared))) + kSquared);

    public static double DistanceScaleMinusOne(double eps) => (Horner(A1, eps * eps) + eps) / (1 - eps);

    public static double ReducedLengthScaleMinusOne(double eps) => (Horner(A2, eps * eps) - eps) / (1 + eps);

    public static double LongitudeScale(double eps) => Horner(A3, eps);

    public static void Distance(double eps, Span<double> c) => Fill(C1, eps, eps * eps, c);

    public static void ArcOfDistance(double eps, Span<double> c) => Fill(C1Reverted, eps, eps * eps, c);

    public static void ReducedLength(double eps, Span<double> c) => Fill(C2, eps, eps * eps, c);

    public static void Longitude(double eps, Span<double> c) => Fill(C3, eps, eps, c);

    /// <summary>Σ c[l] sin 2lσ by Clenshaw's recurrence.</summary>
    public static double SineSum(ReadOnlySpan<double> c, SinCos sigma)
    {
        var twiceCos = 2 * (sigma.Cos - sigma.Sin) * (sigma.Cos + sigma.Sin);
        double b = 0,
            previous = 0;
        for (var l = c.Length - 1; l >= 1; l--)
            (b, previous) = ((twiceCos * b) - previous + c[l], b);
        return 2 * sigma.Sin * sigma.Cos * b;
    }

    private static void Fill(double[][] rows, double eps, double argument, Span<double> c)
    {
        c.Clear();
        var power = eps;
        for (var l = 1; l <= rows.Length; l++, power *= eps)
            c[l] = power * Horner(rows[l - 1], argument);
    }

    private static double Horner(double[] row, double x)
    {
        var sum = 0.0;
        foreach (var coefficient in row)
            sum = (sum * x) + coefficient;
        return sum;
    }

    private static double[] Over(double divisor, params double[] numerators) => [.. numerators.Select(a => a / divisor)];

    private static double InN(double divisor, params double[] numerators) => Horner(numerators, Wgs84.ThirdFlattening) / divisor;
}
