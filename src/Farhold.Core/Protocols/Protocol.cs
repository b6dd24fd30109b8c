using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>The limits of the limb clock and of waiting.</summary>
/// <param name="Window">From first tightening: the time within which a conversion should be tried.</param>
/// <param name="Limit">From first tightening: never after.</param>
/// <param name="Soon">From now: with higher care this close there is nothing to gain.</param>
/// <param name="SoonProbability">How likely a forecast has to say that help comes by a time, for that time to count as its latest.</param>
public sealed record ClockLimits(Duration Window, Duration Limit, Duration Soon, double SoonProbability = ClockLimits.UsualSoonProbability)
{
    /// <summary>Where a protocol says nothing: nine in ten (design).</summary>
    public const double UsualSoonProbability = 0.9;

    /// <summary>
    /// Window and limit as long as in any of the protocols laid over one another: what a local one shortens must not turn waiting for
    /// help into an attempt, nor do away with the second look because the window closes.
    /// </summary>
    public (Duration Window, Duration Limit) Longest
    {
        get => field == default ? (Window, Limit) : field;
        init;
    }
}

/// <summary>A step of an attempt. <paramref name="Minimum"/> by what it is done with; the key <c>""</c> is for anything.</summary>
public sealed record AttemptStep(
    StepId Id,
    string Text,
    ImmutableSortedDictionary<string, Duration> Minimum,
    ImmutableArray<string> Sources
)
{
    /// <summary>Longest <see cref="Brief"/>, in characters: three lines of 28 px on a phone of 360 px (design).</summary>
    public const int BriefLength = 66;

    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    /// <summary>The step in the few words that are read at arm's length and said aloud; null where only the whole text will do.</summary>
    public string? Brief
    {
        get => RuleTexts.Shown(field);
        init;
    }

    /// <summary>What leads the step on the screen and aloud.</summary>
    public string InBrief => Brief ?? Text;

    /// <summary>What comes before it, each where its condition is met.</summary>
    public ImmutableArray<ConditionalText> Before { get; init; } = [];

    /// <summary>Where it is met, the step takes twice its minimum.</summary>
    public Condition? Twice { get; init; }

    /// <summary>A task of the protocol that has to be done before the step; null for none.</summary>
    public string? Gate { get; init; }
}

public enum StepId
{
    Pack,
    Hold,
    Dress,
    Slacken,
    Watch,
}

/// <summary>How often to look at a wound whose tourniquet was slackened, up to some time after that.</summary>
/// <param name="Until">Time since slackening up to which this holds; null for the last.</param>
/// <param name="Every">Null: look without a break.</param>
public sealed record ObservationPeriod(Duration? Until, Duration? Every);

/// <param name="AfterMove">How long to look without a break after every move; null: not said.</param>
public sealed record ObservationPlan(
    string Text,
    ImmutableArray<ObservationPeriod> Periods,
    ImmutableArray<string> Sources,
    Duration? AfterMove = null
)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;
}

/// <summary>A protocol: the criteria of the decision and the times that go with it. Versioned data, never code.</summary>
/// <param name="Local">The local protocol laid over it, or null.</param>
public sealed record Protocol(
    string Id,
    string Version,
    string Title,
    ImmutableSortedDictionary<string, Source> Sources,
    ClockLimits Clock,
    ImmutableSortedDictionary<string, Duration> Freshness,
    ImmutableArray<Criterion> Criteria,
    ImmutableArray<AttemptStep> Steps,
    ObservationPlan Watch,
    ImmutableArray<CareTask> Tasks,
    LocalProtocol? Local
)
{
    public string Title
    {
        get => RuleTexts.Shown(field);
        init;
    } = Title;

    public ImmutableArray<Criterion> Criteria
    {
        get;
        init => (field, Shock) = (value, new(value));
    } = Criteria;

    /// <summary>Id and version, as a signature and an entry name it.</summary>
    public string Named => $"{Id} {Version}";

    /// <summary>Those of the criteria that are about shock.</summary>
    internal ShockSigns Shock { get; private init; } = new(Criteria);

    /// <summary>How long values stay fresh that tasks ask about, where it differs from the criteria's: care looks less far ahead.</summary>
    public ImmutableSortedDictionary<string, Duration> CareFreshness { get; init; } = ImmutableSortedDictionary<string, Duration>.Empty;

    /// <summary>How far a local protocol may go.</summary>
    public OverlayRules Overlays { get; init; } = OverlayRules.None;

    /// <summary>Of the file it was read from; empty for one that was put together here.</summary>
    public string Hash { get; init; } = "";

    public LookRules Looks { get; init; } = LookRules.Usual;

    public AdviceRules Advice { get; init; } = AdviceRules.Usual;

    public EffectPlan Effect { get; init; } = EffectPlan.Usual;

    public AttemptRules Attempts { get; init; } = AttemptRules.Usual;

    /// <summary>What to do where an attempt is called for: the first whose condition is met.</summary>
    public ImmutableArray<ConditionalText> AttemptActs { get; init; } = [];

    /// <summary>What is said beside an attempt, wherever its condition is met.</summary>
    public ImmutableArray<ConditionalText> Cautions { get; init; } = [];
}

/// <summary>What a local protocol changed, and what stands behind it.</summary>
/// <param name="Authority">The clinician who authorises it; null where the file names none.</param>
/// <param name="Loosened">One sentence for everything it loosened; shown on every screen and print.</param>
/// <param name="Differences">Everything that differs, what is loosened too.</param>
/// <param name="Orders">Ids of the drugs that the authority orders: only of these a dose is ever shown. Empty unless verified.</param>
public sealed record LocalProtocol(
    string Id,
    string Version,
    string Title,
    Authority? Authority,
    ImmutableArray<string> Loosened,
    ImmutableArray<Difference> Differences,
    ImmutableArray<string> Orders
)
{
    /// <summary>One sentence for everything that differs.</summary>
    public ImmutableArray<string> Changes => [.. Differences.Select(d => d.Text)];

    /// <summary>Whom the service says to call, and its names and words.</summary>
    public LocalService Service { get; init; } = LocalService.None;

    public Standing Standing { get; init; }

    /// <summary>Of the file, byte for byte.</summary>
    public string Hash { get; init; } = "";

    /// <summary>Who signed it; null where nobody has proven it.</summary>
    public IssuerCode? Issuer { get; init; }

    public SignatureHead? Signature { get; init; }

    /// <summary>When it ends; null for one that only tightens numbers.</summary>
    public Instant? Until { get; init; }

    /// <summary>What it allowed or ordered that is not in force.</summary>
    public ImmutableArray<string> Lapsed { get; init; } = [];
}
