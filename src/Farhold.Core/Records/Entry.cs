using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>One line of the record. Never changed: a mistake is amended or withdrawn by a later entry.</summary>
/// <param name="Happened">When what it tells of happened, as written.</param>
/// <param name="Recorded">The device's clock when it was written.</param>
/// <param name="By">Who did or saw it.</param>
/// <param name="Json">The line as it stands on disk, with every field, known or not; the writer repeats it.</param>
public sealed record Entry(EntryId Id, Happened Happened, Instant Recorded, string By, Payload Payload, JsonText Json)
{
    /// <summary>The line that the same device wrote before it; null where the entry has no link.</summary>
    public LineHash? Previous { get; init; }

    /// <summary>What it says that this version can't make anything of, in the order of the line.</summary>
    public ImmutableArray<NotUnderstood> NotUnderstood { get; init; } = [];
}
