using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>
/// By what a record is known as that of one casualty: the identities it was opened with, and the first line of each device.
/// </summary>
public sealed class RecordIdentity
{
    private readonly ImmutableHashSet<string> given;
    private readonly ImmutableHashSet<LineHash> firstLines;

    private RecordIdentity(ImmutableHashSet<string> given, ImmutableHashSet<LineHash> firstLines) =>
        (this.given, this.firstLines) = (given, firstLines);

    public static RecordIdentity Of(IEnumerable<Entry> entries)
    {
        var given = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var first = ImmutableHashSet.CreateBuilder<LineHash>();
        foreach (var entry in entries)
        {
            if (entry.Payload is Payload.CasualtyOpened { Casualty: { } casualty })
                given.Add(casualty);
            if (entry.Id.Number == 1)
                first.Add(LineHash.Of(entry.Json));
        }

        return new(given.ToImmutable(), first.ToImmutable());
    }

    /// <summary>Whether another record is surely of the same casualty.</summary>
    /// <param name="sharesLine">Some line of the two is the same.</param>
    /// <remarks>
    /// A shared line proves nothing where the other brings an identity along that is not known here: it may hold two people.
    /// </remarks>
    public bool IsOf(RecordIdentity other, bool sharesLine) =>
        (sharesLine || given.Overlaps(other.given) || firstLines.Overlaps(other.firstLines))
        && (given.IsEmpty || other.given.IsSubsetOf(given));
}
