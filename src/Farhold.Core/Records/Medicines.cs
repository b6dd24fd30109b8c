namespace Farhold.Records;

/// <summary>What the medicines and the history of a casualty mean for the decision.</summary>
/// <remarks>
/// Found by parts of names, in whatever words were written; a name in vain costs one question, one that is missed may cost blood.
/// The lists are from memory (common drug classes); trade names are not in them.
/// </remarks>
internal static class Medicines
{
    private static readonly string[] Anticoagulants =
    [
        "warfarin", "apixaban", "rivaroxaban", "edoxaban", "dabigatran", "heparin", "enoxaparin", "dalteparin", "tinzaparin",
        "fondaparinux", "acenocoumarol", "phenprocoumon", "fluindione", "argatroban", "bivalirudin", "anticoag", "blood thin",
    ];

    private static readonly string[] Antiplatelets =
    [
        "aspirin", "acetylsalicyl", "clopidogrel", "prasugrel", "ticagrelor", "dipyridamole", "cilostazol", "ticlopidine",
    ];

    private static readonly string[] ClottingDisease = ["haemophil", "hemophil", "willebrand", "clotting", "thrombocytop"];

    private static readonly string[] SlowingTheHeart = ["olol", "carvedilol", "labetalol", "beta block", "beta-block", "pacemaker"];

    private static readonly string[] Denials = ["no ", "not on ", "never "];

    /// <summary>An anticoagulant, two drugs against platelets, or a clotting disease.</summary>
    public static bool ThinBlood(Payload.CasualtyOpened? person)
    {
        var all = Written(person);
        return Any(all, Anticoagulants) || Any(all, ClottingDisease) || Antiplatelets.Count(a => Any(all, [a])) > 1;
    }

    /// <summary>A beta-blocker or a pacemaker: the heart may not race although blood is lost.</summary>
    public static bool HideTheRate(Payload.CasualtyOpened? person) => Any(Written(person), SlowingTheHeart);

    private static string[] Written(Payload.CasualtyOpened? person) =>
        [.. person?.Medicines is { IsDefault: false } medicines ? medicines : [], person?.History ?? ""];

    private static bool Any(string[] written, string[] names) => written.Any(text => names.Any(name => Says(text, name)));

    /// <summary>Whether a text names it anywhere without denying it just before.</summary>
    private static bool Says(string text, string name)
    {
        for (var at = text.IndexOf(name, StringComparison.OrdinalIgnoreCase); at >= 0;
            at = text.IndexOf(name, at + 1, StringComparison.OrdinalIgnoreCase))
            if (!Denials.Any(d => text.AsSpan(0, at).EndsWith(d, StringComparison.OrdinalIgnoreCase)))
                return true;
        return false;
    }
}
