namespace Farhold;

/// <summary>Inputs of criteria, and their values, in words.</summary>
public static class InputWords
{
    private static readonly Dictionary<string, (string Name, string Unit)> Words = new()
    {
        ["heartRate"] = ("heart rate", "/min"),
        ["breathRate"] = ("breathing rate", "/min"),
        ["mental"] = ("mental state", ""),
        ["dizzy"] = ("dizzy", ""),
        ["pale"] = ("pale", ""),
        ["cool"] = ("skin cool", ""),
        ["clammy"] = ("skin clammy", ""),
        ["radialPulse"] = ("pulse at the wrist", ""),
        ["systolic"] = ("systolic pressure", "mmHg"),
        ["spo2"] = ("oxygen saturation", "%"),
        ["temperatureC"] = ("temperature", "°C"),
        ["capillaryRefillS"] = ("capillary refill", "s"),
        ["ageYears"] = ("age", "years"),
        ["sinceFirstTightened"] = ("since first tightened", ""),
        ["occluded"] = ("without blood flow", ""),
        ["currentStretch"] = ("without blood flow at a stretch", ""),
        ["woundNature"] = ("wound", ""),
        ["bleeding"] = ("bleeding", ""),
        ["watchAble"] = ("someone can watch", ""),
        ["packing"] = ("material to pack with", ""),
        ["pressureDressing"] = ("pressure dressing", ""),
        ["lastAttempt"] = ("last attempt", ""),
        ["failedAttempts"] = ("attempts that bled", ""),
        ["sinceFailedAttempt"] = ("since the attempt that bled", ""),
        ["furtherAttemptAllowed"] = ("another attempt allowed", ""),
        ["oversight"] = ("advice allows an attempt", ""),
        ["helpWithin"] = ("help, at the latest in", ""),
        ["recordWhole"] = ("record whole", ""),
        ["timeOn"] = ("since first tightened", ""),
        ["canFinish"] = ("time left to pack and slacken", ""),
        ["tourniquetTight"] = ("tourniquet tight", ""),
        ["tourniquetMake"] = ("kind of tourniquet", ""),
        ["bleedingElsewhere"] = ("bleeding elsewhere", ""),
        ["trunkWound"] = ("wound or hard blow of the trunk", ""),
        ["breathingHard"] = ("breathing hard", ""),
        ["veryCold"] = ("very cold", ""),
        ["bloodThinner"] = ("blood thinner", ""),
        ["altitudeM"] = ("altitude", "m"),
        ["softSigns"] = ("soft signs of shock", ""),
        ["softSignStays"] = ("soft sign still there", ""),
        ["clearLooks"] = ("two clear looks", ""),
        ["rateSilent"] = ("pulse rate hides blood loss", ""),
        ["watchAlone"] = ("casualty watches alone", ""),
        ["adviceRefuses"] = ("advice expressly allows no attempt", ""),
        ["nobodyReached"] = ("nobody can be reached", ""),
        ["helpSoon"] = ("surgery or clinic soon enough", ""),
        ["otherLimbFirst"] = ("another limb comes first", ""),
        ["pregnant"] = ("pregnant", ""),
        ["bellyOrChest"] = ("wound of belly or chest", ""),
        ["vomiting"] = ("vomiting", ""),
        ["shockNow"] = ("shock suspected", ""),
        ["shockShows"] = ("signs show shock", ""),
        ["sinceInjury"] = ("since the injury", ""),
        ["bledLately"] = ("bled within the last hours", ""),
        ["pain"] = ("pain", "of 10"),
        ["shockIndex"] = ("heart rate over systolic pressure", ""),
        ["heartRateCourse"] = ("course of the heart rate", ""),
        ["breathRateCourse"] = ("course of the breathing rate", ""),
        ["systolicCourse"] = ("course of the systolic pressure", ""),
        ["spo2Course"] = ("course of the oxygen saturation", ""),
        ["painCourse"] = ("course of the pain", ""),
        ["urineFlow"] = ("urine", "mL/kg/h"),
        ["fluidInDay"] = ("fluid in 24 hours", "mL"),
        ["headWound"] = ("wound of the head", ""),
        ["loosened"] = ("tourniquet loosened", ""),
        ["pulseBeyond"] = ("pulse beyond it", ""),
        ["urineMlPerHour"] = ("urine", "mL/h"),
        ["sinceLoosened"] = ("since it was loosened", ""),
        ["woundElsewhere"] = ("wound elsewhere", ""),
    };

    /// <summary><c>heart rate</c>.</summary>
    public static string Name(string input) => Words.TryGetValue(input, out var words) ? words.Name : input;

    /// <summary><c>heart rate 128 /min, 3 min old</c>; too old ones say so.</summary>
    public static string Of(Used used)
    {
        var age = used.Age is { } a ? $", {Say.Elapsed(a)} old" : "";
        return $"{Name(used.Input)} {Value(used)}{age}{(used.Stale ? ", too old to decide by" : "")}{(used.Doubtful ? ", to be looked at again" : "")}";
    }

    private static string Value(Used used) => used.Value switch
    {
        "true" => "yes",
        "false" => "no",
        var word when char.IsAsciiLetter(word[0]) => word.Replace('-', ' '),
        var number when Words.TryGetValue(used.Input, out var words) && words.Unit.Length > 0 => $"{number} {words.Unit}",
        var number => number,
    };
}
