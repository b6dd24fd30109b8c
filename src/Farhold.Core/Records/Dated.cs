using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>What counts of an entry once amendments are applied: what was done or seen, by whom, and when.</summary>
/// <param name="When">Not later than the entry was written; wider than written where the device's clock ran back.</param>
public sealed record Dated(EntryId Id, Happened When, NodaTime.Instant Recorded, string By, Payload What)
{
    public T As<T>()
        where T : Payload => (T)What;
}

/// <summary>By latest possible time, then earliest, then id: the same order whatever order the entries came in.</summary>
internal sealed class DatedOrder : IComparer<Dated>
{
    public static readonly DatedOrder Instance = new();

    /// <summary>A list in this order with one more entry at its place.</summary>
    public static ImmutableArray<Dated> Insert(ImmutableArray<Dated> list, Dated entry)
    {
        var at = list.BinarySearch(entry, Instance);
        return list.Insert(at < 0 ? ~at : at, entry);
    }

    public int Compare(Dated? x, Dated? y)
    {
        var order = x!.When.Latest.CompareTo(y!.When.Latest);
        if (order == 0)
            order = x.When.Earliest.CompareTo(y.When.Earliest);
        return order != 0 ? order : x.Id.CompareTo(y.Id);
    }
}
