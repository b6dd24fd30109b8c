using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Reminders;

/// <summary>Sounds for what is due in the open casualty until the carer has seen it. Works only while the app is open.</summary>
public sealed class Reminder : IDisposable
{
    /// <summary>Design: a page in view ticks every second; a longer silence means that the phone slept or hid it.</summary>
    private static readonly Duration Slept = Duration.FromSeconds(90);

    private readonly CareDesk desk;
    private readonly Session session;
    private readonly Ticker ticker;
    private readonly AlertSignals alerting;
    private readonly SeenReminders seen;
    private Instant sounded = Instant.MinValue;
    private Instant ticked;

    public Reminder(CareDesk desk, Session session, Ticker ticker, AlertSignals alerting, IPhone phone)
    {
        (this.desk, this.session, this.ticker, this.alerting) = (desk, session, ticker, alerting);
        seen = new(phone);
        ticked = ticker.Now;
        ticker.Ticked += Tick;
    }

    public event Action? Changed;

    /// <summary>Since when the phone slept, while that has not been seen; what came due in between made no sound.</summary>
    public Instant? SleptSince { get; private set; }

    public ImmutableArray<DueTask> Due => desk.Picture is { } picture ? Ringing.Due(picture) : [];

    public ImmutableArray<DueTask> Unseen =>
        desk.Picture is { } picture ? Ringing.Unseen(picture, seen.Of(session.Open?.Id), desk.Now) : [];

    /// <summary>All that is due now has been seen; what comes due later sounds again.</summary>
    public void See()
    {
        if (desk.Picture is not { } picture || session.Open is not { } open)
            return;
        seen.Keep(open.Id, Ringing.Due(picture).Select(d => Ringing.Key(d, picture.At)), desk.Now);
        SleptSince = null;
        Changed?.Invoke();
    }

    public void Dispose() => ticker.Ticked -= Tick;

    private void Tick()
    {
        var before = ticked;
        ticked = ticker.Now;
        if (desk.Picture is not { } picture)
        {
            SleptSince = null;
            return;
        }

        if (!ticker.IsRehearsed && ticked - before > Slept && Ringing.Due(picture).Any(d => d.At > before))
            SleptSince ??= before;
        if (Ringing.Of(picture, Unseen, sounded, ticked) is not { } signal)
            return;
        sounded = ticked;
        alerting.Give(signal);
        Changed?.Invoke();
    }
}
