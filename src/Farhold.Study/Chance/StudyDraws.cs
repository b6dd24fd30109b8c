using Farhold.WayOut.Chance;

namespace Farhold.Study.Chance;

/// <summary>Chance by name: a draw depends on seed, set, casualty and its own name, never on what was drawn before it.</summary>
/// <remarks>
/// So two policies meet the same casualty with the same luck, and a third changes nothing for the other two. SplitMix64 as
/// <see cref="Rng"/> has it; a name counts by its FNV-1a hash.
/// </remarks>
/// <param name="set">0 for the casualties that policies are compared on; others for draws of the figures.</param>
public sealed class StudyDraws(ulong seed, ulong set = 0)
{
    private readonly Rng all = new Rng(seed).Split(set);

    public Rng Casualty(long number) => all.Split((ulong)number);

    /// <summary>FNV-1a with 64 bits (Fowler, Noll, Vo) of a name in ASCII, such as <c>wound:w1/attempt:1/hold</c>.</summary>
    public static ulong Key(string name)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var c in name)
            hash = unchecked((hash ^ c) * 0x100000001B3);
        return hash;
    }
}

internal static class NamedUniform
{
    /// <summary>Between 0 and 1, never either.</summary>
    /// <param name="key"><see cref="StudyDraws.Key"/> of a name.</param>
    public static double Draw(this Rng casualty, ulong key) => casualty.Split(key).Uniform(0);
}
