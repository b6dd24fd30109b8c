using System.Collections.Immutable;

namespace Farhold.Care;

/// <summary>The drugs that a prompt is about: which of them the record speaks against, and which a signed local protocol orders.</summary>
internal sealed class PromptedDrugs(CasualtyView casualty)
{
    private readonly Lazy<DrugScreening> screening = new(() => new(casualty));
    private readonly Dictionary<string, DrugScreen> screens = [];

    /// <summary>Whether nothing that the task is about may be given, whoever orders it.</summary>
    public bool RefusesAll(CareTask task) => About(task) is { Length: > 0 } about && about.All(d => Screen(d).Against.Length > 0);

    /// <summary>Whether an entry counts as doing it: of drugs given, only those it is about.</summary>
    public bool Counts(CareTask task, Payload what) =>
        task.Drugs.IsEmpty
        || what is not Payload.DrugGiven given
        || task.Drugs.Any(word => casualty.Rules.Formulary.Is(given.Drug, word) == Truth.Met);

    /// <summary>
    /// What of it is ordered, not spoken against, in time and for this age and mass, without a dose; null where nothing is, and the task's
    /// own words stand.
    /// </summary>
    public string? Ordered(CareTask task)
    {
        if (
            task.Drugs.IsEmpty
            || casualty.Protocol.Local is not { Authority: { } authority, Standing: Standing.Verified, Orders: { IsEmpty: false } orders }
        )
            return null;
        var ordered = About(task)
            .Where(d => orders.Contains(d.Id) && Screen(d) is { Against.Length: 0, OnAdvice.Length: 0 } && HasDose(d) && !IsTooLate(d))
            .ToArray();
        return ordered.Length == 0
            ? null
            : CareTexts.Ordered(authority.Name, string.Join(CareTexts.OrListed, ordered.Select(d => d.Id.Replace('-', ' ') + d.OnBox)));
    }

    /// <summary>False where no dose of it is for somebody of that age or mass: an order of it is nothing to go by.</summary>
    private bool HasDose(Drug drug) =>
        casualty.Person is not { AgeYears: { } years } person
        || drug.Regimens.Any(r => person.MassKg is { } kilograms ? r.Fits(years, kilograms) : r.FitsAge(years));

    private bool IsTooLate(Drug drug) =>
        drug.Window is { } window && casualty.Now - WoundFacts.EarliestInjury(casualty.State, casualty.Now) >= window;

    private ImmutableArray<Drug> About(CareTask task) =>
        task.Drugs.IsEmpty ? [] : [.. casualty.Rules.Formulary.Drugs.Where(d => task.Drugs.Any(d.Is))];

    private DrugScreen Screen(Drug drug)
    {
        if (!screens.TryGetValue(drug.Id, out var screen))
            screens.Add(drug.Id, screen = screening.Value.Of(drug));
        return screen;
    }
}
