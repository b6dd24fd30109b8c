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
/// <param name="Titled">See <see cref="Title"/>: asked each time, since the language may have changed.</param>
/// <param name="Unit">Of a number; empty where it has none.</param>
/// <param name="Words">For words: all that may be asked for.</param>
/// <param name="Expires">Whether a protocol has to say how long it stays fresh.</param>
/// <param name="Looked">See <see cref="Look"/>; null where nothing can be done.</param>
/// <param name="OfLimb">Whether each limb has its own.</param>
public sealed record Input(
    string Name,
    Func<string> Titled,
    string Unit,
    InputType Type,
    Func<string>? Looked,
    ImmutableArray<string> Words,
    bool Expires,
    bool OfLimb = false
)
{
    public static readonly Input HeartRate = Sign("heartRate", () => ProtocolTexts.HeartRate, "/min", () => ProtocolTexts.HeartRateLook);
    public static readonly Input RespiratoryRate = Sign(
        "breathRate",
        () => ProtocolTexts.BreathRate,
        "/min",
        () => ProtocolTexts.BreathRateLook
    );
    public static readonly Input Systolic = Sign(
        "systolic",
        () => ProtocolTexts.Systolic,
        "mmHg",
        () => ProtocolTexts.SystolicLook,
        [NoCuff]
    );
    public static readonly Input Spo2 = Sign("spo2", () => ProtocolTexts.Spo2, "%", () => ProtocolTexts.Spo2Look);
    public static readonly Input TemperatureC = Sign(
        "temperatureC",
        () => ProtocolTexts.Temperature,
        "°C",
        () => ProtocolTexts.TemperatureLook
    );
    public static readonly Input CapillaryRefillS = Sign(
        "capillaryRefillS",
        () => ProtocolTexts.Refill,
        "s",
        () => ProtocolTexts.RefillLook
    );
    public static readonly Input Mental = Word<Mental>("mental", () => ProtocolTexts.Mental, () => ProtocolTexts.MentalLook);
    public static readonly Input RadialPulse = Word<RadialPulse>(
        "radialPulse",
        () => ProtocolTexts.RadialPulse,
        () => ProtocolTexts.RadialPulseLook
    );
    public static readonly Input Dizzy = Flag("dizzy", () => ProtocolTexts.Dizzy, () => ProtocolTexts.DizzyLook);
    public static readonly Input Pale = Flag("pale", () => ProtocolTexts.Pale, () => ProtocolTexts.PaleLook);
    public static readonly Input Cool = Flag("cool", () => ProtocolTexts.Cool, () => ProtocolTexts.CoolLook);
    public static readonly Input Clammy = Flag("clammy", () => ProtocolTexts.Clammy, () => ProtocolTexts.ClammyLook);

    /// <summary>Of one look: heart rate over systolic pressure.</summary>
    public static readonly Input ShockIndex = Sign(
        "shockIndex",
        () => ProtocolTexts.ShockIndex,
        "",
        () => ProtocolTexts.ShockIndexLook,
        [NoCuff]
    );
    public static readonly Input AgeYears = new(
        "ageYears",
        () => ProtocolTexts.Age,
        "years",
        InputType.Number,
        () => ProtocolTexts.AgeLook,
        [],
        false
    );
    public static readonly Input SinceFirstTightened = Clock("sinceFirstTightened", () => ProtocolTexts.SinceFirstTightened);
    public static readonly Input Occluded = Clock("occluded", () => ProtocolTexts.WithoutBlood);
    public static readonly Input CurrentStretch = Clock("currentStretch", () => ProtocolTexts.AtAStretch);

    /// <summary>What the limits are held against: since first tightened, or without flow alone where advice may count so.</summary>
    public static readonly Input TimeOn = Clock("timeOn", () => ProtocolTexts.SinceFirstTightened);

    /// <summary>Packing, holding, dressing and the beginning of slackening still fit in before the limit.</summary>
    public static readonly Input CanFinish = OfThisLimb("canFinish", () => ProtocolTexts.CanFinish, null);

    public static readonly Input TourniquetTight = OfThisLimb(
        "tourniquetTight",
        () => ProtocolTexts.TourniquetTight,
        () => ProtocolTexts.TourniquetTightLook
    );

    /// <summary>The make of the tourniquet tightened last.</summary>
    public static readonly Input TourniquetMake = new(
        "tourniquetMake",
        () => ProtocolTexts.TourniquetMake,
        "",
        InputType.Word,
        () => ProtocolTexts.TourniquetMakeLook,
        [.. Wire.Words<TourniquetMake>()],
        false,
        true
    );

    public static readonly Input WoundNature = new(
        "woundNature",
        () => ProtocolTexts.Wound,
        "",
        InputType.Word,
        () => ProtocolTexts.WoundLook,
        [.. Wire.Words<WoundNature>()],
        false,
        true
    );

    public static readonly Input Bleeding = Word<Bleeding>(
        "bleeding",
        () => ProtocolTexts.Bleeding,
        () => ProtocolTexts.BleedingLook,
        true
    );
    public static readonly Input WatchAble = new(
        "watchAble",
        () => ProtocolTexts.WatchAble,
        "",
        InputType.Flag,
        () => ProtocolTexts.WatchAbleLook,
        Flags,
        true
    );
    public static readonly Input Packing = new(
        "packing",
        () => ProtocolTexts.Packing,
        "",
        InputType.Flag,
        () => ProtocolTexts.PackingLook,
        Flags,
        false
    );

    public static readonly Input PressureDressing = new(
        "pressureDressing",
        () => ProtocolTexts.PressureDressing,
        "",
        InputType.Flag,
        () => ProtocolTexts.PressureDressingLook,
        Flags,
        false
    );

    public static readonly Input LastAttempt = new(
        "lastAttempt",
        () => ProtocolTexts.LastAttempt,
        "",
        InputType.Word,
        null,
        ["none", "under-way", "held", "bled", "abandoned"],
        false,
        true
    );

    public static readonly Input FailedAttempts = new(
        "failedAttempts",
        () => ProtocolTexts.FailedAttempts,
        "",
        InputType.Number,
        null,
        [],
        false,
        true
    );
    public static readonly Input SinceFailedAttempt = Clock("sinceFailedAttempt", () => ProtocolTexts.SinceFailedAttempt);
    public static readonly Input FurtherAttemptAllowed = new(
        "furtherAttemptAllowed",
        () => ProtocolTexts.FurtherAttempt,
        "",
        InputType.Flag,
        null,
        Flags,
        false,
        true
    );

    /// <summary>Advice in force: it allows an attempt, or expressly does not.</summary>
    public static readonly Input Oversight = Whole("oversight", () => ProtocolTexts.Oversight, () => ProtocolTexts.OversightLook);

    /// <summary>An express no stands.</summary>
    public static readonly Input AdviceRefuses = Whole("adviceRefuses", () => ProtocolTexts.AdviceRefuses, null);

    /// <summary>Advice was tried for in the last hour, and nobody answered.</summary>
    public static readonly Input NobodyReached = Whole(
        "nobodyReached",
        () => ProtocolTexts.NobodyReached,
        () => ProtocolTexts.NobodyReachedLook
    );

    /// <summary>How many soft signs of shock stand, those that were lifted not counted.</summary>
    public static readonly Input SoftSigns = new("softSigns", () => ProtocolTexts.SoftSigns, "", InputType.Number, null, [], false);

    /// <summary>A soft sign is still there at a second look.</summary>
    public static readonly Input SoftSignStays = Whole("softSignStays", () => ProtocolTexts.SoftSignStays, null);

    /// <summary>The looks at the signs of shock that an attempt needs have been taken, and were clear.</summary>
    public static readonly Input ClearLooks = OfThisLimb("clearLooks", () => ProtocolTexts.ClearLooks, () => ProtocolTexts.ClearLooksLook);

    /// <summary>The casualty's own sign that pulse rate or wrist can't show: a beta-blocker, both arms tied, under two years.</summary>
    public static readonly Input RateSilent = Whole("rateSilent", () => ProtocolTexts.RateSilent, () => ProtocolTexts.AgeLook);

    public static readonly Input BleedingElsewhere = new(
        "bleedingElsewhere",
        () => ProtocolTexts.BleedingElsewhere,
        "",
        InputType.Flag,
        () => ProtocolTexts.BleedingElsewhereLook,
        Flags,
        true,
        true
    );

    public static readonly Input TrunkWound = Flag("trunkWound", () => ProtocolTexts.TrunkWound, () => ProtocolTexts.TrunkWoundLook);

    public static readonly Input BreathingHard = Flag(
        "breathingHard",
        () => ProtocolTexts.BreathingHard,
        () => ProtocolTexts.BreathingHardLook
    );
    public static readonly Input VeryCold = Flag("veryCold", () => ProtocolTexts.VeryCold, () => ProtocolTexts.VeryColdLook);

    public static readonly Input BloodThinner = Whole(
        "bloodThinner",
        () => ProtocolTexts.BloodThinner,
        () => ProtocolTexts.BloodThinnerLook
    );

    /// <summary>Metres, as last noted with a position.</summary>
    public static readonly Input AltitudeM = new(
        "altitudeM",
        () => ProtocolTexts.Altitude,
        "m",
        InputType.Number,
        () => ProtocolTexts.AltitudeLook,
        ["not-noted"],
        false
    );

    /// <summary>Care that can take the limb over comes soon enough that an attempt gains nothing.</summary>
    public static readonly Input HelpSoon = OfThisLimb("helpSoon", () => ProtocolTexts.HelpSoon, () => ProtocolTexts.HelpSoonLook);

    /// <summary>Another limb comes first: one limb at a time.</summary>
    public static readonly Input OtherLimbFirst = OfThisLimb("otherLimbFirst", () => ProtocolTexts.OtherLimbFirst, null);

    /// <summary>Nobody but the casualty watches.</summary>
    public static readonly Input WatchAlone = Whole("watchAlone", () => ProtocolTexts.WatchAlone, null);

    public static readonly Input HelpWithin = new(
        "helpWithin",
        () => ProtocolTexts.HelpWithin,
        "",
        InputType.Duration,
        () => ProtocolTexts.HelpWithinLook,
        [],
        true
    );

    public static readonly Input RecordWhole = new(
        "recordWhole",
        () => ProtocolTexts.RecordWhole,
        "",
        InputType.Flag,
        () => ProtocolTexts.RecordWholeLook,
        Flags,
        false
    );

    public static readonly ImmutableArray<Input> All =
    [
        HeartRate,
        RespiratoryRate,
        Mental,
        Dizzy,
        Pale,
        Cool,
        Clammy,
        RadialPulse,
        Systolic,
        Spo2,
        TemperatureC,
        CapillaryRefillS,
        ShockIndex,
        AgeYears,
        SinceFirstTightened,
        Occluded,
        CurrentStretch,
        TimeOn,
        CanFinish,
        TourniquetTight,
        TourniquetMake,
        WoundNature,
        Bleeding,
        BleedingElsewhere,
        TrunkWound,
        BreathingHard,
        VeryCold,
        BloodThinner,
        AltitudeM,
        SoftSigns,
        SoftSignStays,
        ClearLooks,
        RateSilent,
        WatchAble,
        WatchAlone,
        Packing,
        PressureDressing,
        LastAttempt,
        FailedAttempts,
        SinceFailedAttempt,
        FurtherAttemptAllowed,
        Oversight,
        AdviceRefuses,
        NobodyReached,
        HelpWithin,
        HelpSoon,
        OtherLimbFirst,
        RecordWhole,
    ];

    /// <summary>The word that stands in place of a pressure where there is no way to measure one.</summary>
    public const string NoCuff = "no-cuff";

    /// <summary>The name for people: <c>heart rate</c>.</summary>
    public string Title => Titled();

    /// <summary>What to do to learn it, for a person; empty where nothing can be done.</summary>
    public string Look => Looked?.Invoke() ?? "";

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

    private static Input Sign(string name, Func<string> title, string unit, Func<string> look, ImmutableArray<string> words = default) =>
        new(name, title, unit, InputType.Number, look, words.IsDefault ? [] : words, true) { IsSign = true };

    private static Input Word<T>(string name, Func<string> title, Func<string> look, bool ofLimb = false)
        where T : struct, Enum => new(name, title, "", InputType.Word, look, [.. Wire.Words<T>()], true, ofLimb) { IsSign = !ofLimb };

    private static Input Flag(string name, Func<string> title, Func<string> look) =>
        new(name, title, "", InputType.Flag, look, Flags, true) { IsSign = true };

    /// <summary>A flag of the casualty as a whole that does not go stale by itself.</summary>
    private static Input Whole(string name, Func<string> title, Func<string>? look) =>
        new(name, title, "", InputType.Flag, look, Flags, false);

    private static Input OfThisLimb(string name, Func<string> title, Func<string>? look) =>
        new(name, title, "", InputType.Flag, look, Flags, false, true);

    private static Input Clock(string name, Func<string> title) => new(name, title, "", InputType.Duration, null, [], false, true);
}
