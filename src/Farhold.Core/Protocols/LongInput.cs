using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>What rules of the long watch may ask about, beside what criteria of the decision may.</summary>
public static class LongInput
{
    public static readonly Input Pain = new(
        "pain",
        () => ProtocolTexts.Pain,
        "of 10",
        InputType.Number,
        () => ProtocolTexts.PainLook,
        [],
        true
    );

    public static readonly Input HeartRateCourse = Course(
        "heartRateCourse",
        () => ProtocolTexts.HeartRateCourse,
        () => ProtocolTexts.HeartRateCourseLook
    );
    public static readonly Input RespiratoryRateCourse = Course(
        "breathRateCourse",
        () => ProtocolTexts.BreathRateCourse,
        () => ProtocolTexts.BreathRateCourseLook
    );
    public static readonly Input SystolicCourse = Course(
        "systolicCourse",
        () => ProtocolTexts.SystolicCourse,
        () => ProtocolTexts.SystolicCourseLook
    );
    public static readonly Input Spo2Course = Course("spo2Course", () => ProtocolTexts.Spo2Course, () => ProtocolTexts.Spo2CourseLook);
    public static readonly Input PainCourse = Course("painCourse", () => ProtocolTexts.PainCourse, () => ProtocolTexts.PainCourseLook);

    /// <summary>mL/kg/h.</summary>
    public static readonly Input UrineFlow = new(
        "urineFlow",
        () => ProtocolTexts.Urine,
        "mL/kg/h",
        InputType.Number,
        () => ProtocolTexts.UrineFlowLook,
        [],
        true
    );

    /// <summary>mL in the last 24 hours, by any way.</summary>
    public static readonly Input FluidInDay = new("fluidInDay", () => ProtocolTexts.FluidInDay, "mL", InputType.Number, null, [], false);

    public static readonly Input HeadWound = new(
        "headWound",
        () => ProtocolTexts.HeadWound,
        "",
        InputType.Flag,
        () => ProtocolTexts.HeadWoundLook,
        ["false", "true"],
        false
    );

    /// <summary>No tourniquet is tight on the limb any more.</summary>
    public static readonly Input Loosened = new(
        "loosened",
        () => ProtocolTexts.Loosened,
        "",
        InputType.Flag,
        () => ProtocolTexts.LoosenedLook,
        ["false", "true"],
        false,
        true
    );

    public static readonly Input DistalPulse = new(
        "pulseBeyond",
        () => ProtocolTexts.PulseBelow,
        "",
        InputType.Word,
        () => ProtocolTexts.PulseBelowLook,
        [.. Wire.Words<DistalPulse>()],
        true,
        true
    );

    /// <summary>mL/h over the last measurements.</summary>
    public static readonly Input UrineMlPerHour = new(
        "urineMlPerHour",
        () => ProtocolTexts.Urine,
        "mL/h",
        InputType.Number,
        () => ProtocolTexts.UrineHourLook,
        [],
        true
    );

    /// <summary>Since the last tourniquet on the limb was loosened.</summary>
    public static readonly Input SinceLoosened = new(
        "sinceLoosened",
        () => ProtocolTexts.SinceLoosened,
        "",
        InputType.Duration,
        null,
        [],
        false,
        true
    );

    /// <summary>A wound that is on no limb with a tourniquet, tight or loose.</summary>
    public static readonly Input WoundElsewhere = new(
        "woundElsewhere",
        () => ProtocolTexts.WoundElsewhere,
        "",
        InputType.Flag,
        () => ProtocolTexts.WoundElsewhereLook,
        ["false", "true"],
        false
    );

    public static readonly Input Pregnant = new(
        "pregnant",
        () => ProtocolTexts.Pregnant,
        "",
        InputType.Flag,
        null,
        ["false", "true"],
        false
    );

    /// <summary>A wound of belly, chest, back or pelvis that is more than skin.</summary>
    public static readonly Input BellyOrChest = new(
        "bellyOrChest",
        () => ProtocolTexts.BellyOrChest,
        "",
        InputType.Flag,
        () => ProtocolTexts.BellyOrChestLook,
        ["false", "true"],
        false
    );

    /// <summary>A note of the last hours says so.</summary>
    public static readonly Input Vomiting = new(
        "vomiting",
        () => ProtocolTexts.Vomiting,
        "",
        InputType.Flag,
        null,
        ["false", "true"],
        false
    );

    /// <summary>Shock is suspected by the signs last seen; unknown where one of them was never looked at.</summary>
    public static readonly Input ShockNow = new(
        "shockNow",
        () => ProtocolTexts.ShockNow,
        "",
        InputType.Flag,
        () => ProtocolTexts.ShockNowLook,
        ["false", "true"],
        false
    );

    /// <summary>The signs seen so far show shock, whatever was not looked at: always known.</summary>
    public static readonly Input ShockShows = new(
        "shockShows",
        () => ProtocolTexts.ShockShows,
        "",
        InputType.Flag,
        null,
        ["false", "true"],
        false
    );

    /// <summary>Since the first wound or tourniquet of the record, else since the record begins.</summary>
    public static readonly Input SinceInjury = new("sinceInjury", () => ProtocolTexts.SinceInjury, "", InputType.Duration, null, [], false);

    /// <summary>A wound bleeds, or bled within the last hours: always known.</summary>
    public static readonly Input BledLately = new(
        "bledLately",
        () => ProtocolTexts.BledLately,
        "",
        InputType.Flag,
        null,
        ["false", "true"],
        false
    );

    /// <summary>A wound goes through the skin; no reading where nobody said whether it does.</summary>
    public static readonly Input OpenWound = OfWounds("openWound", () => ProtocolTexts.OpenWound, () => ProtocolTexts.OpenWoundLook);

    public static readonly Input BrokenBone = OfWounds("brokenBone", () => ProtocolTexts.BrokenBone, null);
    public static readonly Input EyeWound = OfWounds("eyeWound", () => ProtocolTexts.EyeWound, null);
    public static readonly Input Burnt = OfWounds("burnt", () => ProtocolTexts.Burn, null);
    public static readonly Input Amputated = OfWounds("amputated", () => ProtocolTexts.Amputation, null);

    /// <summary>Bled so that it took a tourniquet, or bled on.</summary>
    public static readonly Input SevereBleeding = OfWounds("severeBleeding", () => ProtocolTexts.SevereBleeding, null);

    /// <summary>All that may be asked about in the long watch.</summary>
    public static readonly ImmutableArray<Input> All =
    [
        .. Input.All,
        Pain,
        HeartRateCourse,
        RespiratoryRateCourse,
        SystolicCourse,
        Spo2Course,
        PainCourse,
        UrineFlow,
        FluidInDay,
        HeadWound,
        Loosened,
        DistalPulse,
        UrineMlPerHour,
        SinceLoosened,
        WoundElsewhere,
        Pregnant,
        BellyOrChest,
        Vomiting,
        ShockNow,
        ShockShows,
        SinceInjury,
        BledLately,
        OpenWound,
        BrokenBone,
        EyeWound,
        Burnt,
        Amputated,
        SevereBleeding,
    ];

    private static Input OfWounds(string name, Func<string> title, Func<string>? look) =>
        new(name, title, "", InputType.Flag, look, ["false", "true"], false);

    private static Input Course(string name, Func<string> title, Func<string> look) =>
        new(name, title, "", InputType.Word, look, [.. Wire.Words<SignCourse>()], true);
}
