using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>One of the twelve steps of converting a tourniquet, as the record shows it.</summary>
/// <param name="Number">1 to 12.</param>
/// <param name="Shown">Unknown where no record can show it; null where it did not come up.</param>
public sealed record StepMark(int Number, TeachingPoint Point, Truth? Shown)
{
    /// <summary>In seconds: what is logged within this time of when it happened was logged as it happened.</summary>
    private const double AtOnce = 300;

    /// <summary>In seconds: eyes on the dressing while it is let out.</summary>
    private const double EyesOn = 90;

    private const double Watched = 900;

    /// <summary>By the first attempt on the limb that was tried first.</summary>
    internal static ImmutableArray<StepMark> All(DebriefScene scene, ImmutableArray<Sight> known, ImmutableArray<Catch> catches)
    {
        var begun = scene.Own.FirstOrDefault(e => e.Payload is Payload.AttemptStarted);
        var attempt = begun?.Payload as Payload.AttemptStarted;
        var limb = attempt is null ? null : scene.LimbOf(attempt.Wound);
        var start = begun is null ? (double?)null : scene.At(begun);
        double? First(Func<Payload, bool> of) =>
            start is { } from
                ? scene.Own.Where(e => scene.At(e) >= from && of(e.Payload)).Select(e => (double?)scene.At(e)).FirstOrDefault()
                : null;
        var packed = First(p => p is Payload.WoundPacked w && w.Wound == attempt!.Wound);
        var dressed = First(p => p is Payload.DressingApplied { Dressing: DressingKind.Pressure } d && d.Wound == attempt!.Wound);
        var slackened = First(p => p is Payload.TourniquetSlackened or Payload.TourniquetRemoved);
        var tries = start is not null;
        Truth? Try(bool shown) => tries ? Kleene.Of(shown) : null;
        Truth? Let(Func<double, bool> shown) => slackened is { } at ? Kleene.Of(shown(at)) : null;
        return
        [
            new(
                1,
                TeachingPoint.DecideAttempt,
                tries ? Kleene.Of(known.FirstOrDefault(s => s.Limb == limb)?.Before(start!.Value)?.Verdict == Verdict.Attempt) : null
            ),
            new(
                2,
                TeachingPoint.LayOut,
                Try(Has(scene, "gauze", "cloth") && Has(scene, "pressure-dressing", "elastic-bandage") && Has(scene, "tourniquet"))
            ),
            new(3, TeachingPoint.TakeSigns, Try(tries && Looks.Age(scene, start!.Value) <= Looks.Fresh)),
            new(4, TeachingPoint.PackTight, Try(packed is not null && !(slackened < packed))),
            new(5, TeachingPoint.PressLong, Try(Pressed(scene, attempt, start, slackened))),
            new(6, TeachingPoint.Dress, Try(dressed is not null && !(slackened < dressed))),
            new(7, TeachingPoint.SlackenSlowly, Let(at => Checks(scene, attempt!.Wound).Any(c => c >= at && c <= at + EyesOn))),
            new(8, TeachingPoint.LeaveLoose, Let(_ => !scene.Own.Any(e => e.Payload is Payload.TourniquetRemoved))),
            new(9, TeachingPoint.WatchClosely, Let(at => IsWatched(scene, attempt!.Wound, at))),
            new(10, TeachingPoint.CatchBleeding, Bled(catches)),
            new(
                11,
                TeachingPoint.LogTimes,
                scene.Own.IsEmpty ? null : Kleene.Of(scene.Own.All(e => (e.Recorded - e.Happened.Latest).TotalSeconds <= AtOnce))
            ),
            new(12, TeachingPoint.TellPeople, Truth.Unknown),
        ];
    }

    private static bool Has(DebriefScene scene, params string[] items) =>
        scene.Record.Any(e =>
            e.Payload is Payload.SuppliesStated { Count: > 0 } s && items.Any(i => s.Item.EndsWith(i, StringComparison.Ordinal))
        );

    private static bool Pressed(DebriefScene scene, Payload.AttemptStarted? attempt, double? start, double? slackened)
    {
        if (attempt is null || start is null)
            return false;
        var own = scene
            .Own.Where(e => scene.At(e) >= start && (slackened is null || scene.At(e) <= slackened))
            .Select(e => e.Payload)
            .ToArray();
        var material = own.OfType<Payload.WoundPacked>().LastOrDefault(p => p.Wound == attempt.Wound)?.Material;
        var minutes = own.OfType<Payload.PressureHeld>().Where(p => p.Wound == attempt.Wound).Sum(p => p.Minutes);
        return scene.Rules.Protocol.Steps.FirstOrDefault(s => s.Id == StepId.Hold) is { } hold
            && material is { } with
            && minutes >= AttemptProgress.Minimum(hold, Wire.Word(with)).TotalMinutes;
    }

    private static IEnumerable<double> Checks(DebriefScene scene, string wound) =>
        scene.Own.Where(e => e.Payload is Payload.BleedingChecked c && c.Wound == wound).Select(scene.At);

    /// <summary>Until it bled, was tied again, or a quarter of an hour was over: no gap, and the pulse beyond felt.</summary>
    private static bool IsWatched(DebriefScene scene, string wound, double from)
    {
        var tied = scene.Own.Where(e => e.Payload is Payload.TourniquetTightened && scene.At(e) > from).Select(scene.At);
        var until = tied.Append(from + Watched).Append(scene.Session.Time).Min();
        var last = from;
        foreach (var at in Checks(scene, wound).Where(c => c > from && c < until).Append(until))
        {
            if (at - last > Watching.Most(scene, last - from))
                return false;
            last = at;
        }

        return until < from + Watched
            || scene.Own.Any(e =>
                e.Payload is Payload.SignsTaken { DistalPulse.Count: > 0 } && scene.At(e) >= from && scene.At(e) <= from + Watched
            );
    }

    private static Truth? Bled(ImmutableArray<Catch> catches)
    {
        var seen = catches.Where(c => c.Seen is not null).ToArray();
        return seen.Length == 0 ? null : Kleene.Of(seen.All(c => c.Took <= Catch.Aim && c.Logged is not null));
    }
}
