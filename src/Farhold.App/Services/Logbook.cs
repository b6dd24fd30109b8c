using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Everything that places log goes through it: what the carer said with one tap, told of, and taken back with another.</summary>
public sealed class Logbook(CareDesk desk, Session session, Toasts toasts, PhoneClock clock, Texts texts)
{
    /// <summary>What happened longer ago than this is told with its time (design).</summary>
    private static readonly Duration Soon = Duration.FromMinutes(1);

    private string told = "";
    private int times;

    /// <summary>True once the entry is on disk; if it is not, the status strip says so.</summary>
    /// <param name="sure">What the entry says by now, where it looked odd and the carer said that it is right: it is asked back no
    /// more.</param>
    public Task<bool> LogAsync(Payload payload, Happened? happened = null, Payload? sure = null) =>
        LogAsync(session.Open ?? throw new InvalidOperationException("An entry needs an open casualty."), payload, happened, sure);

    public async Task<bool> LogAsync(CasualtyHead open, Payload payload, Happened? happened = null, Payload? sure = null)
    {
        if (await WriteAsync(open, payload, happened) is not Appended.Stored stored)
            return false;
        var id = new EntryId(session.Device, stored.Number);
        foreach (var field in sure is null ? [] : desk.Questioned(sure))
            await WriteAsync(open, new Payload.TaskDone(Question.TaskOf((payload as Payload.EntryAmended)?.Target ?? id, field)));
        if (session.Open?.Id == open.Id)
            Tell(open, payload, happened, id);
        return true;
    }

    // The same again while its message still stands may be a second tap: it says how often, and Undo takes back the last.
    private void Tell(CasualtyHead open, Payload payload, Happened? happened, EntryId id)
    {
        var said = Said(payload, happened);
        times = said == told && toasts.Shown is not null ? times + 1 : 1;
        told = said;
        toasts.Show(
            times == 1 ? said : texts.LoggedTimes(times, said),
            () => WriteAsync(open, new Payload.EntryWithdrawn(id, texts.Recorded.UndoneReason))
        );
    }

    /// <summary>Entries that belong together, in order; Undo takes back all of them. False where not all are on disk.</summary>
    /// <param name="what">What the carer said with one tap.</param>
    public async Task<bool> LogAllAsync(CasualtyHead open, string what, ImmutableArray<(Payload What, Happened When)> said)
    {
        var logged = new List<EntryId>();
        foreach (var (payload, when) in said)
        {
            if (await WriteAsync(open, payload, when) is not Appended.Stored stored)
                break;
            logged.Add(new(session.Device, stored.Number));
        }

        if (logged.Count > 0 && session.Open?.Id == open.Id)
            toasts.Show(texts.LoggedAll(what, logged.Count), () => TakeBackAsync(open, logged));
        return logged.Count == said.Length;
    }

    /// <summary>The last first, so that nothing stands for a moment without what it rests on.</summary>
    private async Task TakeBackAsync(CasualtyHead open, List<EntryId> logged)
    {
        foreach (var id in Enumerable.Reverse(logged))
            await WriteAsync(open, new Payload.EntryWithdrawn(id, texts.Recorded.UndoneReason));
    }

    /// <summary>Writes an entry without telling of it: one of several, or one that no single tap takes back.</summary>
    /// <remarks>Where this device judges by other rules than its record says, that is written first.</remarks>
    /// <param name="into">Whichever is open by now: what takes several entries keeps to the one it began with.</param>
    public async Task<Appended> WriteAsync(CasualtyHead into, Payload payload, Happened? happened = null)
    {
        if (
            payload is not (Payload.RulesStated or Payload.EntryWithdrawn)
            && session.Open?.Id == into.Id
            && desk.UnstatedRules() is { } rules
        )
            await session.AppendAsync(into, rules);
        return await session.AppendAsync(into, payload, happened);
    }

    /// <summary>
    /// What was logged, of earlier with its time; and, where one tourniquet was let out beside another, that the other still stops the
    /// flow.
    /// </summary>
    private string Said(Payload payload, Happened? happened)
    {
        var what = EntryText.Of(payload, clock.Zone);
        var logged =
            happened is { } then && then.Earliest < session.Now - Soon
                ? texts.LoggedThen(what, clock.Show(then, session.Now))
                : texts.Logged(what);
        var gone = payload switch
        {
            Payload.TourniquetSlackened p => p.Tourniquet,
            Payload.TourniquetRemoved p => p.Tourniquet,
            _ => null,
        };
        if (gone is null || desk.Record is not { } record || desk.Picture is not { } picture)
            return logged;
        var on = record
            .Readings[0]
            .Of(Kind.TourniquetTightened)
            .Select(t => t.As<Payload.TourniquetTightened>())
            .LastOrDefault(t => t.Tourniquet == gone)
            ?.Limb;
        var tight = picture.Limbs.FirstOrDefault(l => l.Limb == on)?.Clock.Tourniquets.Remove(gone) ?? [];
        return tight.IsEmpty ? logged : texts.LoggedStillTight(logged, string.Join(", ", tight));
    }
}
