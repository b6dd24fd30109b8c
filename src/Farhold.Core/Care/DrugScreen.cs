using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>What the record says for and against a drug, whoever orders it. No dose is in it.</summary>
/// <param name="Against">Why it must not be given.</param>
/// <param name="OnAdvice">Why it takes advice asked for this casualty.</param>
/// <param name="Unknown">What has to be looked at or asked first.</param>
/// <param name="For">What it is for here.</param>
/// <param name="Cautions">What to mind when it is given.</param>
public sealed record DrugScreen(
    ImmutableArray<string> Against,
    ImmutableArray<string> OnAdvice,
    ImmutableArray<string> Unknown,
    ImmutableArray<string> For,
    ImmutableArray<string> Cautions
);

/// <summary>Holds drugs against one reading of a record: medicines, history, wounds, state, what was given, warning signs.</summary>
internal sealed class DrugScreening(CasualtyView casualty)
{
    /// <summary>A drug of the same group stands in the way for a day (design: the longest time any of them is given for).</summary>
    private static readonly Duration Day = Duration.FromHours(24);

    private readonly Formulary formulary = casualty.Rules.Formulary;
    private readonly Lazy<ImmutableArray<WarningFinding>> found = new(() =>
        WarningSigns.Of(casualty.State, casualty.Rules, casualty.Now, r => !r.Forbids.IsEmpty)
    );

    public DrugScreen Of(Drug drug)
    {
        var against = ImmutableArray.CreateBuilder<string>();
        var unknown = ImmutableArray.CreateBuilder<string>();
        var onAdvice = ImmutableArray.CreateBuilder<string>();
        var conditions = new DrugConditions(casualty, formulary, drug);
        Allergies(drug, against, unknown);
        Age(drug, against, unknown);
        Weigh(conditions, drug.Contraindications, against, unknown);
        against.AddRange(Forbidden(drug));
        against.AddRange(Spent(drug));
        Together(drug, against, unknown);
        var reasons = Indications(conditions, drug, against, unknown);
        Weigh(conditions, drug.OnAdvice, onAdvice, unknown);
        return new(
            [.. against.Distinct()],
            [.. onAdvice.Distinct()],
            [.. Questions(unknown)],
            reasons,
            [.. drug.Cautions.Where(c => conditions.Of(c) != Truth.NotMet).Select(c => c.Text)]
        );
    }

    private void Allergies(Drug drug, ImmutableArray<string>.Builder against, ImmutableArray<string>.Builder unknown)
    {
        var person = casualty.Person;
        if (person?.Allergies is { IsDefault: false } allergies && allergies.FirstOrDefault(a => Touches(drug, a)) is { } allergy)
            against.Add(CareTexts.Allergy(allergy));
        else if (!Medicines.AllergiesKnown(person))
            unknown.Add(CareTexts.AskAllergies);
    }

    /// <summary>An allergy that names the drug, one of its other names, or its kin.</summary>
    private static bool Touches(Drug drug, string allergy) =>
        drug.Names.Concat(drug.Kin).Prepend(drug.Id).Any(word => allergy.Contains(word, StringComparison.OrdinalIgnoreCase));

    private void Age(Drug drug, ImmutableArray<string>.Builder against, ImmutableArray<string>.Builder unknown)
    {
        if (drug.NotUnder is not { } least)
            return;
        if (casualty.Person?.AgeYears is not { } age)
            unknown.Add(Circumstances.LookForAge(casualty.State, casualty.Now));
        else if (age < least.Years)
            against.Add(CareTexts.NeverUnder(Say.Number(least.Years)));
    }

    private static void Weigh(
        DrugConditions conditions,
        ImmutableArray<DrugRule> rules,
        ImmutableArray<string>.Builder met,
        ImmutableArray<string>.Builder unknown
    )
    {
        foreach (var rule in rules)
            switch (conditions.Of(rule))
            {
                case Truth.Met:
                    met.Add(rule.Text);
                    break;
                case Truth.Unknown:
                    unknown.AddRange(conditions.Look(rule.When!));
                    break;
                default:
                    break;
            }
    }

    /// <summary>Warning signs that are met, and forbid it; what of them is unknown, the drug's own rules ask for.</summary>
    private IEnumerable<string> Forbidden(Drug drug) =>
        found
            .Value.Where(f => f.State == Truth.Met && f.Rule.Forbids.Any(drug.Is))
            .Select(f => CareTexts.WarningSign(f.Rule.Text.TrimEnd('.')));

    /// <summary>As many doses as there may ever be.</summary>
    private IEnumerable<string> Spent(Drug drug)
    {
        var given = casualty
            .State.Of(Kind.DrugGiven)
            .Count(d => d.When.Earliest <= casualty.Now && drug.Goes(d.As<Payload.DrugGiven>().Drug));
        if (drug.Regimens.All(r => given >= r.MostDoses))
            yield return drug.Regimens.All(r => r.Once) ? CareTexts.OnceOnly : CareTexts.MostDosesGiven;
    }

    private void Together(Drug drug, ImmutableArray<string>.Builder against, ImmutableArray<string>.Builder unknown)
    {
        foreach (var entry in casualty.State.Of(Kind.DrugGiven))
        {
            var name = entry.As<Payload.DrugGiven>().Drug;
            if (entry.When.Earliest > casualty.Now || drug.Goes(name))
                continue;
            if (formulary.MayBe(name, drug))
                unknown.Add(CareTexts.SameDrug(Plain.Line(name), entry.Id.ToString(), drug.Id));
            else if (drug.Group is { } group && entry.When.Latest > casualty.Now - Day && formulary.Is(name, group) == Truth.Met)
                against.Add(CareTexts.NotTogether(formulary.Named(name)?.Id ?? Plain.Line(name), drug.Id));
        }
    }

    private static ImmutableArray<string> Indications(
        DrugConditions conditions,
        Drug drug,
        ImmutableArray<string>.Builder against,
        ImmutableArray<string>.Builder unknown
    )
    {
        var asked = drug.Indications.Select(r => (Rule: r, State: conditions.Of(r))).ToArray();
        var met = asked.Where(a => a.State == Truth.Met).Select(a => a.Rule.Text).ToImmutableArray();
        if (!met.IsEmpty || asked.Length == 0)
            return met;
        var open = asked.Where(a => a.State == Truth.Unknown).ToArray();
        if (open.Length == 0)
            against.Add(CareTexts.NothingCallsForIt(string.Join(CareTexts.OrListed, drug.Indications.Select(i => i.Text))));
        unknown.AddRange(open.SelectMany(a => conditions.Look(a.Rule.When!)));
        return [];
    }

    /// <summary>Each once; all the illnesses to be asked about in one sentence.</summary>
    private static IEnumerable<string> Questions(IEnumerable<string> unknown)
    {
        var (illnesses, others) = (new List<string>(), new List<string>());
        foreach (var question in unknown.Distinct())
            (question.StartsWith(DrugConditions.AskAboutIllness, StringComparison.Ordinal) ? illnesses : others).Add(question);
        if (illnesses.Count == 0)
            return others;
        var named = illnesses.Select(i => i[DrugConditions.AskAboutIllness.Length..]);
        return others.Append(CareTexts.AskAbout(string.Join(", ", named)));
    }
}
