using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Farhold.Protocols;

public enum InputType
{
    Number,

    /// <summary>Seconds inside, ISO 8601 in files.</summary>
    Duration,
    Word,
    Flag,
}

/// <summary>A named value that criteria may ask about. The name is what a verdict lists under what to check.</summary>
/// <param name="Title">The same for people: <c>heart rate</c>.</param>
/// <param name="Unit">Of a number; empty where it has none.</param>
/// <param name="Words">For words: all that may be asked for.</param>
/// <param name="Expires">Whether a protocol has to say how long it stays fresh.</param>
/// <param name="Look">What to do to learn it, for a person.</param>
/// <param name="OfLimb">Whether each limb has its own.</param>
public sealed record Input(
    string Name, string Title, string Unit, InputType Type, string Look, ImmutableArray<string> Words, bool Expires, bool OfLimb = false)
{
    public static readonly Input HeartRate = Sign("heartRate", "heart rate", "/min", "count the pulse for a full minute");
    public static readonly Input RespiratoryRate = Sign("breathRate", "breathing rate", "/min", "count the breaths for a full minute");
    public static readonly Input Systolic = Sign("systolic", "systolic pressure", "mmHg", "measure the blood pressure; without a cuff say so, and time the refill of a warm finger", [NoCuff]);
    public static readonly Input Spo2 = Sign("spo2", "oxygen saturation", "%", "read the oxygen saturation");
    public static readonly Input TemperatureC = Sign("temperatureC", "temperature", "°C", "take the temperature");
    public static readonly Input CapillaryRefillS = Sign("capillaryRefillS", "capillary refill", "s", "press a warm fingernail and time the return of colour");
    public static readonly Input Mental = Word<Mental>("mental", "mental state", "talk to the casualty: alert and clear?");
    public static readonly Input RadialPulse = Word<RadialPulse>("radialPulse", "pulse at the wrist", "feel the pulse at the wrist");
    public static readonly Input Dizzy = Flag("dizzy", "dizzy", "ask whether they feel dizzy or faint");
    public static readonly Input Pale = Flag("pale", "pale", "look at the lips and inside the lower eyelid: pale?");
    public static readonly Input Cool = Flag("cool", "skin cool", "feel the skin of chest or belly, not of the hands: cool?");
    public static readonly Input Clammy = Flag("clammy", "skin clammy", "feel the skin of chest or forehead: clammy?");
    /// <summary>Of one look: heart rate over systolic pressure.</summary>
    public static readonly Input ShockIndex = Sign("shockIndex", "heart rate over systolic pressure", "", "take heart rate and blood pressure together", [NoCuff]);
    public static readonly Input AgeYears = new("ageYears", "age", "years", InputType.Number, "ask or estimate the age", [], false);
    public static readonly Input SinceFirstTightened = Clock("sinceFirstTightened", "since first tightened");
    public static readonly Input Occluded = Clock("occluded", "without blood flow");
    public static readonly Input CurrentStretch = Clock("currentStretch", "without blood flow at a stretch");

    /// <summary>What the limits are held against: since first tightened, or without flow alone where advice may count so.</summary>
    public static readonly Input TimeOn = Clock("timeOn", "since first tightened");

    /// <summary>Packing, holding, dressing and the beginning of slackening still fit in before the limit.</summary>
    public static readonly Input CanFinish = OfThisLimb("canFinish", "time left to pack and slacken", "");

    public static readonly Input TourniquetTight = OfThisLimb("tourniquetTight", "tourniquet tight", "feel whether the tourniquet is tight");

    /// <summary>The make of the tourniquet tightened last.</summary>
    public static readonly Input TourniquetMake = new(
        "tourniquetMake", "kind of tourniquet", "", InputType.Word, "look what kind of tourniquet it is", [.. Wire.Words<TourniquetMake>()], false, true);

    public static readonly Input WoundNature = new(
        "woundNature", "wound", "", InputType.Word, "look what kind of wound it is, and record it", [.. Wire.Words<WoundNature>()], false, true);

    public static readonly Input Bleeding = Word<Bleeding>("bleeding", "bleeding", "look at the wound: does it bleed now?", true);
    public static readonly Input WatchAble = new(
        "watchAble", "someone can watch", "", InputType.Flag, "settle whether someone can watch the wound closely from now on", Flags, true);
    public static readonly Input Packing = new(
        "packing", "material to pack with", "", InputType.Flag, "look whether there is gauze or clean cloth to pack with", Flags, false);

    public static readonly Input PressureDressing = new(
        "pressureDressing", "pressure dressing", "", InputType.Flag, "look whether there is a pressure dressing or a bandage for one", Flags, false);

    public static readonly Input LastAttempt = new(
        "lastAttempt", "last attempt", "", InputType.Word, "", ["none", "under-way", "held", "bled", "abandoned"], false, true);

    public static readonly Input FailedAttempts = new("failedAttempts", "attempts that bled", "", InputType.Number, "", [], false, true);
    public static readonly Input SinceFailedAttempt = Clock("sinceFailedAttempt", "since the attempt that bled");
    public static readonly Input FurtherAttemptAllowed = new("furtherAttemptAllowed", "another attempt allowed", "", InputType.Flag, "", Flags, false, true);

    /// <summary>Advice in force: it allows an attempt, or expressly does not.</summary>
    public static readonly Input Oversight = Whole("oversight", "advice allows an attempt", "ask someone medically trained, here or by radio, whether to attempt");

    /// <summary>An express no stands.</summary>
    public static readonly Input AdviceRefuses = Whole("adviceRefuses", "advice expressly allows no attempt", "");

    /// <summary>Advice was tried for in the last hour, and nobody answered.</summary>
    public static readonly Input NobodyReached = Whole("nobodyReached", "nobody can be reached", "try to reach advice, and enter whether anybody answered");

    /// <summary>How many soft signs of shock stand, those that were lifted not counted.</summary>
    public static readonly Input SoftSigns = new("softSigns", "soft signs of shock", "", InputType.Number, "", [], false);

    /// <summary>A soft sign is still there at a second look.</summary>
    public static readonly Input SoftSignStays = Whole("softSignStays", "soft sign still there", "");

    /// <summary>The looks at the signs of shock that an attempt needs have been taken, and were clear.</summary>
    public static readonly Input ClearLooks = OfThisLimb("clearLooks", "two clear looks", "take all the signs of shock again");

    /// <summary>The casualty's own sign that pulse rate or wrist can't show: a beta-blocker, both arms tied, under two years.</summary>
    public static readonly Input RateSilent = Whole("rateSilent", "pulse rate hides blood loss", "ask or estimate the age");

    public static readonly Input BleedingElsewhere = new(
        "bleedingElsewhere", "bleeding elsewhere", "", InputType.Flag, "look over the whole casualty once: is anything else bleeding?", Flags, true, true);

    public static readonly Input TrunkWound = Flag(
        "trunkWound", "wound or hard blow of the trunk", "look over the whole casualty once: a deep wound or hard blow of chest, belly, back or pelvis?");

    public static readonly Input BreathingHard = Flag("breathingHard", "breathing hard", "look over the whole casualty once: hard work to breathe?");
    public static readonly Input VeryCold = Flag(
        "veryCold", "very cold", "look over the whole casualty once: cold under the clothes, no longer shivering, mumbling?");

    public static readonly Input BloodThinner = Whole("bloodThinner", "blood thinner", "ask about blood thinners and clotting disease");

    /// <summary>Metres, as last noted with a position.</summary>
    public static readonly Input AltitudeM = new("altitudeM", "altitude", "m", InputType.Number, "note the position with its altitude", ["not-noted"], false);

    /// <summary>Care that can take the limb over comes soon enough that an attempt gains nothing.</summary>
    public static readonly Input HelpSoon = OfThisLimb(
        "helpSoon", "surgery or clinic soon enough", "ask what kind of help comes (hands, clinic or surgery), and when at the latest");

    /// <summary>Another limb comes first: one limb at a time.</summary>
    public static readonly Input OtherLimbFirst = OfThisLimb("otherLimbFirst", "another limb comes first", "");

    /// <summary>Nobody but the casualty watches.</summary>
    public static readonly Input WatchAlone = Whole("watchAlone", "casualty watches alone", "");

    public static readonly Input HelpWithin = new(
        "helpWithin", "help, at the latest in", "", InputType.Duration, "settle when higher care is expected, at the latest", [], true);

    public static readonly Input RecordWhole = new(
        "recordWhole", "record whole", "", InputType.Flag, "see what can't be read in the record, or is missing from it", Flags, false);

    public static readonly ImmutableArray<Input> All =
    [
        HeartRate, RespiratoryRate, Mental, Dizzy, Pale, Cool, Clammy, RadialPulse, Systolic, Spo2, TemperatureC,
        CapillaryRefillS, ShockIndex, AgeYears, SinceFirstTightened, Occluded, CurrentStretch, TimeOn, CanFinish, TourniquetTight,
        TourniquetMake, WoundNature, Bleeding, BleedingElsewhere, TrunkWound, BreathingHard, VeryCold, BloodThinner, AltitudeM,
        SoftSigns, SoftSignStays, ClearLooks, RateSilent, WatchAble, WatchAlone, Packing, PressureDressing, LastAttempt, FailedAttempts,
        SinceFailedAttempt, FurtherAttemptAllowed, Oversight, AdviceRefuses, NobodyReached, HelpWithin, HelpSoon, OtherLimbFirst, RecordWhole,
    ];

    /// <summary>The word that stands in place of a pressure where there is no way to measure one.</summary>
    public const string NoCuff = "no-cuff";

    /// <summary>Read off the casualty at a look: of several readings at one look the worse one counts.</summary>
    public bool IsSign { get; init; }

    /// <summary>Whether it is a time that runs on by itself, known from the record as a range at worst.</summary>
    public bool IsClock => Type == InputType.Duration && !Expires;

    /// <summary>There is one object for each input.</summary>
    public bool Equals(Input? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => RuntimeHelpers.GetHashCode(this);

    /// <summary>The input of a name among those a file may ask about, or null.</summary>
    public static Input? Named(string name, ImmutableArray<Input> among) => among.FirstOrDefault(i => i.Name == name);

    private static ImmutableArray<string> Flags => ["false", "true"];

    private static Input Sign(string name, string title, string unit, string look, ImmutableArray<string> words = default) =>
        new(name, title, unit, InputType.Number, look, words.IsDefault ? [] : words, true) { IsSign = true };

    private static Input Word<T>(string name, string title, string look, bool ofLimb = false)
        where T : struct, Enum => new(name, title, "", InputType.Word, look, [.. Wire.Words<T>()], true, ofLimb) { IsSign = !ofLimb };

    private static Input Flag(string name, string title, string look) => new(name, title, "", InputType.Flag, look, Flags, true) { IsSign = true };

    /// <summary>A flag of the casualty as a whole that does not go stale by itself.</summary>
    private static Input Whole(string name, string title, string look) => new(name, title, "", InputType.Flag, look, Flags, false);

    private static Input OfThisLimb(string name, string title, string look) => new(name, title, "", InputType.Flag, look, Flags, false, true);

    private static Input Clock(string name, string title) => new(name, title, "", InputType.Duration, "", [], false, true);
}
