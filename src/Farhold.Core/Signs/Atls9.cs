namespace Farhold.Signs;

/// <summary>What each sign allows by the table of haemorrhage classes with numbers, for an adult of about 70 kg.</summary>
/// <remarks>
/// Source: ATLS 9th edition, as reprinted in the European trauma bleeding guideline 2016 (Crit Care 20:100), table 2.
/// The table's bands overlap, leave gaps and share edges. A value in two bands, or on the edge between two
/// neighbours, allows both; a value in a gap allows the classes either side. The worst end wins where one must be
/// acted on. Every function throws <see cref="ArgumentOutOfRangeException"/> for a value that is negative or not finite.
/// </remarks>
public static class Atls9
{
    /// <summary>Percent of blood volume: 15, 30 and 40 are edges.</summary>
    public static ClassRange ByLossPercent(double percent) => ByRising(percent, 15, 30, 40);

    /// <summary>Millilitres, at 70 kg: 750, 1500 and 2000 are edges.</summary>
    public static ClassRange ByLossMl(double millilitres) => ByRising(millilitres, 750, 1500, 2000);

    /// <summary>Beats per minute: from 100 II, 120 and 140 are edges.</summary>
    /// <returns>All classes below 60 (design): severe bleeding can go with a slow heart, which the table does not know.</returns>
    public static ClassRange ByHeartRate(double perMinute) => NotNegative(perMinute) switch
    {
        < 60 => ClassRange.Any,
        100 => ClassRange.Only(HaemorrhageClass.II), // printed "< 100" for I, so this edge is not shared
        _ => ByRising(perMinute, 100, 120, 140),
    };

    /// <summary>Breaths per minute: 14–20, 20–30, 30–40, and over 35, which overlaps.</summary>
    /// <returns>All classes below 14: no band is printed, and slow breathing is no sign of a small loss.</returns>
    public static ClassRange ByRespiratoryRate(double perMinute) => NotNegative(perMinute) switch
    {
        < 14 => ClassRange.Any,
        >= 35 and <= 40 => new(HaemorrhageClass.III, HaemorrhageClass.IV),
        _ => ByRising(perMinute, 20, 30, 40),
    };

    /// <summary>Millilitres of urine per hour: over 30, 20–30, 5–15, negligible (read as up to 5); 15–20 is a gap.</summary>
    public static ClassRange ByUrineMlPerHour(double millilitres) => NotNegative(millilitres) switch
    {
        > 30 => ClassRange.Only(HaemorrhageClass.I),
        >= 20 => ClassRange.Only(HaemorrhageClass.II),
        > 15 => new(HaemorrhageClass.II, HaemorrhageClass.III),
        > 5 => ClassRange.Only(HaemorrhageClass.III),
        5 => new(HaemorrhageClass.III, HaemorrhageClass.IV),
        _ => ClassRange.Only(HaemorrhageClass.IV),
    };

    /// <summary>Normal in I and II, decreased in III and IV.</summary>
    /// <param name="lowerLimitMmHg">Below this is decreased; 90 for most adults (common practice), by age for children.</param>
    public static ClassRange BySystolic(double mmHg, double lowerLimitMmHg) =>
        NotNegative(mmHg) < NotNegative(lowerLimitMmHg)
            ? new(HaemorrhageClass.III, HaemorrhageClass.IV)
            : new(HaemorrhageClass.I, HaemorrhageClass.II);

    /// <summary>Normal or up in I, down from II on; unknown allows all.</summary>
    public static ClassRange ByPulsePressure(Truth narrow) => narrow switch
    {
        Truth.Met => new(HaemorrhageClass.II, HaemorrhageClass.IV),
        Truth.NotMet => ClassRange.Only(HaemorrhageClass.I),
        _ => ClassRange.Any,
    };

    /// <summary>
    /// Anxious at most in I and II, confused in III and IV, lethargic in IV. For a casualty without brain injury.
    /// </summary>
    public static ClassRange ByMental(Mental mental) => mental switch
    {
        Mental.Alert => new(HaemorrhageClass.I, HaemorrhageClass.II),
        Mental.Confused => new(HaemorrhageClass.III, HaemorrhageClass.IV),
        _ => ClassRange.Only(HaemorrhageClass.IV),
    };

    private static ClassRange ByRising(double value, double toTwo, double toThree, double toFour) => new(
        NotNegative(value) <= toTwo ? HaemorrhageClass.I
            : value <= toThree ? HaemorrhageClass.II
            : value <= toFour ? HaemorrhageClass.III
            : HaemorrhageClass.IV,
        value >= toFour ? HaemorrhageClass.IV
            : value >= toThree ? HaemorrhageClass.III
            : value >= toTwo ? HaemorrhageClass.II
            : HaemorrhageClass.I);

    private static double NotNegative(double value) => double.IsFinite(value) && value >= 0
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Must be finite and not negative.");
}
