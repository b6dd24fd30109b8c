using NodaTime;

namespace Farhold.App.Services;

/// <summary>The clock of a rehearsal: it runs at a rate, stands, or is put on. Timers stay those of the wall.</summary>
/// <param name="wall">The phone's own.</param>
public sealed class RehearsalClock(TimeProvider wall) : TimeProvider
{
    private DateTimeOffset anchored = wall.GetUtcNow();
    private DateTimeOffset anchor = wall.GetUtcNow();

    /// <summary>How many times as fast as the wall's; 0 while it stands.</summary>
    public double Rate { get; private set; }

    /// <summary>What the phone's own clock shows.</summary>
    public Instant Wall => Instant.FromDateTimeOffset(wall.GetUtcNow());

    public override long TimestampFrequency => wall.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => anchor + ((wall.GetUtcNow() - anchored) * Rate);

    public override long GetTimestamp() => wall.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        wall.CreateTimer(callback, state, dueTime, period);

    /// <summary>From now on it runs so fast.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A clock never runs back.</exception>
    public void Run(double rate)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(rate);
        Anchor(GetUtcNow());
        Rate = rate;
    }

    /// <summary>Puts it on to a time; one that has passed leaves it alone.</summary>
    public void PutOn(Instant to)
    {
        if (to.ToDateTimeOffset() is var then && then > GetUtcNow())
            Anchor(then);
    }

    /// <summary>Where a rehearsal begins, or goes on.</summary>
    public void Begin(Instant at) => Anchor(at.ToDateTimeOffset());

    private void Anchor(DateTimeOffset at) => (anchor, anchored) = (at, wall.GetUtcNow());
}
