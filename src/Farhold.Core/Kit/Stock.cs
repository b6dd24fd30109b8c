using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Kit;

/// <summary>What is left of an item.</summary>
/// <param name="Left">Pieces; null: never counted, so unknown, whatever was used.</param>
/// <param name="Counted">When it was last counted, at the earliest.</param>
public sealed record Stock(KitItem Item, Between? Left, Instant? Counted)
{
    /// <summary>
    /// The last count less what was used since, the worse of all ways to read the record. Where something in the record can't be
    /// read, any of it may have been used.
    /// </summary>
    public static Stock Of(KitItem item, CareRecord record, Instant now)
    {
        Between? all = null;
        Instant? counted = null;
        foreach (var state in record.Readings)
        {
            if (Of(item, state, now) is not { } found)
                return new(item, null, null);
            var left = Doubt.Unsettled(record.Doubts, state, now).IsEmpty ? found.Left : new(0, found.Left.High);
            all = all is { } known ? Between.Hull(known, left) : left;
            counted = counted < found.Since ? counted : found.Since;
        }

        return new(item, all, counted);
    }

    /// <summary>By one way to read the record; null: never counted.</summary>
    internal static CountedStock? Of(KitItem item, State state, Instant now)
    {
        CountedStock? worst = null;
        foreach (var count in Current(item.Id, state, now))
        {
            var stated = count.As<Payload.SuppliesStated>().Count;
            var used = ItemUses.Within(item, state, count.When, now);
            var left = new Between(Math.Max(0, stated - used.High), Math.Max(0, stated - used.Low));
            worst = worst is { } w
                ? new(Between.Hull(w.Left, left), Math.Max(w.MostCounted, stated), Instant.Min(w.Since, count.When.Earliest))
                : new(left, stated, count.When.Earliest);
        }

        return worst;
    }

    /// <summary>The counts none of which is known to have come before another.</summary>
    private static ImmutableArray<Dated> Current(string item, State state, Instant now)
    {
        var counts = state
            .Of(Kind.SuppliesStated)
            .Where(s => s.When.Latest <= now && s.As<Payload.SuppliesStated>().Item == item)
            .ToArray();
        return [.. counts.Where(c => !counts.Any(o => Replaces(o, c)))];
    }

    /// <summary>Two counts of one phone at one instant: the one that it wrote later.</summary>
    private static bool Replaces(Dated later, Dated earlier) =>
        earlier.When.SurelyBefore(later.When)
        || (
            earlier.When == later.When
            && earlier.When.IsInstant
            && earlier.Id.Device == later.Id.Device
            && earlier.Id.Number < later.Id.Number
        );
}

/// <summary>What is left by the counts in force.</summary>
/// <param name="MostCounted">The largest of those counts, before any use.</param>
/// <param name="Since">The earliest time of those counts.</param>
internal readonly record struct CountedStock(Between Left, int MostCounted, Instant Since);
