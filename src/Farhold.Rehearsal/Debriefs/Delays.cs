using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>When an attempt on a limb could be decided, was known to be allowed, and was made; in seconds, null for never.</summary>
/// <param name="Decidable">By the truth.</param>
/// <param name="KnownAt">By the record.</param>
/// <param name="Begun">By the record.</param>
/// <param name="LetOut">When the tourniquet truly gave way.</param>
public sealed record Delays(Limb Limb, double? Decidable, double? KnownAt, double? Begun, double? LetOut)
{
    /// <summary>Design: what is known to be allowed is begun, or put off for a reason, within this time.</summary>
    private const double Longest = 900;

    public double? Perceiving => KnownAt - Decidable;

    public double? Deciding => Begun - KnownAt;

    public double? Doing => LetOut - Begun;

    internal static Delays Of(DebriefScene scene, ImmutableArray<Sight> known, ImmutableArray<Sight> seeing, Limb limb)
    {
        var begun = scene.Own.FirstOrDefault(e => e.Payload is Payload.AttemptStarted a && scene.LimbOf(a.Wound) == limb);
        return new(
            limb,
            seeing.First(s => s.Limb == limb).First(Verdict.Attempt),
            known.First(s => s.Limb == limb).First(Verdict.Attempt),
            begun is null ? null : scene.At(begun),
            scene.LetOut.Where(l => l.Limb == limb).Select(l => (double?)l.Began.Until).FirstOrDefault()
        );
    }

    internal static IEnumerable<Remark> Remarks(ImmutableArray<Delays> all) =>
        all.Where(d => d.Deciding > Longest)
            .Select(d => new Remark(
                Fault.DecidedLate,
                d.KnownAt!.Value,
                DebriefTexts.Decided(Say.Limb(d.Limb), DebriefWords.Span(d.Deciding!.Value))
            ));
}

/// <summary>Where what the record said differed from the truth, for so long that it mattered.</summary>
internal static class Ignorance
{
    /// <summary>Design, in seconds: two looks and their ten minutes are nobody's fault.</summary>
    private const double Shortest = 1_200;

    /// <summary>Up to the first attempt on a limb.</summary>
    public static IEnumerable<Remark> Remarks(
        RehearsalSession session,
        ImmutableArray<Delays> delays,
        ImmutableArray<Sight> known,
        ImmutableArray<Sight> seeing
    ) => delays.SelectMany(d => Of(d.Begun ?? session.Time, known.First(s => s.Limb == d.Limb), seeing.First(s => s.Limb == d.Limb)));

    /// <summary>The record waited while the truth would have allowed, or allowed while the truth would not.</summary>
    private static IEnumerable<Remark> Of(double until, Sight known, Sight seeing)
    {
        double? from = null;
        VerdictAt? first = null;
        for (var at = 0.0; at <= until; at += 60)
        {
            var (said, real) = (known.Of(at), seeing.Of(at));
            var apart =
                said is { Verdict: Verdict.CheckFirst } && real is { Verdict: Verdict.Attempt }
                || said is { Verdict: Verdict.Attempt } && real is { Verdict: Verdict.LeaveOn };
            if (apart && from is null)
                (from, first) = (at, said);
            if (apart && at + 60 <= until)
                continue;
            if (from is { } since && at - since >= Shortest)
                yield return new(
                    Fault.IgnoranceMattered,
                    since,
                    DebriefTexts.Ignorance(
                        Say.Limb(known.Limb),
                        DebriefWords.Span(at - since),
                        DebriefWords.Verdict(first!.Verdict),
                        DebriefWords.Verdict(seeing.Of(since)!.Verdict),
                        first.CheckFirst.IsEmpty
                            ? DebriefTexts.IgnoranceNothing
                            : string.Join(", ", first.CheckFirst.Take(4).Select(InputWords.Name))
                    )
                );
            from = null;
        }
    }
}

/// <summary>Letting a tourniquet out: whether it was allowed, and whether what was to come before had come.</summary>
internal static class LettingOut
{
    public static IEnumerable<Remark> Remarks(DebriefScene scene, ImmutableArray<Sight> known, ImmutableArray<Sight> seeing) =>
        scene
            .LetOut.SelectMany(l =>
                (IEnumerable<Remark>)
                    [
                        .. Allowed(l.Began.At, known.First(s => s.Limb == l.Limb), seeing.First(s => s.Limb == l.Limb)),
                        .. scene.On(l.Limb).SelectMany(w => Before(scene, w, l.Began)),
                    ]
            )
            .Concat(TakenOff(scene));

    private static IEnumerable<Remark> Allowed(double at, Sight known, Sight seeing)
    {
        var (said, real) = (known.Before(at), seeing.Before(at));
        if (said?.Verdict == Verdict.LeaveOn)
            yield return new(Fault.ForbiddenLetOut, at, DebriefTexts.ForbiddenKnown(Say.Limb(known.Limb), Why(said)));
        else if (real?.Verdict == Verdict.LeaveOn)
            yield return new(Fault.ForbiddenLetOut, at, DebriefTexts.ForbiddenTrue(Say.Limb(known.Limb), Why(real)));
        else if (said is { Verdict: Verdict.CheckFirst or Verdict.AwaitHelp })
            yield return new(
                Fault.UndecidedLetOut,
                at,
                DebriefTexts.Undecided(
                    Say.Limb(known.Limb),
                    said.Verdict == Verdict.AwaitHelp
                        ? DebriefTexts.UndecidedAwait
                        : DebriefTexts.UndecidedOpen(string.Join(", ", said.CheckFirst.Take(4).Select(InputWords.Name)))
                )
            );
    }

    private static string Why(VerdictAt verdict) => string.Join(", ", verdict.Forbids);

    /// <summary>By the truth: packed while tight, pressed for the protocol's least time, dressed.</summary>
    private static IEnumerable<Remark> Before(DebriefScene scene, ScenarioWound wound, TruthLine.Began letting)
    {
        // Packing is for what bled fast enough to need it; a needless tourniquet's wound is judged all the same, nobody can know.
        if (scene.Packed(wound.Name, letting.At) is not { } packed)
        {
            yield return new(Fault.NotPackedTight, letting.At, DebriefTexts.NotPacked(wound.Name));
            yield break;
        }

        if (packed.At >= 0 && !IsTight(scene, wound.Limb!.Value, packed.At))
            yield return new(Fault.NotPackedTight, packed.At, DebriefTexts.PackedLoose(wound.Name));
        var least = Least(scene, (Act.Pack)packed.Act);
        var pressed = Pressed(scene, wound.Name, packed.Until, letting.At);
        if (packed.At >= 0 && pressed < least)
            yield return new(
                Fault.PressedShort,
                letting.At,
                DebriefTexts.Pressed(wound.Name, DebriefWords.Span(pressed), DebriefWords.Span(least))
            );
        if (scene.Dressed(wound.Name, letting.At) is not { } dressed || dressed.At < packed.At)
            yield return new(Fault.NotDressed, letting.At, DebriefTexts.NotDressedText(wound.Name));
    }

    private static IEnumerable<Remark> TakenOff(DebriefScene scene) =>
        scene
            .Own.Where(e => e.Payload is Payload.TourniquetRemoved)
            .Select(e => new Remark(Fault.TakenOff, scene.At(e), DebriefTexts.TakenOffText));

    private static bool IsTight(DebriefScene scene, Limb limb, double at)
    {
        var last = scene
            .Session.Truth.OfType<TruthLine.Began>()
            .LastOrDefault(b =>
                b.At <= at && (b.Act is Act.Tighten t && t.Limb == Wire.Word(limb) || b.Act is Act.Slacken s && s.Limb == Wire.Word(limb))
            );
        return last?.Act is Act.Tighten;
    }

    private static double Least(DebriefScene scene, Act.Pack packed)
    {
        var step = scene.Rules.Protocol.Steps.FirstOrDefault(s => s.Id == StepId.Hold);
        var with = packed.Gauze == PackingGauze.Haemostatic ? PackingMaterial.HaemostaticGauze : PackingMaterial.PlainGauze;
        return step is null ? 0 : AttemptProgress.Minimum(step, Wire.Word(with)).TotalSeconds;
    }

    /// <summary>Seconds for which a hand was on a wound between two times.</summary>
    internal static double Pressed(DebriefScene scene, string wound, double from, double to)
    {
        var (sum, since) = (0.0, null as double?);
        foreach (var began in scene.Session.Truth.OfType<TruthLine.Began>().Where(b => b.At <= to))
            switch (began.Act)
            {
                case Act.Press(var pressed) when pressed == wound:
                    since ??= Math.Max(began.At, from);
                    break;
                case Act.Release(var let) when let == wound && since is { } start:
                    sum += Math.Max(0, began.At - start);
                    since = null;
                    break;
            }

        return sum + (since is { } open ? Math.Max(0, to - open) : 0);
    }
}

/// <summary>Watching a wound whose tourniquet is loose, and the limb where it is tight.</summary>
internal static class Watching
{
    /// <summary>Design: without a break is a look every minute and a half at least; nobody is blamed for half an interval.</summary>
    private const double WithoutBreak = 90;
    private const double Patience = 1.5;

    /// <summary>Design: later than this the usual tasks decide.</summary>
    private const double Closely = 3_600;

    public static IEnumerable<Remark> Remarks(DebriefScene scene) =>
        scene.LetOut.SelectMany(l => scene.On(l.Limb).SelectMany(w => Gaps(scene, w, l.Limb, l.Began.At)));

    private static IEnumerable<Remark> Gaps(DebriefScene scene, ScenarioWound wound, Limb limb, double letting)
    {
        var until = scene
            .Session.Truth.OfType<TruthLine.Began>()
            .Where(b => b.At > letting && b.Act is Act.Tighten t && t.Limb == Wire.Word(limb))
            .Select(b => b.At)
            .Append(Math.Min(letting + Closely, scene.Session.Time))
            .Min();
        var last = letting;
        foreach (var at in Looks(scene, wound.Name, letting).Append(until).Where(a => a <= until))
        {
            var most = Most(scene, last - letting);
            if (at - last > most)
                yield return new(
                    Fault.WatchedWithGaps,
                    last,
                    DebriefTexts.Watched(wound.Name, DebriefWords.Span(at - last), DebriefWords.Span(most))
                );
            last = at;
        }
    }

    /// <summary>Looks that were truly made, by whomever.</summary>
    internal static IEnumerable<double> Looks(DebriefScene scene, string wound, double from) =>
        scene.Session.Shown.Where(s => s.Wound == wound && s.At > from).Select(s => s.At).Order();

    /// <summary>The longest break, in seconds, so long after the tourniquet was let out.</summary>
    internal static double Most(DebriefScene scene, double since)
    {
        var periods = scene.Rules.Protocol.Watch.Periods;
        var period = periods.FirstOrDefault(p => p.Until is null || p.Until.Value.TotalSeconds > since) ?? periods[^1];
        return Patience * Math.Max(WithoutBreak, period.Every?.TotalSeconds ?? 0);
    }
}
