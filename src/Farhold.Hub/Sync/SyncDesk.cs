using System.Collections.Concurrent;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;

namespace Farhold.Hub.Sync;

/// <summary>The casualties that were asked of lately, in memory.</summary>
internal sealed class SyncDesk(IRecordStore store, Vouched vouched)
{
    /// <summary>Design: a region's worth; some hundred kilobytes for each.</summary>
    private const int MostHeld = 1_000;

    private readonly ConcurrentDictionary<string, HeldCasualty> held = new(StringComparer.Ordinal);

    public IRecordStore Store => store;

    /// <remarks>One that is let go while it is in use is only held twice for a while: the store decides what is new.</remarks>
    public HeldCasualty Casualty(string id)
    {
        if (held.Count >= MostHeld)
            held.TryRemove(held.Keys.First(), out _);
        return held.GetOrAdd(id, i => new(i, store, vouched));
    }

    public void Forget(string id) => held.TryRemove(id, out _);
}
