using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Class of haemorrhage, best to worst. <c>default</c> is no class.</summary>
public enum HaemorrhageClass
{
    I = 1,
    II = 2,
    III = 3,
    IV = 4,
}

/// <summary>The classes a sign allows. Where a single class must be acted on, the worst wins.</summary>
/// <remarks><c>default</c> names no class; make one by the constructor.</remarks>
public readonly record struct ClassRange
{
    /// <exception cref="ArgumentException">
    /// An end is not a class, or <paramref name="worst"/> is better than <paramref name="least"/>.
    /// </exception>
    public ClassRange(HaemorrhageClass least, HaemorrhageClass worst)
    {
        if (least < HaemorrhageClass.I || worst > HaemorrhageClass.IV || worst < least)
            throw new ArgumentException($"A range of classes is from I to IV, better first; got {least}, {worst}.", nameof(worst));
        Least = least;
        Worst = worst;
    }

    /// <summary>All four: the sign says nothing.</summary>
    public static ClassRange Any { get; } = new(HaemorrhageClass.I, HaemorrhageClass.IV);

    public HaemorrhageClass Least { get; }

    public HaemorrhageClass Worst { get; }

    public static ClassRange Only(HaemorrhageClass one) => new(one, one);

    public bool Includes(HaemorrhageClass one) => Least <= one && one <= Worst;

    /// <summary>
    /// From the least class any sign allows to the worst any allows; all four for no signs. Signs that disagree
    /// widen it: they never cancel out.
    /// </summary>
    public static ClassRange Span(ImmutableArray<ClassRange> bySign) =>
        bySign.IsDefaultOrEmpty ? Any : new(bySign.Min(s => s.Least), bySign.Max(s => s.Worst));
}
