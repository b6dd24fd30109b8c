using System.Collections.Immutable;

namespace Farhold.Study.Questions;

/// <summary>What a study asks, of whom, by which figures, and how it is run: all of it fixed before the run.</summary>
public sealed record StudyPlan
{
    /// <summary>Short name; parts of the run bear it.</summary>
    public required string Id { get; init; }

    public required string Title { get; init; }

    public required string Question { get; init; }

    /// <summary>Number of the casualty model.</summary>
    public required int Model { get; init; }

    public required ulong Seed { get; init; }

    /// <summary>Side by side, never pooled: nobody knows which of them is true of the wild.</summary>
    public required ImmutableArray<Cohort> Cohorts { get; init; }

    public required CasualtyFigures Casualties { get; init; }

    public required OutcomeFigures Figures { get; init; }

    /// <summary>Who decides whether a bleed kills: the casualty model, or fixed shares.</summary>
    public required BleedingBy Bleeding { get; init; }

    public required ImmutableArray<Policy> Policies { get; init; }

    /// <summary>The policy that all others are compared with; its place among them.</summary>
    public required int Reference { get; init; }

    /// <summary>Hours from tourniquet to higher care, rising; all are read off one run.</summary>
    public required ImmutableArray<double> Evacuation { get; init; }

    public required Weights Weights { get; init; }

    public required RunSize Run { get; init; }

    public required UncertaintySize Uncertainty { get; init; }

    /// <summary>SHA-256 of the file, its members sorted: what a part has to agree on.</summary>
    public string Hash { get; init; } = "";
}

/// <param name="Needed">Share of tourniquets without which the wound would not have been held.</param>
public sealed record Cohort(string Id, string Title, Figure Needed);

public enum BleedingBy
{
    Model,
    Shares,
}

/// <summary>Who the casualties are. People themselves are drawn as the model's reference has them (VirtualPerson).</summary>
/// <param name="BleedNeeded">Open wound, mL/min, where the tourniquet was needed.</param>
/// <param name="Leak">Share of the wound that is open once packing has failed.</param>
/// <param name="TiedAfterMin">Minutes from wound to tourniquet.</param>
public sealed record CasualtyFigures(
    Figure BleedNeeded,
    Figure BleedNotNeeded,
    Figure Leak,
    double TiedAfterMin,
    double AirC,
    double Insulation,
    double Pain,
    double Anxiety
);

/// <summary>A number that the outcomes go by. Those that are no fixed value are drawn in the outer loop.</summary>
public enum StudyInput
{
    HoldHaemostatic,
    HoldPlain,
    HoldNotNeeded,

    /// <summary>Correlation of two attempts on one wound.</summary>
    SameWound,
    FailsWithinMin,

    /// <summary>Share of held, needed wounds that bleed again when the casualty is moved.</summary>
    Rebleed,

    /// <summary>Hours in which that share halves; 0 where it stays.</summary>
    RebleedHalvesH,

    /// <summary>Mean hours until the first move; 0 for at once.</summary>
    MoveAfterH,

    /// <summary>Factor on the share of rebleeding where the tourniquet was not needed.</summary>
    RebleedNotNeeded,

    /// <summary>Share of looks that miss a bleed.</summary>
    MissedLook,

    /// <summary>Minutes from seeing blood to a tight tourniquet, in the mean.</summary>
    ReactionMin,

    /// <summary>Factor on the time in which the model's casualty bleeds past rescue.</summary>
    TimeToDeath,

    /// <summary>Of those that fail, where shares decide instead of the model.</summary>
    DeathPerFailure,
    DeathPerRebleed,

    /// <summary>Weibull shape of limb loss over hours tied.</summary>
    LimbShape,

    /// <summary>Weibull scale, hours.</summary>
    LimbScaleH,

    /// <summary>Share of needed wounds whose artery decides over the limb, whatever is done with the tourniquet.</summary>
    ArteryDecides,

    /// <summary>Death at release in hospital after 8 h.</summary>
    ReleaseHospital,

    /// <summary>The same in the field; never less than in hospital.</summary>
    ReleaseField,

    /// <summary>Factor on palsy's odds after a surgeon's cuff.</summary>
    PalsyScale,

    /// <summary>Share of palsies that last.</summary>
    PalsyLasting,
}

/// <summary>One figure for each <see cref="StudyInput"/>, in its order.</summary>
public sealed record OutcomeFigures(ImmutableArray<Figure> All)
{
    public Figure this[StudyInput input] => All[(int)input];

    /// <summary>Those that the outer loop draws, without the cohort's share of needed tourniquets.</summary>
    public ImmutableArray<StudyInput> Drawn => [.. Enum.GetValues<StudyInput>().Where(i => !All[(int)i].IsFixed)];
}

public enum Gauze
{
    Haemostatic,
    Plain,
}

/// <summary>From <paramref name="UntilMin"/> before, one look every so many minutes; infinity for the last.</summary>
public readonly record struct WatchPeriod(double UntilMin, double EveryMin);

/// <summary>How the wound is watched after slackening.</summary>
public sealed record Watch(string Words, ImmutableArray<WatchPeriod> Periods)
{
    /// <summary>Minutes between looks, so long after slackening.</summary>
    public double Every(double sinceMin)
    {
        foreach (var period in Periods)
            if (sinceMin < period.UntilMin)
                return period.EveryMin;
        return Periods[^1].EveryMin;
    }
}

/// <summary>What somebody who is hours from care does.</summary>
/// <param name="AttemptH">Hours after tightening; null for no attempt.</param>
/// <param name="SecondTry">One more attempt an hour after the first failed.</param>
public sealed record Policy(string Id, string Title, double? AttemptH, Gauze Gauze, Watch Watch, bool SecondTry)
{
    /// <summary>Hours between a failed attempt and the second.</summary>
    public const double Gap = 1;
}

/// <summary>What a harm counts, a death being 1. A death counts alone.</summary>
public sealed record Weights(double Death, double Limb, double Palsy);

/// <param name="MarginDeaths">Half-width for deaths, per 1,000, at which the run may end.</param>
/// <param name="StopAt">Hours of evacuation that the margins are asked of.</param>
public sealed record RunSize(
    int Casualties,
    int Batch,
    double Alpha,
    double MarginDeaths,
    double MarginLimbs,
    ImmutableArray<double> StopAt
)
{
    public int Batches => Casualties / Batch;
}

/// <param name="Draws">Of the figures, a power of two.</param>
/// <param name="Casualties">For each draw.</param>
/// <param name="Base">Of the Sobol' indices, a power of two; 0 for none.</param>
/// <param name="Policy">Whose net benefit is taken apart.</param>
/// <param name="At">Hours of evacuation.</param>
public sealed record UncertaintySize(
    int Draws,
    int Casualties,
    int Base,
    int Trajectories,
    int Policy,
    ImmutableArray<double> At,
    double Indifference
);
