using System.Collections.Immutable;

namespace Farhold.Care;

/// <summary>How fast a drip runs.</summary>
public static class Drip
{
    /// <summary>Drops of common giving sets to a millilitre (common practice); printed on the packet.</summary>
    public static ImmutableArray<int> DropsPerMl { get; } = [10, 15, 20, 60];

    /// <summary>Drops a minute.</summary>
    /// <param name="dropsPerMl">Of the giving set: see <see cref="DropsPerMl"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0.</exception>
    public static double DropsPerMinute(double millilitres, double minutes, double dropsPerMl)
    {
        Positive(millilitres, nameof(millilitres));
        Positive(minutes, nameof(minutes));
        Positive(dropsPerMl, nameof(dropsPerMl));
        return millilitres * dropsPerMl / minutes;
    }

    private static void Positive(double value, string name)
    {
        if (!(double.IsFinite(value) && value > 0))
            throw new ArgumentOutOfRangeException(name, value, "A rate needs numbers above 0.");
    }
}
