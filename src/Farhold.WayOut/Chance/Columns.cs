using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Farhold.WayOut.Chance;

/// <summary>Sums on many numbers at once. A number comes out the same wherever it stands and however many there are.</summary>
/// <remarks>
/// The exponential is the framework's own for four numbers, good to a unit in the last place; where a machine has no such width, the one
/// for one number.
/// </remarks>
internal static class Columns
{
    public static double Exp(double x) => Vector256.IsHardwareAccelerated ? Vector256.Exp(Vector256.Create(x)).ToScalar() : Math.Exp(x);

    /// <summary>Each x becomes base + e^(offset + factor x).</summary>
    public static void Exp(Span<double> values, double offset, double factor, double plus)
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            var (o, f, p) = (Vector256.Create(offset), Vector256.Create(factor), Vector256.Create(plus));
            ref var first = ref MemoryMarshal.GetReference(values);
            for (; i <= values.Length - 4; i += 4)
                (p + Vector256.Exp(o + (f * Vector256.LoadUnsafe(ref first, (nuint)i)))).StoreUnsafe(ref first, (nuint)i);
        }

        for (; i < values.Length; i++)
            values[i] = plus + Exp(offset + (factor * values[i]));
    }

    /// <summary>Each grows by what a score comes to once it is mixed and raised, in one pass.</summary>
    public static void AddExp(
        Span<double> to,
        ReadOnlySpan<double> scores,
        double own,
        ReadOnlySpan<double> other,
        double shared,
        double offset,
        double factor,
        double plus
    )
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            var (s, w) = (Vector256.Create(shared), Vector256.Create(own));
            var (o, f, p) = (Vector256.Create(offset), Vector256.Create(factor), Vector256.Create(plus));
            ref var first = ref MemoryMarshal.GetReference(to);
            ref var mine = ref MemoryMarshal.GetReference(scores[..to.Length]);
            ref var others = ref MemoryMarshal.GetReference(other[..to.Length]);
            for (; i <= to.Length - 4; i += 4)
            {
                var z = (s * Vector256.LoadUnsafe(ref others, (nuint)i)) + (w * Vector256.LoadUnsafe(ref mine, (nuint)i));
                (Vector256.LoadUnsafe(ref first, (nuint)i) + (p + Vector256.Exp(o + (f * z)))).StoreUnsafe(ref first, (nuint)i);
            }
        }

        for (; i < to.Length; i++)
            to[i] += plus + Exp(offset + (factor * ((shared * other[i]) + (own * scores[i]))));
    }

    /// <summary>Each becomes factor a + factor b.</summary>
    public static void Mix(Span<double> into, double own, ReadOnlySpan<double> other, double shared)
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            var (s, o) = (Vector256.Create(shared), Vector256.Create(own));
            ref var first = ref MemoryMarshal.GetReference(into);
            ref var others = ref MemoryMarshal.GetReference(other[..into.Length]);
            for (; i <= into.Length - 4; i += 4)
                ((s * Vector256.LoadUnsafe(ref others, (nuint)i)) + (o * Vector256.LoadUnsafe(ref first, (nuint)i))).StoreUnsafe(
                    ref first,
                    (nuint)i
                );
        }

        for (; i < into.Length; i++)
            into[i] = (shared * other[i]) + (own * into[i]);
    }

    public static void Add(Span<double> to, ReadOnlySpan<double> more)
    {
        var i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            ref var first = ref MemoryMarshal.GetReference(to);
            ref var others = ref MemoryMarshal.GetReference(more[..to.Length]);
            for (; i <= to.Length - 4; i += 4)
                (Vector256.LoadUnsafe(ref first, (nuint)i) + Vector256.LoadUnsafe(ref others, (nuint)i)).StoreUnsafe(ref first, (nuint)i);
        }

        for (; i < to.Length; i++)
            to[i] += more[i];
    }
}
