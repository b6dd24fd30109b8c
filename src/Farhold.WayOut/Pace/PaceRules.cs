using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>A walking rule that times one leg, with where it comes from and what to beware of.</summary>
/// <param name="Id">The word a plan uses.</param>
public sealed record PaceRule(
    string Id,
    Func<string> Named,
    Evidence Mark,
    string Source,
    Func<string> Warned,
    Func<Stretch, Duration> Time
)
{
    public string Name => Named();

    public string Caution => Warned();
}

/// <summary>The walking rules a plan may name; each times one leg, not a day.</summary>
public static class PaceRules
{
    public static ImmutableArray<PaceRule> All { get; } =
    [
        new(
            "din33466",
            () => "DIN 33466",
            Evidence.Read,
            "DIN 33466, read at wanderndeluxe.de",
            () => PaceTexts.StageByStage,
            Din33466.Time
        ),
        new(
            "naismith",
            () => "Naismith",
            Evidence.Read,
            "Naismith 1892, read at docsbay.net/naismiths-rule",
            () => PaceTexts.FitWalkers,
            s => Naismith.Time(s)
        ),
        new(
            "scarf",
            () => PaceTexts.ScarfName,
            Evidence.Read,
            "Scarf, read at exl.pages.dev/Naismith's_Rule",
            () => PaceTexts.FitWalkers,
            s => Scarf.Time(s)
        ),
        new(
            "langmuir",
            () => PaceTexts.LangmuirName,
            Evidence.Read,
            "Langmuir, read at docsbay.net/naismiths-rule",
            () => PaceTexts.LangmuirCaution,
            s => Langmuir.Time(s)
        ),
        new(
            "tobler",
            () => "Tobler",
            Evidence.Read,
            "Tobler 1993, read at friendlywiki.com",
            () => PaceTexts.Footpaths,
            s => Tobler.Time(s)
        ),
        new(
            "swiss",
            () => PaceTexts.SwissName,
            Evidence.Read,
            "geoblocks/tracktime src/walking.js",
            () => PaceTexts.SignedPaths,
            SwissSignpost.Time
        ),
        new(
            "munter",
            () => "Munter",
            Evidence.Read,
            "Munter, read at chrismarchbanks.com/post/trip-speed",
            () => PaceTexts.MunterRates,
            s => Munter.Time(s)
        ),
        new(
            "campbell",
            () => "Campbell",
            Evidence.Read,
            "Campbell and others 2019, Applied Geography 106:93-107",
            () => PaceTexts.SelfRecorded,
            s => Campbell.Time(s)
        ),
        new(
            "runner",
            () => PaceTexts.RunnerName,
            Evidence.Computed,
            "Campbell and others 2019, the fastest tenth but one",
            () => PaceTexts.OneFitPerson,
            s => Campbell.Time(s, 90)
        ),
    ];

    /// <summary>What walking is timed by unless a leg says otherwise: rescuers and whoever goes for help walk fast.</summary>
    /// <remarks>Set beside published rescues, DIN 33466 brought teams too late (way-out review: ratio .69, with Naismith .74).</remarks>
    public static PaceRule Default { get; } = Find("naismith")!;

    /// <summary>For a casualty or a tired party on foot: slow on the flat, and it counts descent.</summary>
    public static PaceRule Tired { get; } = Find("din33466")!;

    public static PaceRule? Find(string id) => All.FirstOrDefault(rule => rule.Id == id);
}
