using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

public enum Sky
{
    Day,
    Twilight,
    Night,
}

/// <summary>A stretch of one kind of light at the place.</summary>
public readonly record struct LightSpell(Instant From, Instant To, Sky Sky);

/// <summary>When help may come: three instants with what they are called, such as 10 %, 50 % and 90 %.</summary>
public sealed record Arrival
{
    /// <exception cref="ArgumentException">The instants are not in order.</exception>
    public Arrival(Instant early, Instant middle, Instant late, string source)
    {
        if (early > middle || middle > late)
            throw new ArgumentException($"Arrival needs early ≤ middle ≤ late; got {early}, {middle}, {late}.", nameof(late));
        (Early, Middle, Late, Source) = (early, middle, late, source);
    }

    public Instant Early { get; }

    public Instant Middle { get; }

    public Instant Late { get; }

    /// <summary>Where the times are from, for people: <c>way out, 2000 trials</c>.</summary>
    public string Source { get; }

    /// <summary>What the three instants are called.</summary>
    public (string Early, string Middle, string Late) Names { get; init; } =
        (DrawingTexts.Earliest, DrawingTexts.Likely, DrawingTexts.Latest);

    /// <summary>Relative probability over time, at least two points in order of time; empty draws the three instants only.</summary>
    public ImmutableArray<(Instant At, double Weight)> Density { get; init; } = [];

    /// <summary>What was last told of help in the record, as it stands; null if nothing, or only a likely time, was told.</summary>
    public static Arrival? Told(State state, Instant now)
    {
        var help = state.Of(Kind.HelpExpected).LastOrDefault(h => h.When.Earliest <= now)?.As<Payload.HelpExpected>();
        if (help is not { Earliest: { } early, Latest: { } late } || early > help.Likely || help.Likely > late)
            return null;
        return new(early, help.Likely, late, DrawingTexts.AsTold);
    }
}

/// <summary>All that the limb line of one limb shows.</summary>
/// <param name="Looks">When signs were taken or the wound was looked at.</param>
/// <param name="Zone">For the times written on it.</param>
public sealed record LimbPicture(
    LimbClock Clock,
    ImmutableArray<Attempt> Attempts,
    ImmutableArray<Happened> Looks,
    ClockLimits Limits,
    Instant Now,
    DateTimeZone Zone
)
{
    public ImmutableArray<LightSpell> Light { get; init; } = [];

    public Arrival? Arrival { get; init; }

    public Limb Limb => Clock.Limb;

    /// <summary>The limits count from the earliest time possible: the worse side.</summary>
    public Instant WindowAt => Clock.FirstTightened.Earliest + Limits.Window;

    public Instant LimitAt => Clock.FirstTightened.Earliest + Limits.Limit;

    /// <summary>The picture of a limb by one reading of a record, or null if it never had a tourniquet up to then.</summary>
    public static LimbPicture? Of(Limb limb, State state, Protocol protocol, Instant now, DateTimeZone? zone = null) =>
        LimbClock.Of(limb, state, now) is { } clock ? Of(clock, state, protocol, now, zone) : null;

    /// <summary>The same with the clock a judgement has settled on.</summary>
    public static LimbPicture Of(LimbClock clock, State state, Protocol protocol, Instant now, DateTimeZone? zone = null)
    {
        var wounds = LimbWounds.Treated(clock.Limb, state, now);
        var looks = state
            .Of(Kind.SignsTaken)
            .Concat(state.Of(Kind.BleedingChecked).Where(b => wounds.Contains(b.As<Payload.BleedingChecked>().Wound)));
        return new(
            clock,
            Attempt.On(clock.Limb, state, now),
            [.. looks.Where(l => l.When.Earliest <= now).Select(l => l.When).OrderBy(w => w.Latest)],
            protocol.Clock,
            now,
            zone ?? DateTimeZone.Utc
        )
        {
            Arrival = Arrival.Told(state, now),
        };
    }
}
