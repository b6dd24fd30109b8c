using NodaTime;

namespace Farhold.Records;

/// <summary>
/// Devices that wrote later than what they wrote came in here: one of the two clocks is wrong, and nobody has said which.
/// </summary>
/// <remarks>
/// All that such a device wrote may be older than it says by as much as its clock is ahead, and is no later than it came in
/// (docs/decisions/which-clock.md). Nothing here moves the time that is judged at.
/// </remarks>
internal sealed class ClocksAhead
{
    /// <summary>When entries that say a later time came in.</summary>
    private readonly Dictionary<EntryId, (Instant Recorded, Instant Received)> early = [];

    public bool IsEmpty => early.Count == 0;

    /// <returns>Whether it changes how entries of the device are dated.</returns>
    public bool Add(Entry entry, Instant received)
    {
        if (entry.Recorded - received <= RecordFold.ClockTolerance)
            return false;
        early[entry.Id] = (entry.Recorded, early.TryGetValue(entry.Id, out var before) ? Instant.Min(before.Received, received) : received);
        return true;
    }

    /// <summary>By device, by how much what it wrote may be older than it says; what was withdrawn shows nothing of its clock.</summary>
    public SortedDictionary<string, Duration> Standing(HashSet<EntryId> withdrawn)
    {
        var ahead = new SortedDictionary<string, Duration>(StringComparer.Ordinal);
        foreach (var (id, (recorded, received)) in early)
            if (!withdrawn.Contains(id))
                ahead[id.Device] = Duration.Max(ahead.GetValueOrDefault(id.Device), recorded - received);
        return ahead;
    }

    /// <summary>When an entry was written at the latest.</summary>
    public Instant Written(Entry entry) => early.TryGetValue(entry.Id, out var known) ? known.Received : entry.Recorded;
}
