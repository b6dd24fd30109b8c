namespace Farhold.Signs;

/// <summary>A sign against the casualty's own usual value. <c>default</c> is unknown.</summary>
public enum SignChange
{
    Unknown,
    FarDown,
    Down,
    Unchanged,
    Up,
    FarUp,
}

/// <summary>What each sign allows by the table of haemorrhage classes with arrows.</summary>
/// <remarks>
/// Source: ATLS 10th edition 2018, as reprinted in the European trauma bleeding guideline 2019 (Crit Care 23:98), table 3.
/// A change the table does not print (a slower heart) allows all classes. Gaps and edges as in <see cref="Atls9"/>.
/// </remarks>
public static class Atls10
{
    private static readonly ClassRange oneTwo = new(HaemorrhageClass.I, HaemorrhageClass.II);
    private static readonly ClassRange oneToThree = new(HaemorrhageClass.I, HaemorrhageClass.III);
    private static readonly ClassRange twoToFour = new(HaemorrhageClass.II, HaemorrhageClass.IV);
    private static readonly ClassRange threeFour = new(HaemorrhageClass.III, HaemorrhageClass.IV);
    private static readonly ClassRange four = ClassRange.Only(HaemorrhageClass.IV);

    /// <summary>Percent of blood volume: under 15, 15–30, 31–40, over 40; between 30 and 31 is a gap, 40 an edge.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not a number.</exception>
    public static ClassRange ByLossPercent(double percent) => percent switch
    {
        < 0 or double.NaN => throw new ArgumentOutOfRangeException(nameof(percent), percent, "A loss is not negative."),
        < 15 => ClassRange.Only(HaemorrhageClass.I),
        <= 30 => ClassRange.Only(HaemorrhageClass.II),
        < 31 => new(HaemorrhageClass.II, HaemorrhageClass.III),
        < 40 => ClassRange.Only(HaemorrhageClass.III),
        40 => threeFour,
        _ => four,
    };

    /// <summary>Base deficit in mEq/L, at most 0: to −2 I, to −6 II, to −10 III, then IV; the worse side has the edge.</summary>
    /// <returns>All classes for a positive value: the table does not print one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a number.</exception>
    public static ClassRange ByBaseDeficit(double milliequivalentsPerLitre) => milliequivalentsPerLitre switch
    {
        double.NaN => throw new ArgumentOutOfRangeException(
            nameof(milliequivalentsPerLitre), milliequivalentsPerLitre, "A base deficit is a number."),
        > 0 => ClassRange.Any,
        > -2 => ClassRange.Only(HaemorrhageClass.I),
        -2 => oneTwo,
        > -6 => ClassRange.Only(HaemorrhageClass.II),
        -6 => new(HaemorrhageClass.II, HaemorrhageClass.III),
        > -10 => ClassRange.Only(HaemorrhageClass.III),
        _ => four,
    };

    public static ClassRange ByHeartRate(SignChange change) => change switch
    {
        SignChange.Unchanged => oneTwo,
        SignChange.Up => twoToFour,
        SignChange.FarUp => four,
        _ => ClassRange.Any,
    };

    public static ClassRange ByPressure(SignChange change) => change switch
    {
        SignChange.Unchanged => oneToThree,
        SignChange.Down or SignChange.FarDown => threeFour,
        _ => ClassRange.Any,
    };

    public static ClassRange ByPulsePressure(SignChange change) => change switch
    {
        SignChange.Unchanged => ClassRange.Only(HaemorrhageClass.I),
        SignChange.Down or SignChange.FarDown => twoToFour,
        _ => ClassRange.Any,
    };

    public static ClassRange ByRespiratoryRate(SignChange change) => change switch
    {
        SignChange.Unchanged => oneToThree,
        SignChange.Up or SignChange.FarUp => threeFour,
        _ => ClassRange.Any,
    };

    public static ClassRange ByUrine(SignChange change) => change switch
    {
        SignChange.Unchanged => oneTwo,
        SignChange.Down => ClassRange.Only(HaemorrhageClass.III),
        SignChange.FarDown => four,
        _ => ClassRange.Any,
    };

    public static ClassRange ByGlasgow(SignChange change) => change switch
    {
        SignChange.Unchanged => oneTwo,
        SignChange.Down or SignChange.FarDown => threeFour,
        _ => ClassRange.Any,
    };
}
