using System.Collections.Immutable;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub;

/// <summary>Puts invented casualties into a hub that holds none, to look around in.</summary>
internal static class DemoRecords
{
    public const string Team = "Skarvedal watch";

    /// <param name="folder">With <c>*.jsonl</c>, a casualty each.</param>
    /// <returns>How many were put in; 0 where the hub holds records already.</returns>
    public static async Task<int> PutAsync(string folder, IRecordStore store, AccessStore access, Instant now)
    {
        if (!(await access.CasualtiesAsync()).IsEmpty)
            return 0;
        var count = 0;
        foreach (var file in Directory.EnumerateFiles(folder, "*.jsonl").Order(StringComparer.Ordinal))
        {
            var lines = (await File.ReadAllTextAsync(file))
                .Split('\n')
                .Select(l => HeldLine.Of(System.Text.Encoding.UTF8.GetBytes(l)))
                .OfType<HeldLine>()
                .ToImmutableArray();
            if ((await store.FindAsync(Roots.Of(lines), now)).Certain is not { } id)
                continue;
            await store.AppendAsync(new(id, lines, "demo", now));
            await access.BelongsAsync(id, Team);
            count++;
        }

        return count;
    }
}
