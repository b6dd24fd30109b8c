using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Farhold.WayOut.Chance;

/// <summary>A seeded generator of 64 random bits that can be asked for any place in its stream.</summary>
/// <remarks>
/// SplitMix64 (Steele, Lea, Flood 2014, OOPSLA; fixed increment of splitmix64.c by Vigna 2015, public domain). Its state is the seed
/// plus a multiple of a constant, so the n-th number needs none before it: trials run in any order, or side by side, and draw the
/// same. Equality is by state; it prints as <c>splitmix64:seed:position</c> and reads back. <c>default</c> is seed 0 at its start.
/// </remarks>
public readonly record struct Rng(ulong Seed, ulong Position = 0)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    /// <summary>The number <paramref name="ahead"/> places on, from 0.</summary>
    public ulong Bits(ulong ahead) => unchecked(Mix(Seed + ((Position + ahead + 1) * Golden)));

    /// <summary>How many bits make a share: with the half added they still fit a double exactly, so none rounds up to 1.</summary>
    internal const int UniformBits = 52;

    /// <summary>Between 0 and 1, never either.</summary>
    public double Uniform(ulong ahead) => Uniformly(Bits(ahead));

    internal static double Uniformly(ulong bits) => ((long)(bits >> (64 - UniformBits)) + 0.5) * (1.0 / (1UL << UniformBits));

    /// <summary>The bits of as many places, <paramref name="stride"/> apart from here on.</summary>
    internal void Fill(ulong stride, Span<ulong> bits)
    {
        unchecked
        {
            var (state, step, i) = (Seed + ((Position + 1) * Golden), stride * Golden, 0);
            if (Vector256.IsHardwareAccelerated)
            {
                var states = Vector256.Create(state, state + step, state + (2 * step), state + (3 * step));
                ref var first = ref MemoryMarshal.GetReference(bits);
                for (; i <= bits.Length - 4; i += 4)
                {
                    Mix(states).StoreUnsafe(ref first, (nuint)i);
                    states += Vector256.Create(4 * step);
                }

                state += (ulong)i * step;
            }

            for (; i < bits.Length; i++)
            {
                bits[i] = Mix(state);
                state += step;
            }
        }
    }

    public Rng Skip(ulong places) => unchecked(this with { Position = Position + places });

    /// <summary>A generator of its own for a named part, unrelated to this one's later numbers.</summary>
    public Rng Split(ulong part) => unchecked(new(Mix(Bits(part) ^ 0xD1B54A32D192ED03)));

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"splitmix64:{Seed:x16}:{Position}");

    public static Rng? Parse(string text)
    {
        var parts = text.Split(':');
        return
            parts is ["splitmix64", { Length: 16 } seed, var position]
            && ulong.TryParse(seed, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var s)
            && ulong.TryParse(position, NumberStyles.None, CultureInfo.InvariantCulture, out var p)
            ? new Rng(s, p)
            : null;
    }

    private static Vector256<ulong> Mix(Vector256<ulong> z)
    {
        z = (z ^ (z >>> 30)) * Vector256.Create(0xBF58476D1CE4E5B9);
        z = (z ^ (z >>> 27)) * Vector256.Create(0x94D049BB133111EB);
        return z ^ (z >>> 31);
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
