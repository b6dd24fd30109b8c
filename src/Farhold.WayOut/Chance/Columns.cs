using System.Runtime.Intrinsics;

namespace Farhold.WayOut;

/// <summary>Sums on many numbers at once. A number comes out the same wherever it stands and however many there are.</summary>
/// <remarks>The exponential is the framework's own for four numbers, good to a unit in the last place; where a machine has no such width, the one for one number.</remarks>
internal static class Columns
{
    private static readonly bool wide = Vector256.IsHardwareAccelerated;

    public static double Exp(double x) => wide ? Vector256.Exp(Vector256.Create(x)).ToScalar() : Math.Exp(x);

    /// <summary>Each x becomes base + e^(offset + factor x).</summary>
    public static void Exp(Span<double> values, double offset, double factor, double plus)
    {
        var i = 0;
        if (wide)
            for (; i <= values.Length - 4; i += 4)
                (Vector256.Create(plus) + Vector256.Exp(Vector256.Create(offset) + (Vector256.Create(factor) * Vector256.Create<double>(values.Slice(i, 4)))))
                    .CopyTo(values.Slice(i, 4));
        for (; i < values.Length; i++)
            values[i] = plus + Exp(offset + (factor * values[i]));
    }

    /// <summary>Each becomes factor a + factor b.</summary>
    public static void Mix(Span<double> into, double own, ReadOnlySpan<double> other, double shared)
    {
        var i = 0;
        if (wide)
            for (; i <= into.Length - 4; i += 4)
                ((Vector256.Create(shared) * Vector256.Create(other.Slice(i, 4))) + (Vector256.Create(own) * Vector256.Create<double>(into.Slice(i, 4))))
                    .CopyTo(into.Slice(i, 4));
        for (; i < into.Length; i++)
            into[i] = (shared * other[i]) + (own * into[i]);
    }

    public static void Add(Span<double> to, ReadOnlySpan<double> more)
    {
        var i = 0;
        if (wide)
            for (; i <= to.Length - 4; i += 4)
                (Vector256.Create<double>(to.Slice(i, 4)) + Vector256.Create(more.Slice(i, 4))).CopyTo(to.Slice(i, 4));
        for (; i < to.Length; i++)
            to[i] += more[i];
    }
}
