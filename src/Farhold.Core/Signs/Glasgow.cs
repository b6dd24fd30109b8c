namespace Farhold.Signs;

/// <summary>How deep unconsciousness is, best to worst.</summary>
public enum GlasgowSeverity
{
    /// <summary>13 to 15.</summary>
    Mild,

    /// <summary>9 to 12.</summary>
    Moderate,

    /// <summary>3 to 8.</summary>
    Severe,
}

/// <summary>Sums on the Glasgow coma scale. A part that can't be tested never counts as 1.</summary>
/// <remarks>
/// Source: Teasdale and Jennett 1974, Lancet 304:81, and the severity bands in common use (from memory).
/// Every function refuses a part outside eye 1–4, verbal 1–5, motor 1–6 with <see cref="ArgumentOutOfRangeException"/>.
/// </remarks>
public static class Glasgow
{
    /// <summary>The sum, 3 to 15, or null when a part can't be tested.</summary>
    public static int? Total(GlasgowParts parts)
    {
        var bounds = Bounds(parts);
        return bounds.IsExact ? bounds.Min : null;
    }

    /// <summary>The sums possible with what could be tested.</summary>
    public static ScoreBounds Bounds(GlasgowParts parts) =>
        Part(parts.Eye, 4, "eye") + Part(parts.Verbal, 5, "verbal") + Part(parts.Motor, 6, "motor");

    /// <exception cref="ArgumentOutOfRangeException">The total is not from 3 to 15.</exception>
    public static GlasgowSeverity SeverityOf(int total) => total switch
    {
        < 3 or > 15 => throw new ArgumentOutOfRangeException(nameof(total), total, "A Glasgow coma scale total is from 3 to 15."),
        <= 8 => GlasgowSeverity.Severe,
        <= 12 => GlasgowSeverity.Moderate,
        _ => GlasgowSeverity.Mild,
    };

    private static ScoreBounds Part(int? score, int greatest, string name) => score switch
    {
        null => new(1, greatest),
        < 1 => throw Outside(score, greatest, name),
        { } s when s > greatest => throw Outside(score, greatest, name),
        { } s => ScoreBounds.Exactly(s),
    };

    private static ArgumentOutOfRangeException Outside(int? score, int greatest, string name) =>
        new(name, score, $"The {name} part is from 1 to {greatest}.");
}
