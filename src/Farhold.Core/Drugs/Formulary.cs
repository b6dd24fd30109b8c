using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drugs;

/// <summary>What is known of drugs, as dated data. It is no permission: that is a local protocol's, by name.</summary>
public sealed record Formulary(
    string Id,
    string Version,
    string Title,
    ImmutableSortedDictionary<string, Source> Sources,
    ImmutableArray<Drug> Drugs
)
{
    /// <summary>The same, with what a service writes on its boxes.</summary>
    public Formulary With(ImmutableSortedDictionary<string, string> stockNames) =>
        this with
        {
            Drugs = [.. Drugs.Select(d => stockNames.TryGetValue(d.Id, out var name) ? d with { StockName = name } : d)],
        };

    /// <summary>The drug that goes by a name, in any case of letters, or null.</summary>
    public Drug? Named(string name) => Drugs.FirstOrDefault(d => d.Goes(name));
}

/// <param name="Names">Other names it goes by.</param>
/// <param name="Kin">Words of an allergy that rules it out, beside its names, such as <c>penicillin</c>.</param>
/// <param name="Group">Drugs that are not given together, such as <c>nsaid</c>; null for none.</param>
/// <param name="Kinds">What else it is, for a warning rule to forbid it: <c>sedating</c>, <c>by-mouth</c>, <c>loads-kidneys</c>.</param>
/// <param name="NotUnder">Never under this age, whoever orders it; null where no source says so.</param>
public sealed record Drug(
    string Id,
    ImmutableArray<string> Names,
    ImmutableArray<string> Kin,
    string? Group,
    ImmutableArray<string> Kinds,
    LeastAge? NotUnder,
    ImmutableArray<DrugForm> Forms,
    ImmutableArray<Regimen> Regimens
)
{
    /// <summary>What it is for: one of them has to be met. Empty: nobody asks.</summary>
    public ImmutableArray<DrugRule> Indications { get; init; } = [];

    /// <summary>Met, it is not given; unknown, it has to be looked into first.</summary>
    public ImmutableArray<DrugRule> Contraindications { get; init; } = [];

    /// <summary>Met, only on advice asked for this casualty, order or not; unknown, it has to be looked into first.</summary>
    public ImmutableArray<DrugRule> OnAdvice { get; init; } = [];

    /// <summary>Met or always there, said with the dose; unknown, it is said too.</summary>
    public ImmutableArray<DrugRule> Cautions { get; init; } = [];

    public IEnumerable<DrugRule> Rules => [.. Indications, .. Contraindications, .. OnAdvice, .. Cautions];

    /// <summary>Since the injury, where every way of giving it has an end: the shortest.</summary>
    public Duration? Window => Regimens.Any(r => r.NotAfter is null) ? null : Regimens.Min(r => r.NotAfter);

    /// <summary>What the service writes on its box; null where no local protocol says.</summary>
    public string? StockName { get; init; }

    /// <summary>What is on its box, to stand behind its name; empty where nothing is known of it.</summary>
    public string OnBox => StockName is null ? "" : $" (\"{StockName}\")";

    public bool Goes(string name) => Same(Id, name) || Names.Any(n => Same(n, name)) || (StockName is { } box && Same(box, name));

    /// <summary>Whether a word of a rule means it: its id, its group, one of its kinds.</summary>
    public bool Is(string word) => Id == word || Group == word || Kinds.Contains(word);

    private static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <param name="Years">The age from which it may be given.</param>
public sealed record LeastAge(double Years, ImmutableArray<string> Sources);

/// <summary>How it comes. Exactly one of the two is set.</summary>
/// <param name="PieceMg">Mass in one tablet or lozenge, mg.</param>
/// <param name="Halves">Whether a piece may be halved.</param>
/// <param name="MgPerMl">Of a solution.</param>
public sealed record DrugForm(string Text, double? PieceMg, bool Halves, double? MgPerMl)
{
    /// <summary>Solutions are measured to a tenth of a millilitre from 1 mL on, to a hundredth below (design: common syringes).</summary>
    public double StepMg(double mg) =>
        PieceMg is { } piece
            ? Halves
                ? piece / 2
                : piece
            : MgPerMl!.Value * (mg / MgPerMl.Value < 1 ? 0.01 : 0.1);
}

/// <summary>One way of giving a drug.</summary>
/// <param name="FromKg">From this mass on, up to, not including, <paramref name="UnderKg"/>.</param>
/// <param name="FixedMg">Dose, mg, whatever the mass; one of this and <paramref name="MgPerKg"/> is set.</param>
/// <param name="MostMg">Most at one time, mg.</param>
/// <param name="MostMgPerKg">The same by mass: the lower end for the lower end of the dose, the upper for the upper. Null: no such cap.</param>
/// <param name="Every">Least time between two doses.</param>
/// <param name="MostDayMg">Most within 24 hours, mg; <paramref name="MostDayMgPerKg"/> the same by mass. The lower counts.</param>
/// <param name="MostDoses">Most doses in all; null for no such limit.</param>
/// <param name="NotAfter">Since injury: never at or after it.</param>
/// <param name="Then">What follows a single dose, such as a drip; null for nothing.</param>
public sealed record Regimen(
    string Id,
    string Route,
    string Text,
    double FromYears,
    double UnderYears,
    double FromKg,
    double UnderKg,
    Between? FixedMg,
    Between? MgPerKg,
    double MostMg,
    Between? MostMgPerKg,
    Duration Every,
    double MostDayMg,
    double? MostDayMgPerKg,
    int? MostDoses,
    Duration? NotAfter,
    FollowOn? Then,
    ImmutableArray<string> Sources
)
{
    /// <summary>Whether the dose, or the most in a day, hangs on the mass.</summary>
    public bool ByMass =>
        MgPerKg is not null || MostMgPerKg is not null || MostDayMgPerKg is not null || FromKg > 0 || double.IsFinite(UnderKg);

    /// <summary>It is never given again.</summary>
    public bool Once => MostDoses == 1;

    public bool Fits(double years, double kilograms) => FitsAge(years) && kilograms >= FromKg && kilograms < UnderKg;

    public bool FitsAge(double years) => years >= FromYears && years < UnderYears;
}

/// <summary>A slow dose after the first.</summary>
/// <param name="Text">How, and for how long.</param>
public sealed record FollowOn(double MgPerKgHour, string Text);

/// <summary>What speaks for or against a drug.</summary>
/// <param name="When">Null: always.</param>
/// <param name="Text">Said as the reason.</param>
public sealed record DrugRule(DrugCondition? When, string Text, ImmutableArray<string> Sources);

/// <summary>What a rule of a drug asks of the record. A closed family.</summary>
public abstract record DrugCondition
{
    private DrugCondition() { }

    public sealed record Holds(Circumstance Circumstance) : DrugCondition;

    public sealed record Takes(MedicineClass Medicine) : DrugCondition;

    /// <summary>Takes none of a kind.</summary>
    public sealed record TakesNo(MedicineClass Medicine) : DrugCondition;

    public sealed record Has(Illness Illness) : DrugCondition;

    /// <summary>Was given: a drug by its id, group or kind, or any medicine of a class, within the time before now.</summary>
    public sealed record Given(string What, Duration Within) : DrugCondition;
}

/// <summary>States of a casualty that drugs are weighed against.</summary>
public enum Circumstance
{
    Shock,

    /// <summary>Shock, or what leads to it.</summary>
    ShockThreatens,
    HeadInjury,
    ReducedConsciousness,
    BreathingTrouble,

    /// <summary>A limb without blood flow for two hours or more, now or before.</summary>
    LongTourniquet,
    Pregnancy,
    Child,

    /// <summary>A wound bleeds now.</summary>
    Bleeding,
    TrunkWound,
    BloodThinner,

    /// <summary>Must not swallow anything.</summary>
    NothingByMouth,

    /// <summary>Nobody watches without a break.</summary>
    Unwatched,
    NoNaloxone,

    /// <summary>Any pain, 1 of 10 or more.</summary>
    Pain,

    /// <summary>Moderate pain or worse: 4 of 10 or more (common practice).</summary>
    StrongPain,

    /// <summary>Bled so that it took a tourniquet, or bled on.</summary>
    SevereBleeding,
    Amputation,
    OpenWound,
}
