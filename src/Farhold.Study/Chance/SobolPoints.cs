using System.Collections.Immutable;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Chance;

/// <summary>Points of Sobol's sequence in up to 30 dimensions, plain or scrambled.</summary>
/// <remarks>
/// Order by Gray code, as Antonov and Saleev 1979. Primitive polynomials and first direction numbers of dimensions 2 to 30 are those of
/// S. Joe and F. Y. Kuo, "Constructing Sobol sequences with better two-dimensional projections", SIAM J. Sci. Comput. 30 (2008) 2635,
/// file new-joe-kuo-6.21201 (columns s, a, m_i), taken over from a public copy of that file's first lines. The scramble is Owen's,
/// nested and uniform, by hashing: each digit is turned over or not by a hash of the digits above it, so every block of 2^m points keeps
/// its balance.
/// </remarks>
public sealed class SobolPoints
{
    public const int MostDimensions = 30;
    private const int Bits = 32;

    private static readonly ImmutableArray<(int Degree, uint Inner, uint[] First)> Table =
    [
        (1, 0, [1]),
        (2, 1, [1, 3]),
        (3, 1, [1, 3, 1]),
        (3, 2, [1, 1, 1]),
        (4, 1, [1, 1, 3, 3]),
        (4, 4, [1, 3, 5, 13]),
        (5, 2, [1, 1, 5, 5, 17]),
        (5, 4, [1, 1, 5, 5, 5]),
        (5, 7, [1, 1, 7, 11, 19]),
        (5, 11, [1, 1, 5, 1, 1]),
        (5, 13, [1, 1, 1, 3, 11]),
        (5, 14, [1, 3, 5, 5, 31]),
        (6, 1, [1, 3, 3, 9, 7, 49]),
        (6, 13, [1, 1, 1, 15, 21, 21]),
        (6, 16, [1, 3, 1, 13, 27, 49]),
        (6, 19, [1, 1, 1, 15, 7, 5]),
        (6, 22, [1, 3, 1, 15, 13, 25]),
        (6, 25, [1, 1, 5, 5, 19, 61]),
        (7, 1, [1, 3, 7, 11, 23, 15, 103]),
        (7, 4, [1, 3, 7, 13, 13, 15, 69]),
        (7, 7, [1, 1, 3, 13, 7, 35, 63]),
        (7, 8, [1, 3, 5, 9, 1, 25, 53]),
        (7, 14, [1, 3, 1, 13, 9, 35, 107]),
        (7, 19, [1, 3, 1, 5, 27, 61, 31]),
        (7, 21, [1, 1, 5, 11, 19, 41, 61]),
        (7, 28, [1, 3, 5, 3, 3, 13, 69]),
        (7, 31, [1, 1, 7, 13, 1, 19, 1]),
        (7, 32, [1, 3, 7, 5, 13, 19, 59]),
        (7, 37, [1, 1, 3, 9, 9, 25, 99]),
    ];

    private readonly uint[][] directions;
    private readonly ulong[]? scramble;

    /// <param name="scramble">Whose hashes scramble; null for the plain points, whose first is the origin.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 dimension, or more than 30.</exception>
    public SobolPoints(int dimensions, Rng? scramble = null)
    {
        if (dimensions is < 1 or > MostDimensions)
            throw new ArgumentOutOfRangeException(nameof(dimensions), dimensions, $"1 to {MostDimensions}.");
        directions = [.. Enumerable.Range(0, dimensions).Select(Directions)];
        this.scramble = scramble is { } rng ? [.. Enumerable.Range(0, dimensions).Select(d => rng.Split((ulong)d).Bits(0))] : null;
    }

    public int Dimensions => directions.Length;

    /// <summary>One point; scrambled ones lie within 0 and 1 and never on either.</summary>
    /// <param name="number">From 0.</param>
    public double[] Point(uint number)
    {
        var point = new double[Dimensions];
        var gray = number ^ (number >> 1);
        for (var d = 0; d < Dimensions; d++)
        {
            var x = 0u;
            for (var bit = 0; bit < Bits; bit++)
                if (((gray >> bit) & 1) != 0)
                    x ^= directions[d][bit];
            point[d] = scramble is null ? x * Unit : (Scrambled(x, scramble[d]) + 0.5) * Unit;
        }

        return point;
    }

    private const double Unit = 1.0 / (1UL << Bits);

    /// <summary>Each digit is turned by a hash of its place and of the digits above it as they were.</summary>
    private static uint Scrambled(uint x, ulong key)
    {
        var turned = x;
        for (var place = 0; place < Bits; place++)
        {
            var above = place == 0 ? 0 : x >> (Bits - place);
            var node = unchecked(((ulong)place << 32) | above);
            if ((new Rng(key).Split(node).Bits(0) & 1) != 0)
                turned ^= 1u << (Bits - 1 - place);
        }

        return turned;
    }

    private static uint[] Directions(int dimension)
    {
        var v = new uint[Bits];
        if (dimension == 0)
        {
            for (var i = 0; i < Bits; i++)
                v[i] = 1u << (Bits - 1 - i);
            return v;
        }

        var (s, a, m) = Table[dimension - 1];
        for (var i = 0; i < Bits; i++)
        {
            if (i < s)
            {
                v[i] = m[i] << (Bits - 1 - i);
                continue;
            }

            v[i] = v[i - s] ^ (v[i - s] >> s);
            for (var k = 1; k < s; k++)
                if (((a >> (s - 1 - k)) & 1) != 0)
                    v[i] ^= v[i - k];
        }

        return v;
    }
}
