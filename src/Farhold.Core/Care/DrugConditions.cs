using NodaTime;

namespace Farhold.Care;

/// <summary>Answers what the rules of a drug ask of one reading of a record. Its own doses are not among what was given.</summary>
internal sealed class DrugConditions(CasualtyView casualty, Formulary formulary, Drug drug)
{
    /// <summary>How a question about an illness begins: they are asked together.</summary>
    public const string AskAboutIllness = "illness: ";

    /// <summary>A medicine that was given acts for so long as if the casualty took it (design).</summary>
    private static readonly Duration Acts = Duration.FromHours(24);

    public Truth Of(DrugRule rule) => rule.When is { } when ? Of(when) : Truth.Met;

    private Truth Of(DrugCondition condition) =>
        condition switch
        {
            DrugCondition.Holds holds => Circumstances.Of(holds.Circumstance, casualty),
            DrugCondition.Takes takes => Takes(takes.Medicine),
            DrugCondition.TakesNo takes => Medicines.Takes(casualty.Person, takes.Medicine).Not(),
            DrugCondition.Has has => Medicines.Has(casualty.Person, has.Illness),
            DrugCondition.Given given => Given(given.What, given.Within),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>What to look at, or to ask, where a condition is unknown.</summary>
    public IEnumerable<string> Look(DrugCondition condition) =>
        condition switch
        {
            DrugCondition.Holds holds => [Circumstances.Look(holds.Circumstance)],
            DrugCondition.Takes => [.. AboutMedicines(), .. AboutGiven(Acts)],
            DrugCondition.TakesNo => AboutMedicines(),
            DrugCondition.Has has => [AskAboutIllness + IllnessNames.Said(has.Illness)],
            DrugCondition.Given given => AboutGiven(given.Within),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private Truth Takes(MedicineClass kind) => Medicines.Takes(casualty.Person, kind).Or(Given(Wire.Word(kind), Acts));

    private Truth Given(string what, Duration within) =>
        Names(within).Aggregate(Truth.NotMet, (t, given) => t.Or(formulary.Is(given.Name, what)));

    private IEnumerable<string> AboutMedicines() =>
        Medicines.Strange(casualty.Person) switch
        {
            null => [CareTexts.AskMedicines],
            [] => [CareTexts.SettleMedicines],
            var strange => strange.Select(name => CareTexts.FindOutDrug(Plain.Line(name))),
        };

    private IEnumerable<string> AboutGiven(Duration within) =>
        Names(within).Where(g => formulary.IsStrange(g.Name)).Select(g => CareTexts.FindOutGiven(Plain.Line(g.Name), g.Id.ToString()));

    private IEnumerable<(EntryId Id, string Name)> Names(Duration within) =>
        casualty
            .State.Of(Kind.DrugGiven)
            .Where(d => d.When.Earliest <= casualty.Now && d.When.Latest > casualty.Now - within)
            .Select(d => (d.Id, Name: d.As<Payload.DrugGiven>().Drug))
            .Where(g => !drug.Goes(g.Name));
}
