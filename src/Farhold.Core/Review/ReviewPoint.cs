using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>What a look back over a record observes. Wire words as in <see cref="Wire"/>.</summary>
public enum ReviewKind
{
    /// <summary>From the injury to the first tightening.</summary>
    FirstTightened,

    /// <summary>A wound was seen to bleed; to the next tightening on its limb.</summary>
    BleedingSeen,

    /// <summary>The first look at which every sign of shock was known.</summary>
    FirstFullLook,

    /// <summary>The verdict for a limb changed.</summary>
    VerdictChanged,

    /// <summary>The verdict first allowed an attempt.</summary>
    AttemptPossible,

    AttemptBegun,

    AttemptEnded,

    /// <summary>Flow came back to a limb with no attempt under way.</summary>
    LoosenedOutsideAttempt,

    /// <summary>No look at the signs for longer than the protocol's interval.</summary>
    NoSigns,

    /// <summary>No look at a tied limb for longer than the protocol's interval.</summary>
    NoLimbCheck,

    /// <summary>Somebody tried to reach advice; to the next advice.</summary>
    AdviceTried,

    /// <summary>A question was asked; to its answer.</summary>
    QuestionAsked,

    /// <summary>What was written down only long after it happened.</summary>
    WrittenLate,

    /// <summary>When help was expected, against when care was handed over.</summary>
    HelpForecast,

    CareEnded,

    Outcome,
}

/// <summary>One dated observation: what the record shows, with the entries it rests on. Silence in a record is no proof.</summary>
/// <param name="Limb">Null where it is about the casualty.</param>
/// <param name="Entries">What it rests on, sorted.</param>
public sealed record ReviewPoint(ReviewKind Kind, Happened When, Limb? Limb, ImmutableArray<EntryId> Entries)
{
    /// <summary>Since the limb, or for the casualty the first of all limbs, was first tightened; null where none had been.</summary>
    public Elapsed? SinceTightened { get; init; }

    /// <summary>How long it took, or lasted; null where it does not end in the record.</summary>
    public Elapsed? Lasting { get; init; }

    /// <summary>What the protocol asks for, where it gives a time.</summary>
    public Duration? Asked { get; init; }

    /// <summary>By all that the record knows today; null where it is not about a verdict.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>By what had been written down by then; null likewise.</summary>
    public Verdict? WrittenVerdict { get; init; }

    /// <summary>Names of the inputs that were unknown or too old then, the most decisive first.</summary>
    public ImmutableArray<string> Unknown { get; init; } = [];

    /// <summary>Ids of the criteria that decided then.</summary>
    public ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>Actual less likely time of help; negative: earlier than forecast.</summary>
    public Duration? Off { get; init; }

    /// <summary>Of a forecast of help, by <see cref="QuantileScore"/>; null elsewhere.</summary>
    public Duration? Score { get; init; }

    /// <summary>How an attempt or care ended, or what an outcome says, in the record's own words; null elsewhere.</summary>
    public string? Text { get; init; }

    /// <summary>Whether it is as the protocol asks; unknown where the record does not tell. Null where nothing is asked.</summary>
    public Truth? Fits { get; init; }
}
