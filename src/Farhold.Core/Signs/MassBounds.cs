namespace Farhold.Signs;

/// <summary>What a body weighs at an age: what is asked back before it is logged, and what no dose is reckoned from.</summary>
/// <remarks>
/// A child's mass is held against APLS 2011 (seen second-hand): 0.5 × months + 4, from one year 2 × years + 8, from six 3 × years + 7.
/// How far a child may be from it, and every figure of an adult, is design: narrow enough that kilograms taken for pounds are
/// asked about, wide enough that a mass that can be is never made unknown.
/// </remarks>
public static class MassBounds
{
    /// <summary>No dose is reckoned for an age above this.</summary>
    public const double OldestYears = 115;

    /// <summary>Nobody is asked about a mass within this, kg.</summary>
    /// <param name="ageYears">0 to 130; null: not known.</param>
    public static Between Usual(double? ageYears) =>
        ageYears switch
        {
            null => new(3, 120),
            < 13 => Around(ageYears.Value, 0.55, 1.8),
            < 16 => new(25, 110),
            _ => new(40, 120),
        };

    /// <summary>Outside this, age and mass can't both be right, kg.</summary>
    /// <param name="ageYears">0 to 130; null: not known.</param>
    public static Between Possible(double? ageYears) =>
        ageYears switch
        {
            null => new(0.5, 300),
            < 13 => Around(ageYears.Value, 0.35, 2.6),
            < 16 => new(15, 200),
            _ => new(20, 300),
        };

    private static Between Around(double ageYears, double least, double most)
    {
        var usual = ageYears switch
        {
            < 1 => (0.5 * 12 * ageYears) + 4,
            < 6 => (2 * ageYears) + 8,
            _ => (3 * ageYears) + 7,
        };
        return new(least * usual, most * usual);
    }
}
