using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>Finds the current readings of every input in a scene. No reading means unknown.</summary>
internal static class Looking
{
    /// <param name="fresh">How long a value of the input stays fresh.</param>
    public static ImmutableArray<Reading> For(Input input, Scene scene, Duration fresh) => input.Name switch
    {
        "heartRate" => Sign(scene, SignRead.HeartRate),
        "breathRate" => Sign(scene, SignRead.BreathRate),
        "systolic" => Sign(scene, SignRead.Systolic),
        "spo2" => Sign(scene, SignRead.Spo2),
        "temperatureC" => Sign(scene, SignRead.TemperatureC),
        "capillaryRefillS" => Sign(scene, SignRead.CapillaryRefillS),
        "mental" => Sign(scene, SignRead.Mental),
        "radialPulse" => Sign(scene, SignRead.RadialPulse),
        "dizzy" => Sign(scene, SignRead.Dizzy),
        "pale" => Sign(scene, SignRead.Pale),
        "cool" => Sign(scene, SignRead.Cool),
        "clammy" => Sign(scene, SignRead.Clammy),
        "ageYears" => Current.Of(scene.State.Of(Kind.CasualtyOpened), scene.Now, d =>
            d.As<Payload.CasualtyOpened>().AgeYears is { } age ? Reading.Of(age, d.When, lasting: true) : null),
        "sinceFirstTightened" => Clock(scene, scene.Clock?.SinceFirstTightened),
        "occluded" => Clock(scene, scene.Clock?.Occluded),
        "currentStretch" => Clock(scene, scene.Clock?.CurrentStretch),
        "woundNature" => WorstNature(scene),
        "bleeding" => WorstBleeding(scene, fresh),
        "watchAble" => Current.Of(scene.State.Of(Kind.WatchStated), scene.Now, d =>
            Reading.Of(d.As<Payload.WatchStated>().Able, d.When)),
        "packing" => Stock(scene, Supplies.Packing),
        "pressureDressing" => Stock(scene, [Supplies.PressureDressing]),
        "lastAttempt" => [Reading.Of(
            scene.Attempts is [.., var last] ? Wire.Word(last.Result) : "none", Happened.At(scene.Now), lasting: true)],
        "failedAttempts" => [Reading.Of(
            scene.Attempts.Count(a => a.Result == AttemptResult.Bled), Happened.At(scene.Now), lasting: true)],
        "sinceFailedAttempt" => Clock(scene, (scene.LastFailed?.Ended ?? scene.LastFailed?.Started)?.Until(scene.Now)),
        "furtherAttemptAllowed" => [Reading.Of(AllowedSinceFailure(scene), Happened.At(scene.Now), lasting: true)],
        "oversight" => Advice(scene),
        "helpWithin" => Current.Of(scene.State.Of(Kind.HelpExpected), scene.Now, d => Help(d, scene.Now)),
        "recordWhole" => scene.Doubts.IsEmpty ? [Reading.Of(true, Happened.At(scene.Now), lasting: true)] : [],
        _ => LongLooking.For(input, scene),
    };

    internal static ImmutableArray<Reading> Sign(Scene scene, SignRead sign) =>
        Current.Of(scene.State.Telling(sign), scene.Now, d => sign.Of(d));

    private static ImmutableArray<Reading> Clock(Scene scene, Elapsed? elapsed) =>
        elapsed is { } known
            ? [new(known.Min.TotalSeconds, known.Max.TotalSeconds, null, Happened.At(scene.Now), Lasting: true)]
            : [];

    /// <summary>An amputation anywhere on the limb outweighs every other wound there.</summary>
    private static ImmutableArray<Reading> WorstNature(Scene scene)
    {
        var wounds = scene.Clock is { Limb: var limb } ? LimbWounds.On(limb, scene.State, scene.Now).ToArray() : [];
        if (wounds.Length == 0)
            return [];
        var worst = wounds.MinBy(w => w.As<Payload.WoundFound>().Nature switch
        {
            WoundNature.Amputation => 0,
            WoundNature.PartialAmputation => 1,
            WoundNature.Bleeding => 2,
            _ => 3,
        })!;
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
        var active = wounds.Where(w => !w.IsEmpty && w.Min(Severity) == Severity(Farhold.Bleeding.Active)).ToArray();
        if (active.Length > 0)
            return active.MaxBy(w => w.Min(r => r.When.Earliest));
        return wounds.Length == 0 || wounds.Any(w => w.IsEmpty)
            ? []
            : [.. wounds.SelectMany(w => w).Where(r => !Fresh(r) || Severity(r) >= worst)];
    }

    private static ImmutableArray<Reading> LastSeen(string wound, Scene scene) =>
        Current.Of(scene.State.Of(Kind.BleedingChecked), scene.Now, d =>
            d.As<Payload.BleedingChecked>() is var check && check.Wound == wound
                ? Reading.Of(Wire.Word(check.Bleeding), d.When) : null);

    private static int Severity(Reading look) => Severity(Wire.Parse<Bleeding>(look.Word!)!.Value);

    private static int Severity(Bleeding bleeding) => bleeding switch
    {
        Bleeding.None => 0,
        Bleeding.Oozing => 1,
        Bleeding.Active => 2,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static ImmutableArray<Reading> Stock(Scene scene, IEnumerable<string> items)
    {
        var left = items.Aggregate(Truth.NotMet, (t, item) => t.Or(Supplies.Left(item, scene.State, scene.Now)));
        return left == Truth.Unknown ? [] : [Reading.Of(left == Truth.Met, Happened.At(scene.Now), lasting: true)];
    }

    /// <summary>Advice that says whether it allows an attempt; other advice says nothing of it.</summary>
    private static ImmutableArray<Reading> Advice(Scene scene) =>
        Current.Of(scene.State.Of(Kind.AdviceReceived), scene.Now, d =>
            d.As<Payload.AdviceReceived>() is { Allows: { IsDefault: false } allows }
                ? Reading.Of(allows.Contains("attempt"), d.When) : null);

    /// <summary>Known always, and false unless every reading of the last advice allows an attempt and surely came after the failure.</summary>
    private static bool AllowedSinceFailure(Scene scene)
    {
        if (scene.LastFailed is not { } failed)
            return true;
        var advice = Advice(scene);
        var since = failed.Ended ?? failed.Started;
        return !advice.IsEmpty && advice.All(a => a.Word == "true" && since.SurelyBefore(a.When));
    }

    /// <summary>
    /// Seconds until help, at the latest. Without a latest time the worse side is open: only the likely time bounds it from
    /// below. Once the latest time has passed and nobody came, nothing is known any more.
    /// </summary>
    private static Reading Help(Dated entry, Instant now)
    {
        var help = entry.As<Payload.HelpExpected>();
        var likely = (help.Likely - now).TotalSeconds;
        return help.Latest switch
        {
            null => new(likely, double.PositiveInfinity, null, entry.When),
            { } latest when latest < now => new(double.NegativeInfinity, double.PositiveInfinity, null, entry.When),
            { } latest => Reading.Of((latest - now).TotalSeconds, entry.When),
        };
    }
}
