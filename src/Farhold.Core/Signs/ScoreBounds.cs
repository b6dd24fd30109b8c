namespace Farhold.Signs;

/// <summary>The least and the greatest a score can be; both belong to it. <c>default</c> is exactly zero.</summary>
public readonly record struct ScoreBounds
{
    /// <exception cref="ArgumentException"><paramref name="max"/> is below <paramref name="min"/>.</exception>
    public ScoreBounds(int min, int max)
    {
        if (max < min)
            throw new ArgumentException($"Bounds of a score need min ≤ max; got {min} and {max}.", nameof(max));
        Min = min;
        Max = max;
    }

    public int Min { get; }

    public int Max { get; }

    public bool IsExact => Min == Max;

    public static ScoreBounds Exactly(int score) => new(score, score);

    public static ScoreBounds operator +(ScoreBounds a, ScoreBounds b) => new(a.Min + b.Min, a.Max + b.Max);

    public static ScoreBounds Add(ScoreBounds left, ScoreBounds right) => left + right;
}
