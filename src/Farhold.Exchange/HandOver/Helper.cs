using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>Someone who did or saw what the record tells.</summary>
/// <param name="Entries">How many bear the name, amendments and withdrawals included.</param>
/// <param name="First">When the first of them was written.</param>
public sealed record Helper(string Name, int Entries, Instant First, Instant Last, ImmutableArray<string> Devices)
{
    /// <summary>In the order in which they first wrote.</summary>
    internal static ImmutableArray<Helper> All(CareRecord record, Instant now) =>
        [
            .. record
                .Entries.Where(e => e.Recorded <= now)
                .GroupBy(e => e.By)
                .Select(g => new Helper(
                    g.Key,
                    g.Count(),
                    g.Min(e => e.Recorded),
                    g.Max(e => e.Recorded),
                    [.. g.Select(e => e.Id.Device).Distinct()]
                ))
                .OrderBy(h => h.First)
                .ThenBy(h => h.Name, StringComparer.Ordinal),
        ];
}
