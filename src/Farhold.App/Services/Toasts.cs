using NodaTime;

namespace Farhold.App.Services;

/// <param name="Undo">Null: there is nothing to undo.</param>
public sealed record Toast(string Text, Func<Task>? Undo);

/// <summary>One short message at a time, with its Undo, for as long as <see cref="Stays"/> and its casualty is the open one.</summary>
public sealed class Toasts : IDisposable
{
    /// <summary>Design: long enough to read and to hit with a glove; what it undoes can also be withdrawn in the log.</summary>
    public static readonly Duration Stays = Duration.FromSeconds(12);

    private readonly TimeProvider time;
    private readonly Session session;
    private string? casualty;
    private ITimer? timer;

    public Toasts(TimeProvider time, Session session)
    {
        (this.time, this.session) = (time, session);
        session.Changed += Leave;
    }

    public event Action? Changed;

    public Toast? Shown { get; private set; }

    public void Show(string text, Func<Task>? undo = null)
    {
        timer?.Dispose();
        (Shown, casualty) = (new Toast(text, undo), session.Open?.Id);
        timer = time.CreateTimer(_ => Clear(), null, Stays.ToTimeSpan(), Timeout.InfiniteTimeSpan);
        Changed?.Invoke();
    }

    public async Task UndoAsync()
    {
        var undo = Shown?.Undo;
        Clear();
        if (undo is not null)
            await undo();
    }

    public void Clear()
    {
        timer?.Dispose();
        (timer, Shown) = (null, null);
        Changed?.Invoke();
    }

    public void Dispose()
    {
        session.Changed -= Leave;
        timer?.Dispose();
    }

    private void Leave()
    {
        if (Shown is not null && session.Open?.Id != casualty)
            Clear();
    }
}
