namespace Farhold.App.WayOut;

/// <summary>Logs what has happened on the way, and has the forecast follow.</summary>
public sealed class WayNotes(WayDesk way, CareDesk desk, Session session, Logbook logbook, Background background)
{
    private int notes;

    /// <summary>
    /// The forecast goes into the record anew where it stood there before, so that supplies and whoever advises see how it moved.
    /// </summary>
    /// <returns>True once it is on disk. The forecast comes later; of several notes only the last tells what is expected then.</returns>
    public async Task<bool> LogAsync(Payload what, Happened? happened = null)
    {
        way.Open();
        var placed = way.IsPlaced;
        if (!await logbook.LogAsync(what, happened))
            return false;
        if (what is Payload.StageNoted || placed || way.IsPlaced)
            background.Start(FollowAsync);
        return true;
    }

    private async Task FollowAsync()
    {
        var (mine, open) = (++notes, session.Open);
        // Whoever noted it is answered first: the trials take longer.
        await Task.Yield();
        await way.GoneOnAsync();
        if (mine != notes || session.Open is not { } still || still.Id != open?.Id || desk.Record is not { } record)
            return;
        var state = record.Readings[0];
        if (way.IsLogged(state, session.Now) && way.Help(WayDesk.LoggedCare(state, session.Now)) is { } help)
            await logbook.LogAsync(still, help);
    }
}
