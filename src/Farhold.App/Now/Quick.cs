using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Now;

/// <summary>What can be logged with two taps: one opens the choice, the second logs.</summary>
public enum Quick
{
    Tightened,
    Wound,
    Bleeding,
    Signs,
    Slackened,
    Attempt,

    /// <summary>Care that can take the limb over, or a clinic.</summary>
    Help,

    /// <summary>More people to watch and carry.</summary>
    Hands,
    Watch,
    Supplies,
    Note,
    Packed,
    Held,
    Dressed,
    Ended,
    Beyond,
    Removed,

    /// <summary>The rest of the casualty.</summary>
    LookedOver,

    /// <summary>Advice was tried for.</summary>
    Contact,

    /// <summary>About to be moved, or moved.</summary>
    Moved,

    /// <summary>Light, supplies or hands, since an attempt bled.</summary>
    Improved,
}

/// <param name="Says">The entry, made at the moment of the tap.</param>
public sealed record QuickOption(string Text, Func<Instant, Payload> Says);

/// <param name="Label">Empty where there is one group only.</param>
/// <param name="Warning">A sentence to read before choosing; null for none.</param>
/// <param name="Hint">What the choice is about, in more words; null for none.</param>
public sealed record QuickGroup(string Label, ImmutableArray<QuickOption> Options, string? Warning = null, string? Hint = null);

/// <param name="Quick">Null for the sheet of a limb or a region.</param>
/// <param name="Missing">Why there is nothing to choose; null if there is.</param>
/// <param name="First">What has to be logged before there is a choice.</param>
/// <param name="More">Address of the full form, within the casualty.</param>
public sealed record QuickSheet(
    Quick? Quick,
    string Title,
    ImmutableArray<QuickGroup> Groups,
    string More,
    string? Missing = null,
    Quick? First = null
);
