using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>An entry of one device that withdraws or corrects what another one wrote.</summary>
/// <param name="By">The withdrawal or correction.</param>
/// <param name="Target">What it unsays.</param>
/// <remarks>
/// Until somebody at the device that wrote the target, or at this one, has accepted it, both the record with it and the one without
/// count, and the worse verdict of the two holds (docs/decisions/whose-word.md).
/// </remarks>
public sealed record Retraction(Entry By, Entry Target)
{
    private const string Prefix = "unsaid-";

    public bool Withdraws => By.Payload is Payload.EntryWithdrawn;

    /// <summary>A <c>task.done</c> of this id accepts it.</summary>
    public string Task => Prefix + By.Id;

    public static bool IsAcceptedBy(string task) => task.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>What some entries unsay of others, whoever wrote them.</summary>
    /// <param name="held">The entries that they are read beside.</param>
    public static ImmutableArray<Retraction> In(IEnumerable<Entry> entries, Func<EntryId, Entry?> held) =>
        [
            .. from entry in entries
            let target = TargetOf(entry.Payload) is { } id && id.Device != entry.Id.Device ? held(id) : null
            where target is not null && target.Payload is not Payload.EntryWithdrawn
            orderby entry.Id
            select new Retraction(entry, target),
        ];

    /// <summary>Those that nobody has accepted yet.</summary>
    /// <param name="here">The device that reads; what it unsays itself is accepted by doing so. Null: none.</param>
    internal static ImmutableArray<Retraction> Open(IReadOnlyDictionary<EntryId, Entry> entries, string? here)
    {
        var all = In(entries.Values, id => entries.GetValueOrDefault(id));
        if (all.IsEmpty)
            return all;
        var accepted = entries
            .Values.Where(e => e.Payload is Payload.TaskDone done && IsAcceptedBy(done.Task))
            .Select(e => (((Payload.TaskDone)e.Payload).Task, e.Id.Device))
            .ToHashSet();
        return
        [
            .. all.Where(u =>
                u.By.Id.Device != here
                && !accepted.Contains((u.Task, u.Target.Id.Device))
                && !(here is not null && accepted.Contains((u.Task, here)))
            ),
        ];
    }

    internal Doubt Doubt =>
        new(
            Task,
            Withdraws
                ? RecordTexts.OtherWithdraws(By.Id.ToString(), Target.Id.ToString(), Said)
                : RecordTexts.OtherCorrects(By.Id.ToString(), Target.Id.ToString(), Said)
        );

    /// <summary>What the target says, in a line.</summary>
    private string Said => Plain.Line(EntryText.Of(Target));

    /// <summary>The entry that a withdrawal or correction is about; null for every other entry.</summary>
    internal static EntryId? TargetOf(Payload payload) =>
        payload switch
        {
            Payload.EntryAmended a => a.Target,
            Payload.EntryWithdrawn w => w.Target,
            _ => null,
        };
}
