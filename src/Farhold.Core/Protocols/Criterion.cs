using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>What a criterion does to the decision.</summary>
public enum Role
{
    /// <summary>Met: no attempt.</summary>
    Forbids,

    /// <summary>Not met: no attempt.</summary>
    Requires,

    /// <summary>Met: an attempt gains nothing.</summary>
    Awaits,

    /// <summary>Met: no attempt yet; something has to be settled first, such as advice.</summary>
    Asks,

    /// <summary>A soft sign of shock: it decides nothing alone, but is counted with the others.</summary>
    Soft,
}

/// <summary>What to do, where its condition is met. Null: in every case.</summary>
public sealed record ConditionalText(Condition? When, string Text)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;
}

/// <summary>One question of a protocol, with its sentence and its sources.</summary>
/// <param name="Group">Criteria that together make up one thing, such as <c>shock</c>; null for none.</param>
/// <param name="Hard">Loosening it needs a named authority, and then every screen and print says so.</param>
/// <param name="Sources">Keys of the protocol's source list, at least one.</param>
public sealed record Criterion(
    string Id,
    Role Role,
    string? Group,
    bool Hard,
    string Text,
    ImmutableArray<string> Sources,
    Condition Condition
)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    /// <summary>Whether it goes on counting once an attempt has begun; the others are judged when it begins.</summary>
    public bool Stops { get; init; }

    /// <summary>Advice that allows an attempt lifts it, if it stood before the advice was given.</summary>
    public bool AdviceLifts { get; init; }

    /// <summary>Where nobody can be reached: two clear looks this far apart lift it. Null: never.</summary>
    public Duration? GivesWay { get; init; }

    /// <summary>What to do while it stands against an attempt: the first whose condition is met.</summary>
    public ImmutableArray<ConditionalText> Acts { get; init; } = [];

    /// <summary>What to do while it is unknown; null: what its input says.</summary>
    public string? Look
    {
        get => RuleTexts.Shown(field);
        init;
    }

    /// <summary>What would change its answer, in a short sentence; null where nothing does.</summary>
    public string? Change
    {
        get => RuleTexts.Shown(field);
        init;
    }

    /// <summary>A strong sign of shock.</summary>
    public bool IsStrongSign => Role == Role.Forbids && Group == ShockGroup && Stops && AsksOfSigns;

    /// <summary>A sign of shock, strong or soft, that is read off the casualty.</summary>
    public bool IsSign => (Role == Role.Soft && AsksOfSigns) || IsStrongSign;

    /// <summary>It asks about nothing but what is read off the casualty, and the age.</summary>
    public bool AsksOfSigns => Condition.Inputs.All(static i => i.IsSign || i == Input.AgeYears);

    internal const string ShockGroup = "shock";
}
