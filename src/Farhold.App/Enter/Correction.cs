using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace Farhold.App.Enter;

/// <summary>An entry being corrected.</summary>
/// <param name="Target">As it was first written.</param>
/// <param name="Standing">Fields that the amendment in force replaces; a new amendment has to carry them on.</param>
public sealed record Correction(
    Entry Target,
    ImmutableSortedDictionary<string, string> Written,
    ImmutableSortedDictionary<string, string> Standing
)
{
    private static readonly string[] Fixed = ["id", "kind", "recorded", "practice", "previous"];

    /// <summary>Null if the record has no such entry, or it is one that can't be corrected.</summary>
    public static Correction? Of(CareRecord record, EntryId id)
    {
        var target = record.Entries.FirstOrDefault(e => e.Id == id);
        if (target is null or { Payload: Payload.EntryAmended or Payload.EntryWithdrawn or Payload.OfNewerVersion })
            return null;
        var withdrawn = record.Entries.Select(e => e.Payload).OfType<Payload.EntryWithdrawn>().Select(w => w.Target).ToHashSet();
        var standing = record
            .Entries.Where(e => e.Payload is Payload.EntryAmended a && a.Target == id && !withdrawn.Contains(e.Id))
            .OrderBy(e => e.Recorded)
            .ThenBy(e => e.Id)
            .LastOrDefault(e => Amendments.Apply(target, (Payload.EntryAmended)e.Payload) is Read<Entry>.Usable);
        return new(
            target,
            Raw.AsMembers(target.Json.ToString()),
            Raw.AsMembers(standing?.Payload is Payload.EntryAmended a ? a.Replace.ToString() : null)
        );
    }

    /// <summary>The form as the entry counts now.</summary>
    public EntryDraft Draft =>
        new(
            Kinds.Of(Target.Payload),
            Written
                .SetItems(Standing)
                .RemoveRange([.. Fixed, "happened", "by"])
                .RemoveRange(Standing.Where(s => s.Value == "null").Select(s => s.Key))
        );

    /// <summary>What it says as it counts now.</summary>
    public Payload Counts => Draft.Read() is Read<Payload>.Usable usable ? usable.Value : Target.Payload;

    /// <summary>When it counts as having happened, as written or as corrected.</summary>
    public Happened When =>
        Standing.GetValueOrDefault("happened") is not { } raw ? Target.Happened
        : Raw.AsTime(raw) is { } at ? Happened.At(at)
        : Raw.AsMembers(raw) is var ends
        && Raw.AsTime(ends.GetValueOrDefault("earliest")) is { } from
        && Raw.AsTime(ends.GetValueOrDefault("latest")) is { } to
            ? new(from, to)
        : Target.Happened;

    /// <summary>Everything in which the corrected entry differs from the one first written; null if it does not.</summary>
    /// <param name="when">Null: the time stays as it stands.</param>
    public Payload.EntryAmended? To(EntryDraft draft, Happened? when)
    {
        // What earlier amendments replaced and this form does not show is carried on as it is.
        var replace = Standing.ToBuilder();
        foreach (var name in draft.Fields.Keys.Union(Written.Keys).Except([.. Fixed, "happened", "by"]))
        {
            var now = draft[name];
            if (now == Written.GetValueOrDefault(name))
                replace.Remove(name);
            else
                replace[name] = now ?? "null";
        }

        foreach (var gone in Standing.Keys.Where(k => !Written.ContainsKey(k) && k is not ("happened" or "by") && draft[k] is null))
            replace.Remove(gone);
        if (when is { } happened)
            replace["happened"] = Raw.When(happened);
        var changed = replace.Count != Standing.Count || replace.Any(r => Standing.GetValueOrDefault(r.Key) != r.Value);
        return changed ? new(Target.Id, JsonText.Of(Raw.Members(replace.Select(r => (r.Key, r.Value))))) : null;
    }
}
