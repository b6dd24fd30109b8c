namespace Farhold.App.Rehearse;

/// <summary>Deeds and answers in words, for somebody who leads a rehearsal by voice.</summary>
public static class LeadWords
{
    /// <summary>A pack with haemostatic gauze; any other is a plain one.</summary>
    public const string PackHaemostatic = "pack-haemostatic";

    public static string Act(string word, Texts texts) =>
        word switch
        {
            "tighten" => texts.LeadTighten,
            "slacken" => texts.LeadSlacken,
            PackHaemostatic => texts.LeadPackHaemostatic,
            "pack" => texts.LeadPackPlain,
            "press" => texts.LeadPress,
            "release" => texts.LeadRelease,
            "dress" => texts.LeadDress,
            "cover" => texts.RehearsalWrap,
            "drink" => texts.LeadDrink,
            "move" => texts.LeadMove,
            _ => Labels.Plain(word),
        };

    /// <summary>What a look showed, as it is said aloud: with what anybody could have counted or seen, and no truth behind it.</summary>
    /// <param name="shown">As a truth file has it: <c>96</c>, <c>120/70</c>, <c>pale cool clammy</c>.</param>
    public static string Aloud(string look, string shown, Texts texts) =>
        (look, shown) switch
        {
            (_, "cannot-tell") => texts.SayCannotTell,
            ("pulse" or "breaths", _) => texts.SayPerMinute(texts.Marked(shown)),
            ("refill", _) => texts.SaySeconds(texts.Marked(shown)),
            ("temperature", _) => texts.SayDegrees(texts.Marked(shown)),
            ("pressure", _) => shown.Split('/') is [var upper, var lower] ? texts.SayPressure(upper, lower) : texts.Marked(shown),
            ("mental", _) => Mind(shown, texts),
            ("dizzy", "yes") => texts.SayFaint,
            ("dizzy", _) => texts.SayNotFaint,
            (_, "none") => texts.SayNoBleeding,
            (_, "oozing") => texts.SayOozing,
            (_, "active") => texts.SayBleeding,
            (_, "strong") => texts.SayStrong,
            (_, "weak") => texts.SayWeak,
            (_, "absent") => texts.SayAbsent,
            ("skin", _) => string.Join(", ", shown.Split(' ').Select(w => Skin(w, texts))),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static string Mind(string word, Texts texts) =>
        Wire.Parse<Mental>(word) is { } mental ? texts.Within(mental) : throw new System.Diagnostics.UnreachableException();

    private static string Skin(string word, Texts texts) =>
        word switch
        {
            "pale" => texts.SayPale,
            "rosy" => texts.SayRosy,
            "cool" => texts.SayCool,
            "warm" => texts.SayWarm,
            "clammy" => texts.SayClammy,
            "dry" => texts.SayDry,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
