using NodaTime;

namespace Farhold.App.Shell;

/// <param name="Undo">Null: there is nothing to undo.</param>
public sealed record Toast(string Text, Func<Task>? Undo);

/// <summary>One short message at a time, with its Undo, for as long as <see cref="Stays"/>.</summary>
public sealed class Toasts(TimeProvider time) : IDisposable
{
    /// <summary>Design: long enough to read and to hit with a glove; what it undoes can also be withdrawn in the log.</summary>
    public static readonly Duration Stays = Duration.FromSeconds(12);

    private ITimer? timer;

    public event Action? Changed;

    public Toast? Shown { get; private set; }

    public void Show(string text, Func<Task>? undo = null)
    {
        timer?.Dispose();
        Shown = new Toast(text, undo);
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

    public void Dispose() => timer?.Dispose();
}
