using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Finds the current readings of the inputs of the long watch. No reading means unknown.</summary>
internal static class LongInputReadings
{
    /// <summary>A course is told over the last twelve hours (design): what was longer ago says little of now.</summary>
    private static readonly Duration CourseOver = Duration.FromHours(12);

    /// <summary>For this long after it stopped, bleeding explains a fast pulse, fast breathing and a low pressure (design).</summary>
    private static readonly Duration BleedingExplains = Duration.FromHours(6);

    public static ImmutableArray<Reading> For(Input input, Scene scene) =>
        input.Name switch
        {
            "pain" => InputReadings.Newest(scene, SignRead.Pain),
            "heartRateCourse" => Course(scene, s => s.HeartRate, SmallestChange.HeartRate),
            "breathRateCourse" => Course(scene, s => s.RespiratoryRate, SmallestChange.RespiratoryRate),
            "systolicCourse" => Course(scene, s => s.Systolic, SmallestChange.Systolic),
            "spo2Course" => Course(scene, s => s.Spo2, SmallestChange.Spo2),
            "painCourse" => Course(scene, s => s.Pain, SmallestChange.Pain),
            "urineFlow" => Urine(scene),
            "fluidInDay" => Fluid(scene),
            "headWound" => [Now(scene, CasualtyProfile.HasHeadWound(scene.State, scene.Now))],
            "loosened" => scene.Clock is { Tight: not Truth.Unknown and var tight } ? [Now(scene, tight == Truth.NotMet)] : [],
            "pulseBeyond" => Beyond(scene),
            "urineMlPerHour" => Farhold.Evaluation.UrineFlow.Of(scene.State, scene.Now) is { } flow
                ? [new(flow.MlPerHour.Low, flow.MlPerHour.High, null, flow.Last)]
                : [],
            "sinceLoosened" => Since(scene),
            "woundElsewhere" => [Now(scene, Elsewhere(scene))],
            "pregnant" => [Now(scene, CasualtyProfile.Pregnancy(scene.State, scene.Now) == Truth.Met)],
            "bellyOrChest" => RestOfCasualty.For(Input.TrunkWound, scene) is { IsEmpty: false } trunk
                ? [Now(scene, trunk.Any(r => r.Word == "true"))]
                : [],
            "vomiting" => [Now(scene, Vomited(scene))],
            "shockNow" => ShockPicture.BySignsSeen(scene.Casualty) is not Truth.Unknown and var shock
                ? [Now(scene, shock == Truth.Met)]
                : [],
            "shockShows" => [Now(scene, ShockPicture.BySignsSeen(scene.Casualty) == Truth.Met)],
            "sinceInjury" => SinceInjury(scene),
            "bledLately" => [Now(scene, BledLately(scene))],
            "openWound" => WoundFacts.Open(scene.State, scene.Now) is not Truth.Unknown and var open ? [Now(scene, open == Truth.Met)] : [],
            "brokenBone" => [Now(scene, WoundFacts.Fracture(scene.State, scene.Now))],
            "eyeWound" => [Now(scene, WoundFacts.Eye(scene.State, scene.Now))],
            "burnt" => [Now(scene, WoundFacts.Burn(scene.State, scene.Now))],
            "amputated" => [Now(scene, WoundFacts.Amputation(scene.State, scene.Now))],
            "severeBleeding" => [Now(scene, WoundFacts.BledSeverely(scene.State, scene.Now))],
            _ => throw new System.Diagnostics.UnreachableException(input.Name),
        };

    /// <summary>By the notes of the last four hours (design).</summary>
    private static bool Vomited(Scene scene)
    {
        var notes = scene.State.Of(Kind.Note);
        for (var i = notes.Length - 1; i >= 0 && notes[i].When.Until(scene.Now).Min < Duration.FromHours(4); i--)
            if (
                notes[i].When.Earliest <= scene.Now
                && notes[i].As<Payload.NoteWritten>().Text.Contains("vomit", StringComparison.OrdinalIgnoreCase)
            )
                return true;
        return false;
    }

    private static ImmutableArray<Reading> SinceInjury(Scene scene)
    {
        var injuries = WoundFacts.Injuries(scene.State, scene.Now).ToArray();
        var first = injuries.Length > 0 ? injuries : [.. scene.State.All.Where(e => e.When.Earliest <= scene.Now)];
        if (first.Length == 0)
            return [];
        var since = new Happened(first.Min(e => e.When.Earliest), first.Min(e => e.When.Latest)).Until(scene.Now);
        return [new(since.Min.TotalSeconds, since.Max.TotalSeconds, null, Happened.At(scene.Now), Lasting: true)];
    }

    /// <summary>
    /// Seen to bleed, tightened for bleeding, or bled at an attempt, within the last hours; or bleeding when last looked at.
    /// </summary>
    private static bool BledLately(Scene scene)
    {
        var checks = scene.State.Of(Kind.BleedingChecked).Where(b => b.When.Earliest <= scene.Now).ToArray();
        return checks.Where(IsActive).Any(Lately)
            || checks.GroupBy(b => b.As<Payload.BleedingChecked>().Wound).Any(w => IsActive(w.Last()))
            || scene
                .State.Of(Kind.TourniquetTightened)
                .Any(t =>
                    Lately(t) && t.As<Payload.TourniquetTightened>().Why is not (TighteningReason.Precaution or TighteningReason.ReSited)
                )
            || scene.State.Of(Kind.AttemptEnded).Any(e => Lately(e) && e.As<Payload.AttemptEnded>().Outcome == AttemptOutcome.Bled);

        bool Lately(Dated entry) => entry.When.Earliest <= scene.Now && entry.When.Until(scene.Now).Min < BleedingExplains;
        static bool IsActive(Dated check) => check.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active;
    }

    private static Reading Now(Scene scene, bool flag) => Reading.Of(flag, Happened.At(scene.Now), lasting: true);

    private static ImmutableArray<Reading> Course(Scene scene, Func<Payload.SignsTaken, double?> sign, double smallestChange)
    {
        var seen = SignsSeen.Course(scene.State, scene.Now, sign).Where(s => s.When.Earliest >= scene.Now - CourseOver).ToArray();
        if (seen.Length == 0)
            return [];
        var course = Farhold.Signs.Course.Of([.. seen.Select(s => (Middle(s.When, scene.Now), s.Value))], smallestChange);
        return course == SignCourse.TooFew ? [] : [Reading.Of(Wire.Word(course), seen[^1].When)];
    }

    private static double Middle(Happened when, Instant now) => -((now - when.Earliest).TotalHours + (now - when.Latest).TotalHours) / 2;

    private static ImmutableArray<Reading> Urine(Scene scene)
    {
        var mass = scene.Casualty.Person?.MassKg;
        if (mass is null || Farhold.Evaluation.UrineFlow.Of(scene.State, scene.Now) is not { } flow)
            return [];
        var perKg = flow.MlPerKgHour(mass.Value);
        return [new(perKg.Low, perKg.High, null, flow.Last)];
    }

    private static ImmutableArray<Reading> Fluid(Scene scene)
    {
        var day = FluidBalance.Of(scene.State, scene.Now).Single(s => s.Over == Duration.FromHours(24)).InMl;
        return [new(day.Low, day.High, null, Happened.At(scene.Now), Lasting: true)];
    }

    /// <summary>On a loosened limb only what was felt since flow came back: before that there was no pulse to feel.</summary>
    private static ImmutableArray<Reading> Beyond(Scene scene)
    {
        if (scene.Clock is not { } clock)
            return [];
        var since = clock is { Tight: Truth.NotMet, Stretches: [.., var last] } ? last.To : Instant.MinValue;
        var sign = SignRead.DistalPulse(clock.Limb);
        return Current.Of(scene.State.WithSign(sign), scene.Now, d => d.When.Earliest >= since ? sign.Of(d) : null);
    }

    private static ImmutableArray<Reading> Since(Scene scene)
    {
        if (scene.Clock is not { } clock || clock.Loosened() is not { } loosened)
            return [];
        var since = loosened.Until(scene.Now);
        return [new(since.Min.TotalSeconds, since.Max.TotalSeconds, null, Happened.At(scene.Now), Lasting: true)];
    }

    private static bool Elsewhere(Scene scene)
    {
        var limbs = Enum.GetValues<Limb>().Where(l => scene.Casualty.Clock(l) is not null).ToArray();
        var treated = limbs.SelectMany(l => LimbWounds.Treated(l, scene.State, scene.Now)).ToHashSet();
        return scene
            .State.Of(Kind.WoundFound)
            .Any(w =>
                w.When.Earliest <= scene.Now
                && w.As<Payload.WoundFound>() is var found
                && !treated.Contains(found.Wound)
                && !(found.Limb is { } limb && limbs.Contains(limb))
            );
    }
}
