using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Farhold.Physiology.Arithmetic;

/// <summary>Eight numbers, one for each of eight casualties. Each operation does to each what it does to a <see cref="double"/>.</summary>
internal readonly struct Lanes(Vector512<double> values)
{
    public const int Count = 8;

    public readonly Vector512<double> Values = values;

    public double this[int lane] => Values[lane];

    public static implicit operator Lanes(double same) => new(Vector512.Create(same));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator +(Lanes a, Lanes b) => new(a.Values + b.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator -(Lanes a, Lanes b) => new(a.Values - b.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator -(Lanes a) => new(-a.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator *(Lanes a, Lanes b) => new(a.Values * b.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes operator /(Lanes a, Lanes b) => new(a.Values / b.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneMask operator <(Lanes a, Lanes b) => new(Vector512.LessThan(a.Values, b.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneMask operator >(Lanes a, Lanes b) => new(Vector512.GreaterThan(a.Values, b.Values));
}

/// <summary>Which of eight.</summary>
internal readonly struct LaneMask(Vector512<double> chosen)
{
    public readonly Vector512<double> Chosen = chosen;
}

/// <summary><see cref="Scalar"/> for <see cref="Lanes"/>, with the same bits.</summary>
internal static class LaneMath
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Positive(Lanes x) => Select(x > 0, x, 0);

    // Not the vectors' own least and greatest, which treat zeros of either sign otherwise.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Min(Lanes a, Lanes b) => Select(a < b, a, b);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Max(Lanes a, Lanes b) => Select(a > b, a, b);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Clamp(Lanes x, Lanes low, Lanes high) => Min(Max(x, low), high);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Select(LaneMask chosen, Lanes a, Lanes b) => new(Vector512.ConditionalSelect(chosen.Chosen, a.Values, b.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(LaneMask chosen) => Vector512.ExtractMostSignificantBits(chosen.Chosen) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Sqrt(Lanes x) => new(Vector512.Sqrt(x.Values));

    /// <summary>As <see cref="ExactMath.Exp"/>, line by line.</summary>
    public static Lanes Exp(Lanes x)
    {
        x = Select(x < ExactMath.ExpFrom, ExactMath.ExpFrom, x);
        x = Select(x > ExactMath.ExpTo, ExactMath.ExpTo, x);
        var k = Floor((x * ExactMath.PerLn2) + 0.5);
        var high = x - (k * ExactMath.Ln2High);
        var low = k * ExactMath.Ln2Low;
        var r = high - low;
        var t = r * r;
        var c = r - (t * (ExactMath.E1 + (t * (ExactMath.E2 + (t * (ExactMath.E3 + (t * (ExactMath.E4 + (t * ExactMath.E5)))))))));
        var y = 1 - (low - (r * c / (2 - c)) - high);
        var half = Floor(k * 0.5);
        return y * TwoTo(half) * TwoTo(k - half);
    }

    /// <summary>As <see cref="ExactMath.Log"/>, of normal numbers above 0 only.</summary>
    public static Lanes Log(Lanes x)
    {
        var above = x.Values.AsInt64() - Vector512.Create(ExactMath.SqrtHalfBits);
        var k = new Lanes(Vector512.ConvertToDouble(Vector512.ShiftRightArithmetic(above, 52)));
        var mantissa = above & Vector512.Create(0x000FFFFFFFFFFFFF);
        var f = new Lanes((mantissa + Vector512.Create(ExactMath.SqrtHalfBits)).AsDouble()) - 1;
        var s = f / (2 + f);
        var z = s * s;
        var w = z * z;
        var odd = z * (ExactMath.L1 + (w * (ExactMath.L3 + (w * (ExactMath.L5 + (w * ExactMath.L7))))));
        var even = w * (ExactMath.L2 + (w * (ExactMath.L4 + (w * ExactMath.L6))));
        var half = 0.5 * f * f;
        return (k * ExactMath.Ln2High) - (half - ((s * (half + (odd + even))) + (k * ExactMath.Ln2Low)) - f);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Floor(Lanes x) => new(Vector512.Floor(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes TwoTo(Lanes k) => new(((k.Values + Vector512.Create(ExactMath.ExponentBias)).AsInt64() << 52).AsDouble());
}
