namespace Farhold.Signs;

/// <summary>Sums on the Glasgow coma scale. A part that can't be tested never counts as 1.</summary>
/// <remarks>
/// Source: Teasdale and Jennett 1974, Lancet 304:81 (from memory).
/// Every function refuses a part outside eye 1–4, verbal 1–5, motor 1–6 with <see cref="ArgumentOutOfRangeException"/>.
/// </remarks>
public static class Glasgow
{
    /// <summary>The sums possible with what could be tested.</summary>
    public static ScoreBounds Bounds(GlasgowParts parts) =>
        Part(parts.Eye, 4, "eye") + Part(parts.Verbal, 5, "verbal") + Part(parts.Motor, 6, "motor");

    private static ScoreBounds Part(int? score, int greatest, string name) =>
        score switch
        {
            null => new(1, greatest),
            < 1 => throw Outside(score, greatest, name),
            { } s when s > greatest => throw Outside(score, greatest, name),
            { } s => ScoreBounds.Exactly(s),
        };

    private static ArgumentOutOfRangeException Outside(int? score, int greatest, string name) =>
        new(name, score, SignTexts.ComaPart(name, greatest));
}
