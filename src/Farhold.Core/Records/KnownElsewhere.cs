using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>What is known to exist of a record on other phones or at a hub, whether it is here as well or not.</summary>
/// <param name="Last">By device, the number up to which its entries exist.</param>
/// <param name="Unnumbered">
/// Names, each of at least one line that is not here and whose number is not known; another name for other lines.
/// </param>
public sealed record KnownElsewhere(ImmutableSortedDictionary<string, int> Last, ImmutableSortedSet<string> Unnumbered)
{
    public static readonly KnownElsewhere Nothing = new(
        ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal),
        ImmutableSortedSet.Create<string>(StringComparer.Ordinal)
    );

    public bool IsNothing => Last.IsEmpty && Unnumbered.IsEmpty;
}
