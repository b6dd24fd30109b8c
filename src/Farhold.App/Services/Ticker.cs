using NodaTime;

namespace Farhold.App.Services;

/// <summary>Tells the screens once a second that time has passed. They count from absolute times, never by ticks.</summary>
public sealed class Ticker : IDisposable
{
    private readonly TimeProvider time;
    private readonly ITimer timer;

    public Ticker(TimeProvider time, Background background)
    {
        this.time = time;
        timer = time.CreateTimer(_ => background.Raise(Ticked), null, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(1));
    }

    public event Action? Ticked;

    /// <summary>Where it goes by a rehearsal's clock, time is skipped, and no phone slept.</summary>
    public bool IsRehearsed => time is RehearsalClock;

    public Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    public void Dispose() => timer.Dispose();
}
