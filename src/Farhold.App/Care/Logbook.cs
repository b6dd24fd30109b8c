using Farhold.App.Phone;
using Farhold.App.Shell;
using Farhold.App.Store;
using Farhold.App.Words;
using NodaTime;

namespace Farhold.App.Care;

/// <summary>Logs what the carer said with one tap, tells of it, and takes it back with another.</summary>
public sealed class Logbook(CareDesk desk, Session session, Toasts toasts, PhoneClock clock, Texts texts)
{
    /// <summary>What happened longer ago than this is told with its time (design).</summary>
    private static readonly Duration Soon = Duration.FromMinutes(1);

    /// <summary>True once the entry is on disk; if it is not, the status strip says so.</summary>
    /// <param name="sure">What the entry says by now, where it looked odd and the carer said that it is right: it is asked back no more.</param>
    public Task<bool> LogAsync(Payload payload, Happened? happened = null, Payload? sure = null) =>
        LogAsync(session.Open ?? throw new InvalidOperationException("An entry needs an open casualty."), payload, happened, sure);

    public async Task<bool> LogAsync(CasualtyHead open, Payload payload, Happened? happened = null, Payload? sure = null)
    {
        if (await desk.LogAsync(open, payload, happened ?? Happened.At(session.Now)) is not Appended.Stored stored)
            return false;
        var id = new EntryId(session.Device, stored.Number);
        foreach (var field in sure is null ? [] : desk.Questioned(sure))
            await desk.LogAsync(open, new Payload.TaskDone(Question.TaskOf((payload as Payload.EntryAmended)?.Target ?? id, field)));
        if (session.Open?.Id == open.Id)
            toasts.Show(Said(payload, happened), () => session.WithdrawAsync(open, id.ToString(), texts.UndoneReason));
        return true;
    }

    /// <summary>What was logged, of earlier with its time; and, where one tourniquet was let out beside another, that the other still stops the flow.</summary>
    private string Said(Payload payload, Happened? happened)
    {
        var what = EntryText.Of(payload, clock.Zone);
        var logged = happened is { } then && then.Earliest < session.Now - Soon
            ? texts.LoggedThen(what, clock.Show(then, session.Now)) : texts.Logged(what);
        var gone = payload switch
        {
            Payload.TourniquetSlackened p => p.Tourniquet,
            Payload.TourniquetRemoved p => p.Tourniquet,
            _ => null,
        };
        if (gone is null || desk.Record is not { } record || desk.Picture is not { } picture)
            return logged;
        var on = record.Readings[0].Of(Kind.TourniquetTightened).Select(t => t.As<Payload.TourniquetTightened>())
            .LastOrDefault(t => t.Tourniquet == gone)?.Limb;
        var tight = picture.Limbs.FirstOrDefault(l => l.Limb == on)?.Clock.Tourniquets.Remove(gone) ?? [];
        return tight.IsEmpty ? logged : texts.LoggedStillTight(logged, string.Join(", ", tight));
    }
}
