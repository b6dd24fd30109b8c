using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>One limb that has, or had, a tourniquet.</summary>
/// <param name="Tight">Over all readings of the record: known only where they agree.</param>
/// <param name="FirstTightened">From the earliest to the latest time any reading allows. The limits count from its earliest.</param>
/// <param name="Loosened">When flow came back, from the earliest to the latest time any reading allows; null while it is, or may be,
/// tight.</param>
/// <param name="Occluded">Total time without flow, over all readings.</param>
/// <param name="Events">Every tightening, slackening and removal, in order of time.</param>
/// <param name="Attempts">In order of time; where readings differ, those of each.</param>
/// <param name="DistalPulse">The last look at the pulse beyond the wound; empty if nobody felt for it.</param>
/// <param name="WindowAt">End of the first window.</param>
/// <param name="LimitAt">The time limit.</param>
/// <param name="Verdict">Null where the limb is only watched.</param>
/// <param name="Observed">Null where a tourniquet is, or may be, tight.</param>
public sealed record LimbFact(
    Limb Limb,
    Truth Tight,
    Happened FirstTightened,
    Elapsed SinceFirstTightened,
    Happened? Loosened,
    Elapsed Occluded,
    ImmutableArray<Stated> Events,
    ImmutableArray<Attempt> Attempts,
    ImmutableArray<Stated> DistalPulse,
    Instant WindowAt,
    Instant LimitAt,
    LimbVerdict? Verdict,
    ObservedLimb? Observed
)
{
    /// <summary>The clock of the reading that the judgement settled on: for drawing the limb line.</summary>
    public LimbClock Clock => Verdict?.Clock ?? Observed!.Clock;

    /// <summary>What was felt beyond a tight tourniquet says nothing of the limb once flow came back.</summary>
    public bool BeyondIsOfBefore => Loosened is { } loose && !DistalPulse.IsEmpty && DistalPulse.All(p => p.When.SurelyBefore(loose));

    /// <summary>Those that are or may be tight first, the longest first.</summary>
    internal static ImmutableArray<LimbFact> All(Source source, Judgement judgement) =>
        [
            .. judgement
                .Limbs.Select(v => Of(v.Limb, v, null, source, judgement))
                .Concat(judgement.Observed.Select(w => Of(w.Limb, null, w, source, judgement)))
                .OrderBy(l => l.Tight == Truth.NotMet)
                .ThenBy(l => l.FirstTightened.Earliest)
                .ThenBy(l => l.Limb),
        ];

    private static LimbFact Of(Limb limb, LimbVerdict? verdict, ObservedLimb? watched, Source source, Judgement judgement)
    {
        var now = source.Now;
        var clocks = source.Readings.Select(r => LimbClock.Of(limb, r, now)).ToArray();
        var known = clocks.OfType<LimbClock>().ToArray();
        var first = new Happened(known.Min(c => c.FirstTightened.Earliest), known.Max(c => c.FirstTightened.Latest));
        Duration Least(Func<LimbClock, Duration> of) => clocks.Min(c => c is null ? Duration.Zero : of(c));
        return new(
            limb,
            clocks.Aggregate((Truth?)null, (t, c) => Kleene.Agreed(t, c?.Tight ?? Truth.NotMet))!.Value,
            first,
            first.Until(now),
            Since([.. known.Select(c => c.Loosened())]),
            new(Least(c => c.Occluded.Min), known.Max(c => c.Occluded.Max)),
            EventsOn(limb, source),
            [.. source.Readings.SelectMany(r => Attempt.On(limb, r, now)).Distinct().OrderBy(a => a.Started.Latest)],
            source.Last(Kind.SignsTaken, p => ((Payload.SignsTaken)p).DistalPulse?.ContainsKey(limb) == true),
            first.Earliest + judgement.Protocol.Clock.Window,
            first.Earliest + judgement.Protocol.Clock.Limit,
            verdict,
            watched
        );
    }

    private static Happened? Since(ImmutableArray<Happened?> loosened) =>
        loosened.All(l => l is not null) ? new(loosened.Min(l => l!.Value.Earliest), loosened.Max(l => l!.Value.Latest)) : null;

    /// <summary>A loosening belongs to the limb on which its tourniquet was last tightened before.</summary>
    private static ImmutableArray<Stated> EventsOn(Limb limb, Source source)
    {
        var tightened = source.Of(Kind.TourniquetTightened);
        bool Here(Stated loosened, string name) =>
            tightened
                .LastOrDefault(t => t.As<Payload.TourniquetTightened>().Tourniquet == name && t.When.Earliest <= loosened.When.Latest)
                ?.As<Payload.TourniquetTightened>()
                .Limb == limb;
        return
        [
            .. tightened
                .Where(t => t.As<Payload.TourniquetTightened>().Limb == limb)
                .Concat(source.Of(Kind.TourniquetSlackened).Where(s => Here(s, s.As<Payload.TourniquetSlackened>().Tourniquet)))
                .Concat(source.Of(Kind.TourniquetRemoved).Where(s => Here(s, s.As<Payload.TourniquetRemoved>().Tourniquet)))
                .OrderBy(s => s.When.Latest)
                .ThenBy(s => s.When.Earliest)
                .ThenBy(s => s.Id),
        ];
    }
}
