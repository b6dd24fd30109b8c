using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Farhold;

public enum InputType
{
    Number,

    /// <summary>Seconds inside, ISO 8601 in files.</summary>
    Duration,
    Word,
    Flag,
}

/// <summary>A named value that criteria may ask about. The name is what a verdict lists under what to check.</summary>
/// <param name="Words">For words: all that may be asked for.</param>
/// <param name="Expires">Whether a protocol has to say how long it stays fresh.</param>
/// <param name="Look">What to do to learn it, for a person.</param>
/// <param name="OfLimb">Whether each limb has its own.</param>
public sealed record Input(
    string Name, InputType Type, string Look, ImmutableArray<string> Words, bool Expires, bool OfLimb = false)
{
    public static readonly Input HeartRate = Sign("heartRate", "count the pulse for a full minute");
    public static readonly Input BreathRate = Sign("breathRate", "count the breaths for a full minute");
    public static readonly Input Systolic = Sign("systolic", "measure the blood pressure, or say that there is no cuff", ["no-cuff"]);
    public static readonly Input Spo2 = Sign("spo2", "read the oxygen saturation");
    public static readonly Input TemperatureC = Sign("temperatureC", "take the temperature");
    public static readonly Input CapillaryRefillS = Sign("capillaryRefillS", "press a fingernail and time the return of colour");
    public static readonly Input Mental = Word<Mental>("mental", "talk to the casualty: alert and clear?");
    public static readonly Input RadialPulse = Word<RadialPulse>("radialPulse", "feel the pulse at the wrist");
    public static readonly Input Dizzy = Flag("dizzy", "ask whether they feel dizzy or faint");
    public static readonly Input Pale = Flag("pale", "look at lips and nail beds: pale?");
    public static readonly Input Cool = Flag("cool", "feel hands and forehead: cool?");
    public static readonly Input Clammy = Flag("clammy", "feel the skin: clammy?");
    public static readonly Input AgeYears = new("ageYears", InputType.Number, "ask or estimate the age", [], false);
    public static readonly Input SinceFirstTightened = Clock("sinceFirstTightened");
    public static readonly Input Occluded = Clock("occluded");
    public static readonly Input CurrentStretch = Clock("currentStretch");
    public static readonly Input WoundNature = new(
        "woundNature", InputType.Word, "look what kind of wound it is, and record it", [.. Wire.Words<WoundNature>()], false, true);

    public static readonly Input Bleeding = Word<Bleeding>("bleeding", "look at the wound: does it bleed now?", true);
    public static readonly Input WatchAble = Flag("watchAble", "settle whether someone can watch the wound closely from now on");
    public static readonly Input Packing = new(
        "packing", InputType.Flag, "look whether there is gauze or clean cloth to pack with", Flags, false);

    public static readonly Input PressureDressing = new(
        "pressureDressing", InputType.Flag, "look whether there is a pressure dressing or a bandage for one", Flags, false);

    public static readonly Input LastAttempt = new(
        "lastAttempt", InputType.Word, "", ["none", "under-way", "held", "bled", "abandoned"], false, true);

    public static readonly Input FailedAttempts = new("failedAttempts", InputType.Number, "", [], false, true);
    public static readonly Input SinceFailedAttempt = Clock("sinceFailedAttempt");
    public static readonly Input FurtherAttemptAllowed = new("furtherAttemptAllowed", InputType.Flag, "", Flags, false, true);
    public static readonly Input Oversight = new(
        "oversight", InputType.Flag, "ask someone medically trained, here or by radio, whether to attempt", Flags, true);

    public static readonly Input HelpWithin = new(
        "helpWithin", InputType.Duration, "settle when higher care is expected, at the latest", [], true);

    public static readonly Input RecordWhole = new(
        "recordWhole", InputType.Flag, "see what can't be read in the record, or is missing from it", Flags, false);

    public static readonly ImmutableArray<Input> All =
    [
        HeartRate, BreathRate, Mental, Dizzy, Pale, Cool, Clammy, RadialPulse, Systolic, Spo2, TemperatureC,
        CapillaryRefillS, AgeYears, SinceFirstTightened, Occluded, CurrentStretch, WoundNature, Bleeding, WatchAble,
        Packing, PressureDressing, LastAttempt, FailedAttempts, SinceFailedAttempt, FurtherAttemptAllowed, Oversight,
        HelpWithin, RecordWhole,
    ];

    /// <summary>Whether it is a time that runs on by itself, known from the record as a range at worst.</summary>
    public bool IsClock => Type == InputType.Duration && !Expires;

    /// <summary>There is one object for each input.</summary>
    public bool Equals(Input? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => RuntimeHelpers.GetHashCode(this);

    /// <summary>The input of a name among those a file may ask about, or null.</summary>
    public static Input? Named(string name, ImmutableArray<Input> among) => among.FirstOrDefault(i => i.Name == name);

    private static ImmutableArray<string> Flags => ["false", "true"];

    private static Input Sign(string name, string look, ImmutableArray<string> words = default) =>
        new(name, InputType.Number, look, words.IsDefault ? [] : words, true);

    private static Input Word<T>(string name, string look, bool ofLimb = false)
        where T : struct, Enum => new(name, InputType.Word, look, [.. Wire.Words<T>()], true, ofLimb);

    private static Input Flag(string name, string look) => new(name, InputType.Flag, look, Flags, true);

    private static Input Clock(string name) => new(name, InputType.Duration, "", [], false, true);
}
