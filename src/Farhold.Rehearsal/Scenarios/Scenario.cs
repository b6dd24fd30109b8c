using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>An invented casualty, where and when, what has been done already, and what is going to happen.</summary>
/// <remarks>Form: <c>scenarios/scenario.schema.json</c>. Times are in seconds from the start, at which the trainee arrives.</remarks>
public sealed record Scenario
{
    public required string Id { get; init; }
    public required string Title { get; init; }

    /// <summary>What the trainee is told at the start.</summary>
    public required string Briefing { get; init; }

    public string? Note { get; init; }

    /// <summary>In the language that is spoken, where <c>scenarios/words</c> has it; an author's own stays as it was written.</summary>
    public string ShownTitle => Translation.Scenario(Title);

    /// <summary>As <see cref="ShownTitle"/>.</summary>
    public string ShownBriefing => Translation.Scenario(Briefing);

    /// <summary>SHA-256 of the file, in lower-case hexadecimal digits.</summary>
    public required string Hash { get; init; }

    /// <summary>Number of the casualty model.</summary>
    public required int Model { get; init; }

    /// <summary>With this one the values of the file hold as they stand; with any other they vary as the file allows.</summary>
    public required ulong Seed { get; init; }

    public required Instant Start { get; init; }
    public DateTimeZone? Zone { get; init; }
    public ImmutableArray<TeachingPoint> Learn { get; init; } = [];
    public required ScenarioCasualty Casualty { get; init; }

    /// <summary>At least one; the limb of the first is the modelled one.</summary>
    public required ImmutableArray<ScenarioWound> Wounds { get; init; }

    /// <summary>When the wounds began to bleed, in seconds: 0 or before.</summary>
    public double InjuredAt { get; init; }

    /// <summary>What others did before the trainee arrived, in order of time.</summary>
    public ImmutableArray<EarlierAct> Before { get; init; } = [];

    public required Surroundings Surroundings { get; init; }

    /// <summary>The first is the trainee.</summary>
    public ImmutableArray<Companion> Party { get; init; } = [new("Trainee", Trained: true)];

    public ImmutableArray<KitCount> Kit { get; init; } = [];
    public ExpectedHelp? Help { get; init; }
    public ImmutableArray<Inject> Injects { get; init; } = [];
    public required ScenarioEnd End { get; init; }
    public ImmutableArray<Expectation> Expect { get; init; } = [];

    /// <summary>As the file says them.</summary>
    public ImmutableArray<string> AuthorsLimits { get; init; } = [];
    public Variation Vary { get; init; } = Variation.None;

    /// <summary>The limb whose veins and muscle are modelled; null where the first wound is on the trunk.</summary>
    public Limb? ModelledLimb => Wounds[0].Limb;

    /// <summary>Those with wounds, in the order of the file.</summary>
    public ImmutableArray<Limb> Limbs => [.. Wounds.Select(w => w.Limb).OfType<Limb>().Distinct()];

    /// <summary>What the author says, and what holds of every scenario of its kind, whether the author thought of it or not.</summary>
    public ImmutableArray<string> KnownLimits =>
        [
            .. AuthorsLimits,
            .. Limbs.Length > 1 ? [ScenarioTexts.LimitTwoLimbs(Say.Limb(Limbs[0]))] : (string[])[],
            .. Casualty.AgeYears < ScenarioCasualty.YoungestModelled
                ? [ScenarioTexts.LimitYoung(Say.Number(Casualty.AgeYears), Say.Number(ScenarioCasualty.YoungestModelled))]
                : (string[])[],
        ];

    public bool Has(string item) => Kit.Any(k => k.Item == item && k.Count > 0);
}

/// <summary>What a scenario is there to teach: the steps of converting a tourniquet, and what goes on around them.</summary>
/// <remarks>Own wording, after the steps of the protocol.</remarks>
public enum TeachingPoint
{
    DecideAttempt,
    LayOut,
    TakeSigns,
    PackTight,
    PressLong,
    Dress,
    SlackenSlowly,
    LeaveLoose,
    WatchClosely,
    CatchBleeding,
    LogTimes,
    TellPeople,
    LeaveOn,
    KeepWarm,
    AskAdvice,
    SeeWarning,
}

/// <param name="AgeYears">The model takes nobody as younger than <see cref="YoungestModelled"/>.</param>
/// <param name="HeartRate">At rest, a minute; null is usual.</param>
/// <param name="Pain">0 to 10, at the start.</param>
/// <param name="Anxiety">0 to 1.</param>
/// <param name="BetaBlockade">0 to 1.</param>
/// <param name="Anticoagulation">0 to 1.</param>
public sealed record ScenarioCasualty(
    string Alias,
    Sex Sex,
    double AgeYears,
    double MassKg,
    double HeightM,
    double? HeartRate,
    double Pain,
    double Anxiety,
    double BetaBlockade,
    double Anticoagulation,
    ImmutableArray<string> Medicines
)
{
    public const double YoungestModelled = 12;
}

public enum Vessel
{
    Artery,
    Vein,
}

/// <param name="Limb">Null where it is in a region.</param>
/// <param name="BleedMlPerMin">Open, at a resting pressure.</param>
/// <param name="Difficulty">Of holding it: 0 easy, 1 hard; null is drawn.</param>
/// <param name="Looks">What it looks like, for the trainee.</param>
/// <param name="Found">Whether the record has it from the start.</param>
public sealed record ScenarioWound(
    string Name,
    Limb? Limb,
    BodyRegion? Region,
    WoundNature Nature,
    Vessel Vessel,
    double BleedMlPerMin,
    bool NeedsTourniquet,
    double? Difficulty,
    string? Looks,
    bool Found
);

/// <param name="At">In seconds, 0 or before.</param>
/// <param name="Tourniquet">The name that the record gives it; null where the act is none of a tourniquet.</param>
/// <param name="Reported">What people say about when it was, in seconds; null is that nobody says anything.</param>
public sealed record EarlierAct(double At, Act Act, string? Tourniquet, TourniquetMake? Make, (double Earliest, double Latest)? Reported);

/// <param name="AirC">°C.</param>
/// <param name="Insulation">Of clothing and air, m²K/W.</param>
/// <param name="Wetness">0 to 1.</param>
public sealed record Surroundings(double AirC, double Insulation, double Wetness, bool Dark, double? WindKmh);

public sealed record Companion(string Name, bool Trained);

public sealed record KitCount(string Item, int Count);

/// <summary>In seconds from the start.</summary>
public sealed record ExpectedHelp(HelpCare Care, double Likely, double? Earliest, double? Latest);

/// <summary>Something that happens to the scene. Judged once a second.</summary>
/// <param name="At">In seconds; null where a condition decides.</param>
/// <param name="After">It happens once the condition has held for so long, in seconds.</param>
/// <param name="Once">Else each time the condition comes to hold anew.</param>
/// <param name="Acts">Done by nobody of the trainee's; they begin at once.</param>
/// <param name="Show">What looks show from then on, whatever is true.</param>
public sealed record Inject(
    string Id,
    double? At,
    Condition? When,
    double After,
    bool Once,
    string? Say,
    ImmutableArray<Act> Acts,
    SignOverride Show
)
{
    /// <summary>As <see cref="Scenario.ShownTitle"/>; it is in no record and no truth file.</summary>
    public string? ShownSay => Say is null ? null : Translation.Scenario(Say);
}

/// <summary>Signs that a look shows in place of the truth; null leaves one alone.</summary>
public sealed record SignOverride(
    double? HeartRate = null,
    double? BreathRate = null,
    double? Systolic = null,
    double? Diastolic = null,
    double? CapillaryRefillS = null,
    double? TemperatureC = null,
    Mental? Mental = null
)
{
    public static readonly SignOverride None = new();

    /// <summary>The newer of each.</summary>
    public SignOverride With(SignOverride newer) =>
        new(
            newer.HeartRate ?? HeartRate,
            newer.BreathRate ?? BreathRate,
            newer.Systolic ?? Systolic,
            newer.Diastolic ?? Diastolic,
            newer.CapillaryRefillS ?? CapillaryRefillS,
            newer.TemperatureC ?? TemperatureC,
            newer.Mental ?? Mental
        );
}

/// <param name="At">In seconds: at the latest.</param>
/// <param name="When">Null: at no other time but where the circulation stops.</param>
public sealed record ScenarioEnd(double At, Condition? When);

/// <summary>What the debrief looks for: an entry, a verdict, or a condition, by some time.</summary>
/// <param name="By">In seconds; null: by the end.</param>
/// <param name="Entry">Kind of an entry.</param>
public sealed record Expectation(string Text, double? By, Kind? Entry, Verdict? Verdict, Condition? When);

/// <summary>What differs with another seed, each evenly within its bounds.</summary>
/// <param name="NeedsTourniquet">Chance, 0 to 1, that a wound needs one.</param>
public sealed record Variation(
    (double From, double To)? BleedMlPerMin,
    (double From, double To)? MassKg,
    (double From, double To)? AgeYears,
    (double From, double To)? Difficulty,
    (double From, double To)? AirC,
    double? NeedsTourniquet
)
{
    public static readonly Variation None = new(null, null, null, null, null, null);

    /// <summary>The scenario as it is with a seed.</summary>
    public static Scenario Of(Scenario scenario, ulong seed)
    {
        if (seed == scenario.Seed)
            return scenario;
        var (vary, draws) = (scenario.Vary, new NamedDraws(seed));
        double? Within((double From, double To)? bounds, string name) =>
            bounds is var (from, to) ? from + ((to - from) * draws.Uniform($"vary:{name}")) : null;
        return scenario with
        {
            Casualty = scenario.Casualty with
            {
                MassKg = Within(vary.MassKg, "massKg") ?? scenario.Casualty.MassKg,
                AgeYears = Within(vary.AgeYears, "ageYears") is { } age ? Math.Floor(age) : scenario.Casualty.AgeYears,
            },
            Surroundings = scenario.Surroundings with { AirC = Within(vary.AirC, "airC") ?? scenario.Surroundings.AirC },
            Wounds =
            [
                .. scenario.Wounds.Select(w =>
                    w with
                    {
                        BleedMlPerMin = Within(vary.BleedMlPerMin, $"{w.Name}/bleed") ?? w.BleedMlPerMin,
                        Difficulty = Within(vary.Difficulty, $"{w.Name}/difficulty") ?? w.Difficulty,
                        NeedsTourniquet = vary.NeedsTourniquet is { } share
                            ? draws.Uniform($"vary:{w.Name}/needed") < share
                            : w.NeedsTourniquet,
                    }
                ),
            ],
        };
    }
}
