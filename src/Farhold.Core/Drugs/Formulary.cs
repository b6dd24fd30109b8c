using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drugs;

/// <summary>What is known of drugs, as dated data. It is no permission: that is a local protocol's, by name.</summary>
public sealed record Formulary(
    string Id, string Version, string Title, ImmutableSortedDictionary<string, Source> Sources, ImmutableArray<Drug> Drugs)
{
    /// <summary>The drug that goes by a name, in any case of letters, or null.</summary>
    public Drug? Named(string name) => Drugs.FirstOrDefault(d => d.Goes(name));
}

/// <param name="Names">Other names it goes by.</param>
/// <param name="Kin">Words of an allergy that rules it out, beside its names, such as <c>penicillin</c>.</param>
/// <param name="Group">Drugs that are not given together, such as <c>nsaid</c>; null for none.</param>
public sealed record Drug(
    string Id,
    ImmutableArray<string> Names,
    ImmutableArray<string> Kin,
    string? Group,
    ImmutableArray<DrugForm> Forms,
    ImmutableArray<Regimen> Regimens,
    ImmutableArray<DrugWarning> Warnings)
{
    public bool Goes(string name) => Same(Id, name) || Names.Any(n => Same(n, name));

    private static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <summary>How it comes. Exactly one of the two is set.</summary>
/// <param name="PieceMg">Mass in one tablet or lozenge, mg.</param>
/// <param name="Halves">Whether a piece may be halved.</param>
/// <param name="MgPerMl">Of a solution.</param>
public sealed record DrugForm(string Text, double? PieceMg, bool Halves, double? MgPerMl)
{
    /// <summary>Solutions are measured to a tenth of a millilitre from 1 mL on, to a hundredth below (design: common syringes).</summary>
    public double StepMg(double mg) => PieceMg is { } piece
        ? Halves ? piece / 2 : piece
        : MgPerMl!.Value * (mg / MgPerMl.Value < 1 ? 0.01 : 0.1);
}

/// <summary>One way of giving a drug.</summary>
/// <param name="FixedMg">Dose, mg, whatever the mass; one of this and <paramref name="MgPerKg"/> is set.</param>
/// <param name="MostMg">Most at one time, mg.</param>
/// <param name="Every">Least time between two doses.</param>
/// <param name="MostDayMg">Most within 24 hours, mg; <paramref name="MostDayMgPerKg"/> the same by mass. The lower counts.</param>
/// <param name="MostDoses">Most doses in all; null for no such limit.</param>
/// <param name="NotAfter">Since injury: never at or after it.</param>
public sealed record Regimen(
    string Id,
    string Route,
    string Text,
    double FromYears,
    double UnderYears,
    Between? FixedMg,
    Between? MgPerKg,
    double MostMg,
    Duration Every,
    double MostDayMg,
    double? MostDayMgPerKg,
    int? MostDoses,
    Duration? NotAfter,
    ImmutableArray<string> Sources)
{
    /// <summary>Whether the dose, or the most in a day, hangs on the mass.</summary>
    public bool ByMass => MgPerKg is not null || MostDayMgPerKg is not null;
}

/// <summary>What speaks against a drug: met, it is not given; unknown, it has to be looked into first.</summary>
public sealed record DrugWarning(Circumstance Circumstance, string Text, ImmutableArray<string> Sources);

/// <summary>States of a casualty that drugs are weighed against.</summary>
public enum Circumstance
{
    Shock,
    HeadInjury,
    ReducedConsciousness,
    BreathingTrouble,

    /// <summary>A limb without blood flow for two hours or more, now or before.</summary>
    LongTourniquet,
    Pregnancy,
    Child,
}
