namespace Farhold.Drugs;

/// <summary>What a name that somebody wrote for a drug stands for.</summary>
internal static class GivenNames
{
    /// <summary>Whether it is what a rule names: a drug's id, group or kind, a class of medicines, or a word of the name itself.</summary>
    /// <returns>Unknown for a name that nothing here knows.</returns>
    public static Truth Is(this Formulary formulary, string name, string what)
    {
        var mentioned = formulary.Named(name) is { } named ? [named] : formulary.Drugs.Where(d => d.IsMentionedIn(name)).ToArray();
        if (
            mentioned.Any(d => d.Is(what))
            || Contains(name, what)
            || (Wire.Parse<MedicineClass>(what) is { } kind && Medicines.Is(name, kind))
        )
            return Truth.Met;
        return formulary.IsStrange(name) ? Truth.Unknown : Truth.NotMet;
    }

    /// <summary>Whether nothing here knows the name.</summary>
    public static bool IsStrange(this Formulary formulary, string name) =>
        formulary.Named(name) is null && !formulary.Drugs.Any(d => d.IsMentionedIn(name)) && !MedicineNames.Knows(name);

    /// <summary>Whether a name that is none of the drug's own may mean it all the same, such as <c>TXA in the arm</c>.</summary>
    public static bool MayBe(this Formulary formulary, string name, Drug drug) =>
        formulary.Named(name) is null && (drug.IsMentionedIn(name) || (drug.Group is { } group && Contains(name, group)));

    private static bool IsMentionedIn(this Drug drug, string name) => drug.Names.Prepend(drug.Id).Any(n => Contains(name, n));

    private static bool Contains(string text, string word) =>
        text.Replace('-', ' ').Contains(word.Replace('-', ' '), StringComparison.OrdinalIgnoreCase);
}
