using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Finds the current readings of every input in a scene. No reading means unknown.</summary>
internal static class InputReadings
{
    /// <param name="fresh">How long a value of the input stays fresh.</param>
    public static ImmutableArray<Reading> For(Input input, Scene scene, Duration fresh) =>
        input.Name switch
        {
            "bleedingElsewhere" or "trunkWound" or "breathingHard" or "veryCold" or "bloodThinner" or "altitudeM" or "rateSilent" =>
                RestOfCasualty.For(input, scene),
            "ageYears" => CasualtyProfile.Ages(scene.State, scene.Casualty.Judged, scene.Casualty.Questions),
            "sinceFirstTightened" => Clock(scene, scene.Clock?.SinceFirstTightened),
            "occluded" => Clock(scene, scene.Clock?.Occluded),
            "currentStretch" => Clock(scene, scene.Clock?.CurrentStretch),
            "timeOn" => Clock(scene, scene.Clock is { } clock ? TimeOn.Of(clock, scene.Casualty) : null),
            "canFinish" => scene.Clock is { } clock ? [Now(scene, TimeOn.CanFinish(clock, scene.Casualty))] : [],
            "tourniquetTight" => scene.Clock is { Tight: Truth.Met } ? [Now(scene, true)] : [],
            "tourniquetMake" => Make(scene),
            "woundNature" => WorstNature(scene),
            "bleeding" => WorstBleeding(scene, fresh),
            "watchAble" => Observation.Able(scene),
            "watchAlone" => [Now(scene, Observation.IsAlone(scene))],
            "packing" => Known(scene, Materials.ToPackWith(scene)),
            "pressureDressing" => Known(scene, Materials.ToPressWith(scene)),
            "lastAttempt" => [Reading.Of(LastAttempt(scene.Attempts), Happened.At(scene.Now), lasting: true)],
            "failedAttempts" =>
            [
                Reading.Of(scene.Attempts.Count(a => a.Result == AttemptResult.Bled), Happened.At(scene.Now), lasting: true),
            ],
            "sinceFailedAttempt" => Clock(scene, (scene.LastFailed?.Ended ?? scene.LastFailed?.Started)?.Until(scene.Now)),
            "furtherAttemptAllowed" => [Now(scene, AllowedSinceFailure(scene))],
            "oversight" => scene.Casualty.Advice.Refuses
                ? [Now(scene, false)]
                : [.. scene.Casualty.Advice.GivenFor(AllowedActs.Late).Take(1).Select(given => Reading.Of(true, given, lasting: true))],
            "adviceRefuses" => [Now(scene, scene.Casualty.Advice.Refuses)],
            "nobodyReached" => [Now(scene, scene.Casualty.Advice.Unreached)],
            "softSigns" => [Reading.Of(scene.Casualty.Soft.Count, Happened.At(scene.Now), lasting: true)],
            "softSignStays" => [Now(scene, scene.Casualty.Soft is { Count: > 0, Stays: true })],
            "clearLooks" => ClearLooks.Have(scene) ? [Now(scene, true)] : [],
            "helpWithin" => ExpectedHelp.Within(scene),
            "helpSoon" => ExpectedHelp.Soon(scene),
            "otherLimbFirst" => [Now(scene, scene.First is not null)],
            "recordWhole" => scene.Casualty.Doubts.IsEmpty ? [Now(scene, true)] : [],
            _ when input.IsSign => SignReadings.For(input, scene, fresh),
            _ => LongInputReadings.For(input, scene),
        };

    internal static Reading Now(Scene scene, bool flag) => Reading.Of(flag, Happened.At(scene.Now), lasting: true);

    /// <summary>The readings of a sign that may be the newest.</summary>
    internal static ImmutableArray<Reading> Newest(Scene scene, SignRead sign) =>
        Current.Of(scene.State.WithSign(sign), scene.Now, d => sign.Of(d));

    private static ImmutableArray<Reading> Clock(Scene scene, Elapsed? elapsed) =>
        elapsed is { } known ? [new(known.Min.TotalSeconds, known.Max.TotalSeconds, null, Happened.At(scene.Now), Lasting: true)] : [];

    /// <summary>An amputation anywhere on the limb outweighs every other wound there.</summary>
    private static ImmutableArray<Reading> WorstNature(Scene scene)
    {
        var wounds = scene.Clock is { Limb: var limb } ? LimbWounds.On(limb, scene.State, scene.Now).ToArray() : [];
        if (wounds.Length == 0)
            return [];
        var worst = wounds.MinBy(w =>
            w.As<Payload.WoundFound>().Nature switch
            {
                WoundNature.Amputation => 0,
                WoundNature.PartialAmputation => 1,
                WoundNature.Bleeding => 2,
                _ => 3,
            }
        )!;
        return [Reading.Of(Wire.Word(worst.As<Payload.WoundFound>().Nature), worst.When, lasting: true)];
    }

    /// <summary>
    /// The worst of what was last seen at each wound. A fresh look at one wound outweighs every fresh look at another that
    /// saw less, and active bleeding outweighs all; unknown if one of several was never looked at and none is active.
    /// </summary>
    private static ImmutableArray<Reading> WorstBleeding(Scene scene, Duration fresh)
    {
        if (scene.Clock is not { Limb: var limb })
            return [];
        var wounds = LimbWounds.Treated(limb, scene.State, scene.Now).Select(wound => LastSeen(wound, scene)).ToArray();
        bool Fresh(Reading look) => look.When.Until(scene.Now).Max <= fresh;
        var worst = wounds.Where(w => !w.IsEmpty && w.All(Fresh)).Select(w => w.Min(Severity)).DefaultIfEmpty(0).Max();
        var active = wounds.Where(w => !w.IsEmpty && w.Min(Severity) == Severity(Farhold.Records.Bleeding.Active)).ToArray();
        if (active.Length > 0)
            return active.MaxBy(w => w.Min(r => r.When.Earliest));
        return wounds.Length == 0 || wounds.Any(w => w.IsEmpty)
            ? []
            : [.. wounds.SelectMany(w => w).Where(r => !Fresh(r) || Severity(r) >= worst)];
    }

    private static ImmutableArray<Reading> LastSeen(string wound, Scene scene) =>
        Current.Of(scene.State.ChecksOf(wound), scene.Now, d => Reading.Of(Wire.Word(d.As<Payload.BleedingChecked>().Bleeding), d.When));

    private static int Severity(Reading look) => Severity(Wire.Parse<Bleeding>(look.Word!)!.Value);

    private static int Severity(Bleeding bleeding) =>
        bleeding switch
        {
            Bleeding.None => 0,
            Bleeding.Oozing => 1,
            Bleeding.Active => 2,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static ImmutableArray<Reading> Known(Scene scene, Truth truth) =>
        truth == Truth.Unknown ? [] : [Now(scene, truth == Truth.Met)];

    private static ImmutableArray<Reading> Make(Scene scene)
    {
        if (scene.Clock is not { Limb: var limb })
            return [];
        return Current.Of(
            scene.State.Of(Kind.TourniquetTightened),
            scene.Now,
            d =>
                d.As<Payload.TourniquetTightened>() is { Make: { } make } t && t.Limb == limb
                    ? Reading.Of(Wire.Word(make), d.When, lasting: true)
                    : null
        );
    }

    /// <summary>
    /// One that was given up shows nothing of the wound, nor does one that is said to have held and was never begun: what the one
    /// before it showed still stands.
    /// </summary>
    private static string LastAttempt(ImmutableArray<Attempt> attempts) =>
        (attempts.LastOrDefault(ShowsTheWound) ?? attempts.LastOrDefault()) is { } last ? Wire.Word(last.Result) : "none";

    private static bool ShowsTheWound(Attempt attempt) =>
        attempt.Result switch
        {
            AttemptResult.Abandoned => false,
            AttemptResult.Held => attempt.Started != attempt.Ended,
            _ => true,
        };

    /// <summary>
    /// After an attempt that bled: advice given since, or, after the first one, that light, supplies or hands have improved and
    /// somebody said so. Known always.
    /// </summary>
    private static bool AllowedSinceFailure(Scene scene)
    {
        if (scene.LastFailed is not { } failed)
            return true;
        var since = failed.Ended ?? failed.Started;
        return scene.Casualty.Advice.GivenAfter(since, AllowedActs.Further)
            || (
                scene.Attempts.Count(a => a.Result == AttemptResult.Bled) == 1 && scene.Clock is { Limb: var limb } && Improved(limb, since)
            );

        bool Improved(Limb limb, Happened since) =>
            scene
                .State.Of(Kind.TaskDone)
                .Any(t =>
                    t.As<Payload.TaskDone>().Task == $"{TaskNames.Improved}.{Wire.Word(limb)}"
                    && since.SurelyBefore(t.When)
                    && t.When.Latest <= scene.Now
                );
    }
}
