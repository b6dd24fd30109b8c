namespace Farhold.WayOut.Ground;

/// <summary>The inverse problem: two places.</summary>
/// <remarks>
/// Source: Karney 2013, section 4. A path through places on one meridian or along the equator is known at once. Otherwise
/// the azimuth at the first place is searched with Newton's method inside a bracket, so that no pair fails to converge.
/// </remarks>
internal static class GeodesicInverse
{
    private const double Epsilon = 2.220446049250313E-16;

    /// <summary>From here on only the bracket is halved.</summary>
    private const int NewtonRounds = 20;

    /// <summary>Enough halvings to exhaust a double.</summary>
    private const int Rounds = NewtonRounds + 53 + 10;

    public static GeodesicPath Solve(GeoPoint from, GeoPoint to)
    {
        var pair = GeodesicPair.Of(from, to);
        if (pair.FirstAtPole || pair.DirectionLambda12.Sin == 0)
            return AlongMeridian(pair);
        if (pair.Beta1.Sin == 0 && pair.ToAntimeridian >= Wgs84.Flattening * 180)
            return pair.Restore(Wgs84.SemiMajorAxis * pair.Lambda12, new SinCos(1, 0), new SinCos(1, 0));

        var guess = GeodesicGuess.Azimuth(pair, out var shortPath);
        return shortPath ?? Search(pair, guess);
    }

    private static GeodesicPath AlongMeridian(GeodesicPair pair)
    {
        var alpha1 = pair.DirectionLambda12;
        var alpha2 = new SinCos(0, 1);
        var sigma1 = new SinCos(pair.Beta1.Sin, alpha1.Cos * pair.Beta1.Cos);
        var sigma2 = pair.Beta2;
        var arc = new GeodesicArc(Wgs84.ThirdFlattening, sigma1, sigma2, sigma2.Minus(sigma1).NotNegative().Radians);
        var same = arc.Sigma12 < 3 * Angles.Tiny || (arc.Sigma12 < Epsilon && arc.Length() < 0);
        return pair.Restore(same ? 0 : arc.Length() * Wgs84.SemiMinorAxis, alpha1, alpha2);
    }

    private static GeodesicPath Search(GeodesicPair pair, SinCos alpha1)
    {
        var (low, high) = (new SinCos(Angles.Tiny, 1), new SinCos(Angles.Tiny, -1));
        var (nearlyThere, bracketClosed) = (false, false);
        for (var round = 0; ; round++)
        {
            var trial = GeodesicTrial.Of(pair, alpha1);
            var miss = trial.Miss;
            if (bracketClosed || !(Math.Abs(miss) >= (nearlyThere ? 8 : 1) * Epsilon) || round == Rounds)
                return pair.Restore(trial.Arc.Length() * Wgs84.SemiMinorAxis, alpha1, trial.Alpha2);

            if (miss > 0 && (round < NewtonRounds || Cotangent(alpha1) > Cotangent(high)))
                high = alpha1;
            else if (miss < 0 && (round < NewtonRounds || Cotangent(alpha1) < Cotangent(low)))
                low = alpha1;

            if (round < NewtonRounds && NewtonStep(pair, alpha1, trial) is { } next)
            {
                alpha1 = next;
                nearlyThere = Math.Abs(miss) <= 16 * Epsilon;
                continue;
            }

            alpha1 = new SinCos((low.Sin + high.Sin) / 2, (low.Cos + high.Cos) / 2).Normalised();
            nearlyThere = false;
            bracketClosed =
                Math.Abs(low.Sin - alpha1.Sin) + (low.Cos - alpha1.Cos) < Epsilon
                || Math.Abs(alpha1.Sin - high.Sin) + (alpha1.Cos - high.Cos) < Epsilon;
        }
    }

    private static SinCos? NewtonStep(GeodesicPair pair, SinCos alpha1, GeodesicTrial trial)
    {
        var slope = trial.Slope(pair);
        var step = -trial.Miss / slope;
        if (!(slope > 0) || !(Math.Abs(step) < Math.PI))
            return null;
        var next = alpha1.Plus(SinCos.OfRadians(step));
        return next.Sin > 0 ? next.Normalised() : null;
    }

    private static double Cotangent(SinCos angle) => angle.Cos / angle.Sin;
}
