using Farhold.App.Shell;
using Farhold.App.Store;
using Farhold.App.Words;

namespace Farhold.App.HandOver;

/// <summary>What merging an incoming record would do, told before anything is done.</summary>
/// <param name="Into">The casualty it goes into.</param>
/// <param name="Opens">The casualty is not on this phone yet.</param>
/// <param name="New">Lines that are not here.</param>
/// <param name="Conflicting">Lines whose id is here with something else: both are kept.</param>
public sealed record MergePlan(CasualtyHead Into, bool Opens, IncomingFile File, int New, int Same, int Conflicting, int Unreadable)
{
    /// <param name="into">Null: the casualty that shares a line with the record, or a new one.</param>
    public static async Task<MergePlan> OfAsync(IncomingFile file, CasualtyHead? into, Session session, ILogStore store)
    {
        var found = into;
        foreach (var head in into is null ? session.Casualties : [])
            if (file.Shares(await store.ReadAsync(head.Id)))
                found = head;
        var target = found ?? new CasualtyHead(store.NewCasualtyId(), file.Alias, file.Practice, session.Now);
        var held = found is null ? [] : (await store.ReadAsync(found.Id)).Select(l => l.Text).ToHashSet(StringComparer.Ordinal);
        var ids = held.Select(IdOf).OfType<EntryId>().ToHashSet();
        var (fresh, same, conflicting, unreadable) = (0, 0, 0, 0);
        foreach (var line in file.Lines)
        {
            if (held.Contains(System.Text.Encoding.UTF8.GetString(line.Bytes.Span)))
                same++;
            else if (line.Id is null)
                unreadable++;
            else if (ids.Contains(line.Id.Value))
                conflicting++;
            else
                fresh++;
        }

        return new(target, found is null, file, fresh, same, conflicting, unreadable);
    }

    /// <summary>Why it can't be merged, or null.</summary>
    public string? Refusal(Texts texts) =>
        File.Lines.All(l => l.Id is null) ? texts.TakeNoRecord
        : Into.Practice != File.Practice ? (Into.Practice ? texts.TakeRealIntoPractice : texts.TakePracticeIntoReal)
        : null;

    private static EntryId? IdOf(string line)
    {
        var lines = IncomingFile.Split(System.Text.Encoding.UTF8.GetBytes(line)).Lines;
        return lines is [var one] ? one.Id : null;
    }
}
