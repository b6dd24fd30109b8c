using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>A wound that bled, and how fast it was caught; in seconds from the scenario's start, null for never.</summary>
/// <param name="Seen">When it was in view of anybody, or a look of the trainee's showed it.</param>
/// <param name="Stopped">When it bled fast no longer, for whatever reason.</param>
public sealed record Catch(string Wound, double From, double? Seen, double? Tight, double? Logged, double? Stopped)
{
    /// <summary>Design: the aim, and the hard limit, in seconds.</summary>
    public const double Aim = 60;
    public const double Limit = 120;

    /// <summary>From blood that could be seen to a tight tourniquet.</summary>
    public double? Took => Tight - Seen;

    /// <summary>Spells since the trainee arrived; one that was over before anybody saw it is left out.</summary>
    internal static ImmutableArray<Catch> All(DebriefScene scene) =>
        [
            .. scene
                .Session.Spells.Where(s => s.Until is null or > 0)
                .OrderBy(s => s.From)
                .Select(s => Of(scene, s))
                .Where(c => c.Seen is not null || c.Stopped is null || c.Tight is not null),
        ];

    internal static IEnumerable<Remark> Remarks(ImmutableArray<Catch> catches)
    {
        foreach (var one in catches.Where(c => c.Seen is not null && c.Tight is null && !(c.Stopped - c.Seen <= Aim)))
            yield return new(Fault.CaughtLate, one.Seen!.Value, DebriefTexts.CaughtNever(one.Wound));
        foreach (var one in catches.Where(c => c.Took > Limit))
            yield return new(Fault.CaughtLate, one.Seen!.Value, DebriefTexts.Caught(one.Wound, DebriefWords.Span(one.Took!.Value)));
        foreach (var one in catches.Where(c => c is { Tight: not null, Logged: null }))
            yield return new(Fault.WrittenLate, one.From, DebriefTexts.CaughtUnlogged(one.Wound));
    }

    private static Catch Of(DebriefScene scene, BleedingSpell spell)
    {
        var from = Math.Max(0, spell.From);
        var looked = scene
            .Session.Shown.Where(s => s.Wound == spell.Wound && s.At >= from && s.Shown is Shown.Bleeds(BleedingSeen.Active))
            .Select(s => (double?)s.At)
            .FirstOrDefault();
        double? seen = (spell.Visible, looked) switch
        {
            (null, null) => null,
            var (inView, look) => Math.Max(from, Math.Min(inView ?? double.PositiveInfinity, look ?? double.PositiveInfinity)),
        };
        if (seen > spell.Until)
            seen = null;
        var limb = scene.LimbOf(spell.Wound) is { } on ? Wire.Word(on) : null;
        var tight = scene
            .Session.Truth.OfType<TruthLine.Began>()
            .Where(b => b.Act is Act.Tighten t && t.Limb == limb && b.At >= from)
            .Select(b => (double?)b.Until)
            .FirstOrDefault();
        var logged = scene
            .Own.Where(e => e.Recorded >= scene.Session.At(from) && Tells(e.Payload, spell.Wound, scene))
            .Select(e => (double?)scene.At(e))
            .FirstOrDefault();
        return new(spell.Wound, from, seen, tight, logged, spell.Until);
    }

    private static bool Tells(Payload payload, string wound, DebriefScene scene) =>
        payload switch
        {
            Payload.BleedingChecked { Bleeding: Bleeding.Active } check => check.Wound == wound,
            Payload.TourniquetTightened { Why: TighteningReason.Bleeding } tight => tight.Limb == scene.LimbOf(wound),
            Payload.AttemptEnded { Outcome: AttemptOutcome.Bled } ended => ended.Wound == wound,
            _ => false,
        };
}
