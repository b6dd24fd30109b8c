namespace Farhold.WayOut.Chance;

/// <summary>The standard normal law.</summary>
public static class NormalLaw
{
    /// <summary>How many standard deviations P90 lies from the middle.</summary>
    public const double Z90 = 1.2815515655446004;

    public static double Density(double z) => Math.Exp(-z * z / 2) * 0.3989422804014327;

    /// <summary>P(Z ≤ z), absolute error under 1e-14, relative under 1e-7; ask for −z to keep an upper tail.</summary>
    /// <remarks>Source: Hart 1968 in the form of West 2005, "Better approximations to cumulative normal functions", Wilmott.</remarks>
    public static double Cdf(double z)
    {
        var x = Math.Abs(z);
        if (x > 37)
            return z > 0 ? 1 : 0;
        var density = Math.Exp(-x * x / 2);
        double tail;
        if (x < 7.07106781186547)
        {
            var above = (
                (
                    (
                        (
                            (
                                (((((((0.0352624965998911 * x) + 0.700383064443688) * x) + 6.37396220353165) * x) + 33.912866078383) * x)
                                + 112.079291497871
                            ) * x
                        ) + 221.213596169931
                    ) * x
                ) + 220.206867912376
            );
            var below = (
                (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (((((0.0883883476483184 * x) + 1.75566716318264) * x) + 16.064177579207) * x)
                                                + 86.7807322029461
                                            ) * x
                                        ) + 296.564248779674
                                    ) * x
                                ) + 637.333633378831
                            ) * x
                        ) + 793.826512519948
                    ) * x
                ) + 440.413735824752
            );
            tail = density * above / below;
        }
        else
        {
            tail = density / (x + (1 / (x + (2 / (x + (3 / (x + (4 / (x + 0.65))))))))) / 2.506628274631;
        }

        return z > 0 ? 1 - tail : tail;
    }

    /// <summary>The z that P(Z ≤ z) = p, relative error about 1e-16.</summary>
    /// <remarks>Source: Wichura 1988, algorithm AS 241 (PPND16), Applied Statistics 37:477–484.</remarks>
    public static double Quantile(double p)
    {
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var r = 0.180625 - (q * q);
            return q
                * (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (
                                                            (((2.5090809287301226727e3 * r) + 3.3430575583588128105e4) * r)
                                                            + 6.7265770927008700853e4
                                                        ) * r
                                                    ) + 4.5921953931549871457e4
                                                ) * r
                                            ) + 1.3731693765509461125e4
                                        ) * r
                                    ) + 1.9715909503065514427e3
                                ) * r
                            ) + 1.3314166789178437745e2
                        ) * r
                    ) + 3.3871328727963666080
                )
                / (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (
                                                            (((5.2264952788528545610e3 * r) + 2.8729085735721942674e4) * r)
                                                            + 3.9307895800092710610e4
                                                        ) * r
                                                    ) + 2.1213794301586595867e4
                                                ) * r
                                            ) + 5.3941960214247511077e3
                                        ) * r
                                    ) + 6.8718700749205790830e2
                                ) * r
                            ) + 4.2313330701600911252e1
                        ) * r
                    ) + 1
                );
        }

        var near = q < 0 ? p : 1 - p;
        if (near <= 0)
            return q < 0 ? double.NegativeInfinity : double.PositiveInfinity;
        var tail = Tail(Math.Sqrt(-Math.Log(near)));
        return q < 0 ? -tail : tail;
    }

    private static double Tail(double r)
    {
        if (r <= 5)
        {
            r -= 1.6;
            return (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (
                                                            (((7.74545014278341407640e-4 * r) + 2.27238449892691845833e-2) * r)
                                                            + 2.41780725177450611770e-1
                                                        ) * r
                                                    ) + 1.27045825245236838258
                                                ) * r
                                            ) + 3.64784832476320460504
                                        ) * r
                                    ) + 5.76949722146069140550
                                ) * r
                            ) + 4.63033784615654529590
                        ) * r
                    ) + 1.42343711074968357734
                )
                / (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (
                                                            (((1.05075007164441684324e-9 * r) + 5.47593808499534494600e-4) * r)
                                                            + 1.51986665636164571966e-2
                                                        ) * r
                                                    ) + 1.48103976427480074590e-1
                                                ) * r
                                            ) + 6.89767334985100004550e-1
                                        ) * r
                                    ) + 1.67638483018380384940
                                ) * r
                            ) + 2.05319162663775882187
                        ) * r
                    ) + 1
                );
        }

        r -= 5;
        return (
                (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (((2.01033439929228813265e-7 * r) + 2.71155556874348757815e-5) * r)
                                                        + 1.24266094738807843860e-3
                                                    ) * r
                                                ) + 2.65321895265761230930e-2
                                            ) * r
                                        ) + 2.96560571828504891230e-1
                                    ) * r
                                ) + 1.78482653991729133580
                            ) * r
                        ) + 5.46378491116411436990
                    ) * r
                ) + 6.65790464350110377720
            )
            / (
                (
                    (
                        (
                            (
                                (
                                    (
                                        (
                                            (
                                                (
                                                    (
                                                        (((2.04426310338993978564e-15 * r) + 1.42151175831644588870e-7) * r)
                                                        + 1.84631831751005468180e-5
                                                    ) * r
                                                ) + 7.86869131145613259100e-4
                                            ) * r
                                        ) + 1.48753612908506148525e-2
                                    ) * r
                                ) + 1.36929880922735805310e-1
                            ) * r
                        ) + 5.99832206555887937690e-1
                    ) * r
                ) + 1
            );
    }
}
