using Farhold.App.Phone;
using Farhold.App.Shell;
using Farhold.App.Store;
using Farhold.App.Words;
using NodaTime;

namespace Farhold.App.Care;

/// <summary>Logs what the carer said with one tap, tells of it, and takes it back with another.</summary>
public sealed class Logbook(CareDesk desk, Session session, Toasts toasts, PhoneClock clock, Texts texts)
{
    /// <summary>True once the entry is on disk; if it is not, the status strip says so.</summary>
    public Task<bool> LogAsync(Payload payload, Happened? happened = null) =>
        LogAsync(session.Open ?? throw new InvalidOperationException("An entry needs an open casualty."), payload, happened);

    public async Task<bool> LogAsync(CasualtyHead open, Payload payload, Happened? happened = null)
    {
        if (await desk.LogAsync(open, payload, happened ?? Happened.At(session.Now)) is not Appended.Stored stored)
            return false;
        var id = new EntryId(session.Device, stored.Number);
        if (session.Open?.Id == open.Id)
            toasts.Show(texts.Logged(EntryText.Of(payload, clock.Zone)), () => session.WithdrawAsync(open, id.ToString(), texts.UndoneReason));
        return true;
    }
}
