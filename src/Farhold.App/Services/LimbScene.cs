using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>One limb as it stands now, tight or watched, told from the picture and the record alone.</summary>
/// <param name="Verdict">Null once every tourniquet on the limb has given way.</param>
/// <param name="Observed">Null while one is, or may be, tight.</param>
/// <param name="Tighten">What has to be done at once, or null.</param>
/// <param name="At">Of when the picture is.</param>
public sealed record LimbScene(LimbClock Clock, LimbVerdict? Verdict, ObservedLimb? Observed, DueTask? Tighten, State State, Instant At)
{
    public Limb Limb => Clock.Limb;

    /// <summary>The attempt under way, or null.</summary>
    public AttemptProgress? Progress => Verdict?.Attempt ?? Observed?.Attempt;

    /// <summary>Something came up during the attempt that forbids it: no step of it is shown any more, only how to end it.</summary>
    public bool IsStopped => Progress is not null && Verdict is { Verdict: Farhold.Verdicts.Verdict.LeaveOn };

    /// <summary>Those that are, or may be, tight now.</summary>
    public ImmutableArray<string> Tight => Clock.Tight == Truth.NotMet ? [] : Clock.Tourniquets;

    /// <summary>One on this limb was let out in the attempt under way; blood flows only once none is tight.</summary>
    public bool OneIsLoose =>
        Progress is { Attempt.Started: var started }
        && State
            .Of(Kind.TourniquetSlackened)
            .Where(s => s.When.Latest >= started.Earliest)
            .Select(s => s.As<Payload.TourniquetSlackened>().Tourniquet)
            .Any(t =>
                !Tight.Contains(t)
                && State
                    .Of(Kind.TourniquetTightened)
                    .Select(d => d.As<Payload.TourniquetTightened>())
                    .Any(d => d.Tourniquet == t && d.Limb == Limb)
            );

    /// <summary>The step to be done now; null when none is.</summary>
    public StepProgress? Step => Progress?.Current;

    /// <summary>Wounds that the tourniquets here are about.</summary>
    public WoundNames Wounds => LimbWounds.Treated(Limb, State, At);

    public ImmutableArray<Attempt> Attempts => Attempt.On(Limb, State, At);

    /// <summary>Null where no tourniquet was ever on the limb.</summary>
    public static LimbScene? Of(Limb limb, Judgement picture, CareRecord record)
    {
        var verdict = picture.Limbs.FirstOrDefault(l => l.Limb == limb);
        var watched = picture.Observed.FirstOrDefault(w => w.Limb == limb);
        if ((verdict?.Clock ?? watched?.Clock) is not { } clock)
            return null;
        return new(
            clock,
            verdict,
            watched,
            picture.Due.FirstOrDefault(d => d.IsTightening && d.Limb == limb),
            record.Readings[0],
            picture.At
        );
    }

    public static IEnumerable<LimbScene> All(Judgement picture, CareRecord record) =>
        Enum.GetValues<Limb>().Select(l => Of(l, picture, record)).OfType<LimbScene>();

    /// <summary>All that was said of a tourniquet here when it was last tightened, but for why.</summary>
    public Payload.TourniquetTightened Known(string tourniquet) =>
        (
            State
                .Of(Kind.TourniquetTightened)
                .Select(t => t.As<Payload.TourniquetTightened>())
                .LastOrDefault(t => t.Tourniquet == tourniquet && t.Limb == Limb)
            ?? new(tourniquet, Limb, Wound: Wounds.IsEmpty ? null : Wounds[^1])
        ) with
        {
            Why = null,
        };

    /// <summary>The wound that a look at this limb is about: that of the attempt, else the last one.</summary>
    public string? Wound => Progress?.Attempt.Wound ?? (Wounds.IsEmpty ? null : Wounds[^1]);

    /// <summary>Those that can be tightened: on the limb, tight or lying ready, and that of the attempt.</summary>
    public ImmutableArray<string> Ready =>
        Progress?.Attempt.Tourniquet is { } t && !Clock.Tourniquets.Contains(t) ? [t, .. Clock.Tourniquets] : Clock.Tourniquets;
}
