namespace Farhold.WayOut.Ground;

/// <summary>A stretch of one geodesic, seen from the auxiliary sphere.</summary>
/// <param name="Eps">The parameter of the series.</param>
/// <param name="Sigma1">Arc from the northward equator crossing to the first end.</param>
/// <param name="Sigma12">Arc between the ends, radians.</param>
internal readonly record struct GeodesicArc(double Eps, SinCos Sigma1, SinCos Sigma2, double Sigma12)
{
    /// <summary>Length divided by the semi-minor axis (Karney 2013, eq. 7).</summary>
    public double Length()
    {
        Span<double> c = stackalloc double[GeodesicSeries.Size];
        GeodesicSeries.Distance(Eps, c);
        return (1 + GeodesicSeries.DistanceScaleMinusOne(Eps)) * (Sigma12 + Wave(c));
    }

    /// <summary>Reduced length divided by the semi-minor axis (eq. 38).</summary>
    public double ReducedLength(GeodesicPair pair)
    {
        Span<double> c1 = stackalloc double[GeodesicSeries.Size];
        Span<double> c2 = stackalloc double[GeodesicSeries.Size];
        GeodesicSeries.Distance(Eps, c1);
        GeodesicSeries.ReducedLength(Eps, c2);
        var a1 = GeodesicSeries.DistanceScaleMinusOne(Eps);
        var a2 = GeodesicSeries.ReducedLengthScaleMinusOne(Eps);
        for (var l = 1; l < GeodesicSeries.Size; l++)
            c2[l] = ((1 + a1) * c1[l]) - ((1 + a2) * c2[l]);
        var j12 = ((a1 - a2) * Sigma12) + Wave(c2);
        return (pair.Stretch2 * (Sigma1.Cos * Sigma2.Sin)) - (pair.Stretch1 * (Sigma1.Sin * Sigma2.Cos)) - (Sigma1.Cos * Sigma2.Cos * j12);
    }

    private double Wave(ReadOnlySpan<double> c) => GeodesicSeries.SineSum(c, Sigma2) - GeodesicSeries.SineSum(c, Sigma1);
}
