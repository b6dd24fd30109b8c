using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Kit;

/// <summary>What a party carries for a long watch, as dated data.</summary>
public sealed record KitList(
    string Id,
    string Version,
    string Title,
    ImmutableSortedDictionary<string, Source> Sources,
    ImmutableArray<KitItem> Items
)
{
    public string Title
    {
        get => RuleTexts.Shown(field);
        init;
    } = Title;

    public KitItem? Named(string id) => Items.FirstOrDefault(i => i.Id == id);

    /// <summary>The same, with what a service writes on its boxes beside the names of the items.</summary>
    public KitList With(ImmutableSortedDictionary<string, string> stockNames) =>
        this with
        {
            Items = [.. Items.Select(i => stockNames.TryGetValue(i.Id, out var box) ? i with { Box = box } : i)],
        };

    /// <summary>The same, knowing a drug by every name that a formulary has for it; the formulary is read once one is looked for.</summary>
    public KitList Naming(Lazy<Formulary> formulary) =>
        this with
        {
            Items =
            [
                .. Items.Select(i =>
                    i.Uses.Any(u => u.Kind == Kind.DrugGiven)
                        ? i with
                        {
                            Uses = [.. i.Uses.Select(u => u.Kind == Kind.DrugGiven ? u with { Formulary = formulary } : u)],
                        }
                        : i
                ),
            ],
        };
}

/// <param name="Id">As <c>supplies.stated</c> names it.</param>
/// <param name="Unit">Of one counted piece, such as <c>roll</c>; <c>mL</c> for what is counted by volume.</param>
/// <param name="Step">What one tap on a stepper adds.</param>
/// <param name="Planned">Use that is foreseen beside the tasks of the care plan; null where none is.</param>
/// <param name="Water">Used by the need for water of the casualty and the party, which holds what tasks offer to drink.</param>
/// <param name="Keep">Pieces that stay untouched for <paramref name="KeepFor"/>; 0 for none.</param>
/// <param name="Instead">What can stand in for it: ids of other items, or words.</param>
/// <param name="Save">How to make it last; null where nothing is to be said.</param>
/// <param name="Carry">What to set out with; null where the list asks for none.</param>
public sealed record KitItem(
    string Id,
    string Name,
    string Unit,
    int Step,
    ImmutableArray<ItemUse> Uses,
    PlannedUse? Planned,
    bool Water,
    int Keep,
    string? KeepFor,
    ImmutableArray<string> Instead,
    string? Save,
    CarryRule? Carry,
    ImmutableArray<string> Sources
)
{
    public string Name
    {
        get => Box is null ? RuleTexts.Shown(field) : $"{RuleTexts.Shown(field)} (\"{Box}\")";
        init;
    } = Name;

    /// <summary>What a service writes on its boxes; null where it says nothing.</summary>
    public string? Box { get; init; }

    public string? KeepFor
    {
        get => RuleTexts.Shown(field);
        init;
    } = KeepFor;

    public ImmutableArray<string> Instead
    {
        get => RuleTexts.Shown(field);
        init;
    } = Instead;

    public string? Save
    {
        get => RuleTexts.Shown(field);
        init;
    } = Save;

    public bool ByVolume => Unit == "mL";
}

/// <summary>An entry that uses an item up.</summary>
/// <param name="Kind">A <c>task.done</c> tells what each time of the task takes, ticked off or still to come.</param>
/// <param name="Of">Which material, dressing, fluid, drug or task (by its id in the protocol); null for any.</param>
/// <param name="Each">Pieces for one entry; for fluids pieces for each millilitre.</param>
/// <param name="PieceMg">For a drug: mass in one piece, mg; then <paramref name="Each"/> is one such piece.</param>
public sealed record ItemUse(Kind Kind, string? Of, Between Each, double? PieceMg)
{
    /// <summary>Where a drug's other names are; null: it is known by the one it has here.</summary>
    internal Lazy<Formulary>? Formulary { get; init; }

    /// <summary>Whether a drug, by the name it was written with, is the one of this use.</summary>
    internal bool IsOf(string drug) =>
        Formulary?.Value.Named(Of!)?.Goes(drug) ?? string.Equals(Of, drug.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <summary>
/// Use beside the tasks of the care plan: pieces for every span, for one casualty, for each person of the party (the casualty too), or
/// for the party as a whole.
/// </summary>
public sealed record PlannedUse(Between Each, Duration Every, UsedPer Per);

public enum UsedPer
{
    Casualty,
    Person,
    Party,
}

/// <summary>
/// How much to set out with: the sum of what is for the party, for each day help may take, for each person and such day, and
/// for each day of the trip.
/// </summary>
public sealed record CarryRule(double Party, double Day, double PersonDay, double TripDay)
{
    /// <returns>Whole pieces, rounded up.</returns>
    public int For(int people, double waitDays, double tripDays) =>
        (int)Math.Ceiling(Math.Round(Party + (Day * waitDays) + (PersonDay * people * waitDays) + (TripDay * tripDays), 6));
}
