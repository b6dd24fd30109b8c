using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Sync;

/// <summary>What other sides have said they hold and is not held here: a doubt about the record, for the judge.</summary>
public static class KnownMissing
{
    /// <param name="others">The last head of each other side; an old one is as good, since lines are never taken back.</param>
    public static KnownElsewhere Here(LineSet mine, IEnumerable<Head> others)
    {
        var last = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        var unnumbered = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        foreach (var other in others)
        {
            foreach (var (device, prefix) in other.Have.Have)
                last[device] = Math.Max(last.GetValueOrDefault(device), prefix.Length);
            foreach (var (device, number) in other.Known)
                last[device] = Math.Max(last.GetValueOrDefault(device), number);
            foreach (var hash in other.Have.Odd.Concat(other.Hashes.Values.SelectMany(h => h)).Where(h => !mine.Holds(h)))
                unnumbered.Add(Hex(hash));
            // Where all that it lists of a device is held here, its other prefix hides nothing.
            foreach (var device in mine.Disputed(other.Have).Where(d => !other.Hashes.TryGetValue(d, out var all) || !all.All(mine.Holds)))
                unnumbered.Add($"{device} {Hex(other.Have[device].Running)}");
        }

        return new(last.ToImmutable(), unnumbered.ToImmutable());
    }

    /// <summary>By device, the number up to which lines exist that others told of and that are not all here: for <see cref="Head.Known"/>.</summary>
    public static ImmutableSortedDictionary<string, int> ToTell(LineSet mine, IEnumerable<Head> others) =>
        Here(mine, others)
            .Last.Where(d => d.Value > mine.Vector[d.Key].Length)
            .ToImmutableSortedDictionary(d => d.Key, d => d.Value, StringComparer.Ordinal);

    /// <summary>Whether anything that another side said it holds is not here.</summary>
    public static bool IsAny(LineSet mine, Head other) =>
        Here(mine, [other]) is var known && (!known.Unnumbered.IsEmpty || known.Last.Any(d => d.Value > mine.Vector[d.Key].Length));

    private static string Hex(ulong hash) => hash.ToString("x16", CultureInfo.InvariantCulture);
}
