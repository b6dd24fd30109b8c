using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>What rules of the long watch may ask about, beside what criteria of the decision may.</summary>
public static class LongInput
{
    public static readonly Input Pain = new("pain", "pain", "of 10", InputType.Number, "ask how strong the pain is, 0 to 10", [], true);

    public static readonly Input HeartRateCourse = Course("heartRateCourse", "course of the heart rate", "count the pulse more often: six counts show a course");
    public static readonly Input RespiratoryRateCourse = Course("breathRateCourse", "course of the breathing rate", "count the breaths more often: six counts show a course");
    public static readonly Input SystolicCourse = Course("systolicCourse", "course of the systolic pressure", "measure the blood pressure more often: six times show a course");
    public static readonly Input Spo2Course = Course("spo2Course", "course of the oxygen saturation", "read the oxygen saturation more often: six times show a course");
    public static readonly Input PainCourse = Course("painCourse", "course of the pain", "ask about the pain more often: six answers show a course");

    /// <summary>mL/kg/h.</summary>
    public static readonly Input UrineFlow = new(
        "urineFlow", "urine", "mL/kg/h", InputType.Number, "measure the urine twice, some hours apart, and enter the mass", [], true);

    /// <summary>mL in the last 24 hours, by any way.</summary>
    public static readonly Input FluidInDay = new("fluidInDay", "fluid in 24 hours", "mL", InputType.Number, "", [], false);

    public static readonly Input HeadWound = new("headWound", "wound of the head", "", InputType.Flag, "look for a head injury", ["false", "true"], false);

    /// <summary>No tourniquet is tight on the limb any more.</summary>
    public static readonly Input Loosened = new("loosened", "tourniquet loosened", "", InputType.Flag, "settle whether the tourniquet is tight", ["false", "true"], false, true);

    public static readonly Input DistalPulse = new(
        "pulseBeyond", "pulse beyond it", "", InputType.Word, "feel for the pulse beyond the dressing", [.. Wire.Words<DistalPulse>()], true, true);

    /// <summary>mL/h over the last measurements.</summary>
    public static readonly Input UrineMlPerHour = new("urineMlPerHour", "urine", "mL/h", InputType.Number, "measure the urine twice, some hours apart", [], true);

    /// <summary>Since the last tourniquet on the limb was loosened.</summary>
    public static readonly Input SinceLoosened = new("sinceLoosened", "since it was loosened", "", InputType.Duration, "", [], false, true);

    /// <summary>A wound that is on no limb with a tourniquet, tight or loose.</summary>
    public static readonly Input WoundElsewhere = new("woundElsewhere", "wound elsewhere", "", InputType.Flag, "look for other wounds", ["false", "true"], false);

    public static readonly Input Pregnant = new("pregnant", "pregnant", "", InputType.Flag, "", ["false", "true"], false);

    /// <summary>A wound of belly, chest, back or pelvis that is more than skin.</summary>
    public static readonly Input BellyOrChest = new("bellyOrChest", "wound of belly or chest", "", InputType.Flag, "look over the whole casualty once: a wound of belly or chest?", ["false", "true"], false);

    /// <summary>A note of the last hours says so.</summary>
    public static readonly Input Vomiting = new("vomiting", "vomiting", "", InputType.Flag, "", ["false", "true"], false);

    /// <summary>Shock is suspected by the signs last seen; unknown where one of them was never looked at.</summary>
    public static readonly Input ShockNow = new("shockNow", "shock suspected", "", InputType.Flag, "take all the signs of shock", ["false", "true"], false);

    /// <summary>The signs seen so far show shock, whatever was not looked at: always known.</summary>
    public static readonly Input ShockShows = new("shockShows", "signs show shock", "", InputType.Flag, "", ["false", "true"], false);

    /// <summary>Since the first wound or tourniquet of the record, else since the record begins.</summary>
    public static readonly Input SinceInjury = new("sinceInjury", "since the injury", "", InputType.Duration, "", [], false);

    /// <summary>A wound bleeds, or bled within the last hours: always known.</summary>
    public static readonly Input BledLately = new("bledLately", "bled within the last hours", "", InputType.Flag, "", ["false", "true"], false);

    /// <summary>All that may be asked about in the long watch.</summary>
    public static readonly ImmutableArray<Input> All =
    [
        .. Input.All, Pain, HeartRateCourse, RespiratoryRateCourse, SystolicCourse, Spo2Course, PainCourse, UrineFlow, FluidInDay,
        HeadWound, Loosened, DistalPulse, UrineMlPerHour, SinceLoosened, WoundElsewhere, Pregnant, BellyOrChest, Vomiting, ShockNow,
        ShockShows, SinceInjury, BledLately,
    ];

    private static Input Course(string name, string title, string look) =>
        new(name, title, "", InputType.Word, look, [.. Wire.Words<SignCourse>()], true);
}
