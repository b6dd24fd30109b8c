using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Something that may go wrong in a long watch, as data.</summary>
/// <param name="Scope">Limb: asked of every limb that has or had a tourniquet.</param>
/// <param name="Do">What to do, and what else to look at.</param>
/// <param name="FalseDays">Of 1,000 days of stable simulated casualties with signs every hour: those on which it is met.</param>
public sealed record WarningRule(
    string Id,
    TaskScope Scope,
    string Text,
    string Do,
    double FalseDays,
    ImmutableArray<string> Sources,
    Condition Condition
)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    public string Do
    {
        get => RuleTexts.Shown(field);
        init;
    } = Do;

    /// <summary>Drugs that are not given while it is met: ids, groups or kinds of the formulary.</summary>
    public ImmutableArray<string> Forbids { get; init; } = [];
}

/// <summary>The rules, with how long the values stay fresh that only they ask about.</summary>
public sealed record WarningRules(
    string Id,
    string Version,
    string Title,
    ImmutableSortedDictionary<string, Source> Sources,
    ImmutableSortedDictionary<string, Duration> Freshness,
    ImmutableArray<WarningRule> Rules
)
{
    public string Title
    {
        get => RuleTexts.Shown(field);
        init;
    } = Title;
}
