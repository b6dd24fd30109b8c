using System.Buffers;

namespace Farhold.Records;

/// <summary>What the medicines and the history of a casualty mean for the decision, and for drugs.</summary>
/// <remarks>
/// Found by parts of names (<see cref="MedicineNames"/>, <see cref="IllnessNames"/>), in whatever words were written; a name in vain
/// costs one question, one that is missed may cost blood.
/// </remarks>
internal static class Medicines
{
    private static readonly string[] Denials = ["no ", "not on ", "never "];

    /// <summary>Words that begin a list in which everything may be denied.</summary>
    private static readonly string[] Openers = ["no ", "not ", "never ", "denies ", "without ", "neither "];

    private static readonly SearchValues<char> ClauseEnds = SearchValues.Create(".;:\n!?");

    /// <summary>A history that was asked for and holds nothing more.</summary>
    private static readonly string[] NothingMore =
    [
        "none",
        "nothing",
        "healthy",
        "no illness",
        "no other",
        "no known illness",
        "no past illness",
        "no medical",
        "nil",
    ];

    private static readonly string[] NotKnown = ["unknown", "not known", "unsure", "not sure", "can't say", "cannot say"];

    /// <summary>An anticoagulant, two drugs against platelets, or a clotting disease.</summary>
    public static bool ThinBlood(Payload.CasualtyOpened? person)
    {
        var all = Written(person);
        return Any(all, MedicineNames.All[MedicineClass.Anticoagulant])
            || Any(all, IllnessNames.ClottingDisease)
            || MedicineNames.All[MedicineClass.Antiplatelet].Count(a => Any(all, [a])) > 1;
    }

    /// <summary>A beta-blocker or a pacemaker: the heart may not race although blood is lost.</summary>
    public static bool HideTheRate(Payload.CasualtyOpened? person) => Any(Written(person), MedicineNames.All[MedicineClass.SlowsTheHeart]);

    /// <summary>Whether the casualty takes such a medicine; unknown where nobody asked, or a name that was written is not known.</summary>
    public static Truth Takes(Payload.CasualtyOpened? person, MedicineClass kind)
    {
        var said = Said(Written(person), MedicineNames.All[kind]);
        if (said is Truth.Met or Truth.Unknown)
            return said.Value;
        return person?.Medicines is { IsDefault: false } listed && !listed.Any(IsOpen) ? Truth.NotMet : Truth.Unknown;
    }

    /// <summary>Whether the casualty has or had an illness; a history that does not speak of it is no answer unless it says so.</summary>
    public static Truth Has(Payload.CasualtyOpened? person, Illness illness)
    {
        if (Said(Written(person), IllnessNames.All[illness]) is { } said)
            return said;
        var history = person?.History ?? "";
        return NothingMore.Any(n => IsWord(history, n)) && !Contains(history, NotKnown) ? Truth.NotMet : Truth.Unknown;
    }

    /// <summary>The medicines written down of which nothing is known; null where nobody asked.</summary>
    public static string[]? Strange(Payload.CasualtyOpened? person) =>
        person?.Medicines is { IsDefault: false } listed ? [.. listed.Where(IsOpen)] : null;

    /// <summary>Whether allergies were asked for: a list that holds no more than a doubt is no answer.</summary>
    public static bool AllergiesKnown(Payload.CasualtyOpened? person) =>
        person?.Allergies is { IsDefault: false } allergies && !allergies.Any(a => Contains(a, NotKnown) || a.Trim() is "?" or "");

    /// <summary>Whether a name, as written in an entry, is a medicine of a kind.</summary>
    public static bool Is(string name, MedicineClass kind) => Contains(name, MedicineNames.All[kind]);

    private static bool IsOpen(string medicine) =>
        Contains(medicine, NotKnown)
        || !(
            MedicineNames.Knows(medicine)
            || medicine.Trim().ToUpperInvariant() is "NONE" or "NO" or "NIL" or "NOTHING" or "-"
            || medicine.Trim().StartsWith("no medicine", StringComparison.OrdinalIgnoreCase)
            || medicine.Trim().StartsWith("none", StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>Null where no text has any of the names; unknown where they stand in a list that begins with a no.</summary>
    private static Truth? Said(string[] written, IEnumerable<string> names)
    {
        Truth? all = null;
        foreach (var text in written)
        foreach (var name in names)
            for (
                var at = text.IndexOf(name, StringComparison.OrdinalIgnoreCase);
                at >= 0;
                at = text.IndexOf(name, at + 1, StringComparison.OrdinalIgnoreCase)
            )
            {
                var one =
                    IsDenied(text, at) ? Truth.NotMet
                    : Openers.Any(o => Clause(text, at).StartsWith(o, StringComparison.OrdinalIgnoreCase)) ? Truth.Unknown
                    : Truth.Met;
                all = all is { } known ? known.Or(one) : one;
            }

        return all;
    }

    private static string Clause(string text, int at)
    {
        var from = text.AsSpan(0, at).LastIndexOfAny(ClauseEnds) + 1;
        return text[from..at].TrimStart();
    }

    /// <summary>Whether it stands there as a word of its own, without a "not" before it.</summary>
    private static bool IsWord(string text, string word)
    {
        var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase);
        var end = at + word.Length;
        return at >= 0
            && (at == 0 || !char.IsLetter(text[at - 1]))
            && (end == text.Length || !char.IsLetter(text[end]))
            && !text.AsSpan(0, at).EndsWith("not ", StringComparison.OrdinalIgnoreCase);
    }

    private static string[] Written(Payload.CasualtyOpened? person) =>
        [.. person?.Medicines is { IsDefault: false } medicines ? medicines : [], person?.History ?? ""];

    private static bool Any(string[] written, IEnumerable<string> names) => written.Any(text => names.Any(name => Says(text, name)));

    private static bool Contains(string text, IEnumerable<string> words) =>
        words.Any(w => text.Contains(w, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a text names it anywhere without denying it just before.</summary>
    private static bool Says(string text, string name)
    {
        for (
            var at = text.IndexOf(name, StringComparison.OrdinalIgnoreCase);
            at >= 0;
            at = text.IndexOf(name, at + 1, StringComparison.OrdinalIgnoreCase)
        )
            if (!IsDenied(text, at))
                return true;
        return false;
    }

    private static bool IsDenied(string text, int at) =>
        Denials.Any(d => text.AsSpan(0, at).EndsWith(d, StringComparison.OrdinalIgnoreCase));
}
