using NodaTime;

namespace Farhold.App.Parts;

/// <summary>When something happened, as the carer says it; turned into times only when the entry is logged.</summary>
public abstract record HappenedChoice
{
    private HappenedChoice() { }

    /// <summary>Null while it is not complete.</summary>
    public abstract Happened? Resolve(Instant now, PhoneClock clock);

    /// <summary>At the moment of logging.</summary>
    public sealed record AtOnce : HappenedChoice
    {
        public override Happened? Resolve(Instant now, PhoneClock clock) => Happened.At(now);
    }

    /// <summary>Counted back from when it was said, however long the form stays open after.</summary>
    public sealed record Ago(Instant Said, Duration By) : HappenedChoice
    {
        public override Happened? Resolve(Instant now, PhoneClock clock) => Happened.At(Said - By);
    }

    /// <summary>Between two lengths of time counted back from when it was said, the longer one first.</summary>
    public sealed record BetweenAgo(Instant Said, Duration Longest, Duration Shortest) : HappenedChoice
    {
        public override Happened? Resolve(Instant now, PhoneClock clock) => new Happened(Said - Longest, Said - Shortest);
    }

    /// <summary>The last time the clock showed this, or some days before.</summary>
    public sealed record ClockTime(LocalTime? Time, int DaysEarlier = 0) : HappenedChoice
    {
        public override Happened? Resolve(Instant now, PhoneClock clock) =>
            Time is { } time ? Happened.At(clock.LastBefore(time, now, DaysEarlier)) : null;
    }

    /// <summary>Not before one clock time and not after another, the later one being the last such before now.</summary>
    public sealed record Between(LocalTime? From, LocalTime? To, int DaysEarlier = 0) : HappenedChoice
    {
        public override Happened? Resolve(Instant now, PhoneClock clock)
        {
            if (From is not { } from || To is not { } to)
                return null;
            var latest = clock.LastBefore(to, now, DaysEarlier);
            return new Happened(clock.LastBefore(from, latest), latest);
        }
    }
}
