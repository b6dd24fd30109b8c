using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>What the parts of a look back share.</summary>
/// <param name="Turns">Every change of the outcome up to <paramref name="Until"/>.</param>
internal sealed record ReviewScene(CareRecord Record, Rulebook Rules, Instant Until, IReadOnlyList<Turn> Turns)
{
    public State State { get; } = Record.Readings[0];

    /// <summary>Each limb that had a tourniquet by <see cref="Until"/>.</summary>
    public ImmutableArray<LimbClock> Clocks { get; } =
    [.. Enum.GetValues<Limb>().Select(l => LimbClock.Of(l, Record.Readings[0], Until)).OfType<LimbClock>()];

    /// <summary>When care ended, for the first time; else <see cref="Until"/>.</summary>
    public Instant End => Ended is { } ended ? Instant.Min(ended.When.Latest, Until) : Until;

    public Dated? Ended => Of(Kind.CareEnded).FirstOrDefault();

    /// <summary>What surely happened up to <see cref="Until"/>.</summary>
    public IEnumerable<Dated> Of(Kind kind) => State.Of(kind).Where(d => d.When.Latest <= Until);

    /// <summary>From the first tightening of the limb, or of any.</summary>
    public Elapsed? Since(Happened when, Limb? limb = null) =>
        Clocks.Where(c => limb is null || c.Limb == limb).Select(c => (Happened?)c.FirstTightened).MinBy(f => f!.Value.Earliest)
            is { } first
        && !when.SurelyBefore(first)
            ? Between(first, when)
            : null;

    /// <summary>How long from one time to a later one; what would be negative is zero.</summary>
    public static Elapsed Between(Happened from, Happened to) =>
        new(Positive(to.Earliest - from.Latest), Positive(to.Latest - from.Earliest));

    /// <summary>The limb's verdict just before an instant, by all that is known now; null where it had no tight tourniquet.</summary>
    public LimbVerdict? Before(Instant at, Limb limb) =>
        Turns.LastOrDefault(t => t.At < at)?.Judgement.Limbs.FirstOrDefault(l => l.Limb == limb);

    /// <summary>The limb's verdict by what had been written down when an entry was, without that entry.</summary>
    public LimbVerdict? Written(Dated entry, Limb limb)
    {
        var known = new CareRecord(Record.Entries.Where(e => e.Id != entry.Id && e.Recorded <= entry.Recorded), Record.Damaged);
        return Judge.At(known, Rules, entry.When.Latest).Limbs.FirstOrDefault(l => l.Limb == limb);
    }

    private static Duration Positive(Duration d) => d < Duration.Zero ? Duration.Zero : d;
}
