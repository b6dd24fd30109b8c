using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Farhold.WayOut.Chance;

/// <summary>
/// Normal scores from random bits, read from tables good to 1e-8: even cells in the middle, cells that halve with the share in the tails.
/// </summary>
internal static class NormalScores
{
    private const int CellBits = 10;
    private const int Cells = 1 << CellBits;

    /// <summary>Nearer the ends than a 32nd the quantile bends too much for even cells.</summary>
    private const int TailCells = Cells / 32;

    private const int FractionBits = Rng.UniformBits - CellBits;

    /// <summary>Cells of each halving of a tail, and halvings: a share below the last is worked out (two in a million).</summary>
    private const int TailCellBits = 6,
        FirstHalving = 5,
        LastHalving = 20;

    private const int TailFractionBits = 40;

    /// <summary>The four coefficients of each cell's cubic (Hermite, from values and slopes at both ends); the tails stay empty.</summary>
    private static readonly double[] Middle = MiddleTable();

    private static readonly double[] Lower = LowerTable();

    /// <summary>The score at the share of the law that <see cref="Rng.Uniform"/> makes of the same bits.</summary>
    public static double Of(ulong bits)
    {
        Span<ulong> one = [bits];
        Span<double> score = [0];
        Look(one, score);
        return score[0];
    }

    /// <summary>
    /// The scores of numbers <paramref name="stride"/> places apart, from the first of the generator on; each as <see cref="Of"/> has it.
    /// </summary>
    /// <param name="bits">As long as the scores; overwritten.</param>
    public static void Fill(Rng rng, ulong stride, Span<ulong> bits, Span<double> scores)
    {
        rng.Fill(stride, bits);
        Look(bits, scores);
    }

    /// <summary>Scores looked up before the tails among them are seen to: groups of four, so many to a chunk.</summary>
    private const int Chunk = 64;

    // No call but in the tails, and nothing checked that can't be: this is the inner loop of every forecast.
    private static void Look(ReadOnlySpan<ulong> bits, Span<double> scores)
    {
        var k = 0;
        if (Avx2.IsSupported)
            for (; k <= scores.Length - Chunk; k += Chunk)
                LookFour(bits.Slice(k, Chunk), scores.Slice(k, Chunk));
        var c = Middle;
        unchecked
        {
            for (; k < scores.Length && k < bits.Length; k++)
            {
                var b = bits[k];
                var cell = (int)(b >> (64 - CellBits));
                if ((uint)(cell - TailCells) >= Cells - (2 * TailCells))
                {
                    scores[k] = Tail(b);
                    continue;
                }

                var t = ((long)((b << CellBits) >> (64 - FractionBits)) + 0.5) * (1.0 / (1UL << FractionBits));
                var at = 4 * cell;
                scores[k] = c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
            }
        }
    }

    /// <summary>The same sums in the same order on four numbers at once; the tails come after the rest.</summary>
    private static void LookFour(ReadOnlySpan<ulong> bits, Span<double> scores)
    {
        Span<int> where = stackalloc int[Chunk / 4];
        var tails = 0;
        ref var from = ref MemoryMarshal.GetReference(bits);
        ref var to = ref MemoryMarshal.GetReference(scores);
        ref var cells = ref MemoryMarshal.GetArrayDataReference(Middle);
        // A share in the bits of a double between 1 and 2; less 1, and half a last place more, it is exact.
        var (one, keep) = (Vector256.Create(0x3FF0000000000000UL), Vector256.Create(~((1UL << (52 - FractionBits)) - 1)));
        var less = Vector256.Create(1 - (0.5 / (1UL << FractionBits)));
        var (first, middle) = (Vector256.Create((ulong)TailCells), Vector256.Create((ulong)(Cells - (2 * TailCells))));
        for (var k = 0; k <= bits.Length - 4; k += 4)
        {
            var b = Vector256.LoadUnsafe(ref from, (nuint)k);
            var cell = b >>> (64 - CellBits);
            var t = (((b << CellBits >>> 12) & keep) | one).AsDouble() - less;
            var (r0, r1) = (Row(ref cells, ref from, k), Row(ref cells, ref from, k + 1));
            var (r2, r3) = (Row(ref cells, ref from, k + 2), Row(ref cells, ref from, k + 3));
            var (u0, u1) = (Avx.UnpackLow(r0, r1), Avx.UnpackHigh(r0, r1));
            var (u2, u3) = (Avx.UnpackLow(r2, r3), Avx.UnpackHigh(r2, r3));
            var (c0, c1) = (Avx.Permute2x128(u0, u2, 0x20), Avx.Permute2x128(u1, u3, 0x20));
            var (c2, c3) = (Avx.Permute2x128(u0, u2, 0x31), Avx.Permute2x128(u1, u3, 0x31));
            (c0 + (t * (c1 + (t * (c2 + (t * c3)))))).StoreUnsafe(ref to, (nuint)k);
            // Signed is enough: cells are few, and one below the first is far below zero.
            var outer = ~Vector256.LessThan((cell - first).AsInt64() & Vector256.Create(long.MaxValue), middle.AsInt64());
            var mask = (int)outer.ExtractMostSignificantBits();
            where[tails] = (k << 4) | mask;
            tails += mask != 0 ? 1 : 0;
        }

        for (var n = 0; n < tails; n++)
        for (var mask = where[n] & 15; mask != 0; mask &= mask - 1)
        {
            var k = (where[n] >> 4) + BitOperations.TrailingZeroCount(mask);
            scores[k] = Tail(bits[k]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Row(ref double cells, ref ulong bits, int k) =>
        Vector256.LoadUnsafe(ref cells, 4 * (nuint)(Unsafe.Add(ref bits, k) >> (64 - CellBits)));

    /// <summary>The upper tail is the mirror of the lower, since all bits turned make the share that is left of 1.</summary>
    private static double Tail(ulong bits)
    {
        unchecked
        {
            var upper = (long)bits >> 63;
            var lower = LowerTail(bits ^ (ulong)upper);
            return BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(lower) ^ (upper & long.MinValue));
        }
    }

    private static double LowerTail(ulong bits)
    {
        unchecked
        {
            var halving = BitOperations.LeadingZeroCount(bits);
            if (halving >= LastHalving)
                return NormalLaw.Quantile(Rng.Uniformly(bits));
            var rest = bits << (halving + 1);
            var t = ((long)((rest << TailCellBits) >> (64 - TailFractionBits)) + 0.5) * (1.0 / (1UL << TailFractionBits));
            var at = 4 * (((halving - FirstHalving) << TailCellBits) + (int)(rest >> (64 - TailCellBits)));
            var c = Lower;
            return c[at] + (t * (c[at + 1] + (t * (c[at + 2] + (t * c[at + 3])))));
        }
    }

    private static double[] MiddleTable()
    {
        var table = new double[4 * Cells];
        for (var i = TailCells; i < Cells - TailCells; i++)
            Cubic(table, i, (double)i / Cells, 1.0 / Cells);
        return table;
    }

    private static double[] LowerTable()
    {
        const int cells = 1 << TailCellBits;
        var table = new double[4 * cells * (LastHalving - FirstHalving)];
        for (var halving = FirstHalving; halving < LastHalving; halving++)
        {
            var least = Math.ScaleB(1, -halving - 1);
            for (var i = 0; i < cells; i++)
                Cubic(table, ((halving - FirstHalving) * cells) + i, least + (least * i / cells), least / cells);
        }

        return table;
    }

    private static void Cubic(double[] table, int cell, double from, double wide)
    {
        var (y0, y1) = (NormalLaw.Quantile(from), NormalLaw.Quantile(from + wide));
        var (m0, m1) = (wide / NormalLaw.Density(y0), wide / NormalLaw.Density(y1));
        var rise = y1 - y0;
        (table[4 * cell], table[(4 * cell) + 1]) = (y0, m0);
        (table[(4 * cell) + 2], table[(4 * cell) + 3]) = ((3 * rise) - (2 * m0) - m1, m0 + m1 - (2 * rise));
    }
}
