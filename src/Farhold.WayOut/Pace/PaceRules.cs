using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pace;

/// <summary>A walking rule that times one leg, with where it comes from and what to beware of.</summary>
/// <param name="Id">The word a plan uses.</param>
public sealed record PaceRule(string Id, string Name, Evidence Mark, string Source, string Caution, Func<Stretch, Duration> Time);

/// <summary>The walking rules a plan may name; each times one leg, not a day.</summary>
public static class PaceRules
{
    public static ImmutableArray<PaceRule> All { get; } =
    [
        new("din33466", "DIN 33466", Evidence.Read, "DIN 33466, read at wanderndeluxe.de", "Apply stage by stage.", Din33466.Time),
        new(
            "naismith",
            "Naismith",
            Evidence.Read,
            "Naismith 1892, read at docsbay.net/naismiths-rule",
            "Fit walkers on paths; counts no descent.",
            s => Naismith.Time(s)
        ),
        new(
            "scarf",
            "Naismith as flat distance, 8 to 1",
            Evidence.Read,
            "Scarf, read at exl.pages.dev/Naismith's_Rule",
            "Fit walkers on paths; counts no descent.",
            s => Scarf.Time(s)
        ),
        new(
            "langmuir",
            "Naismith with Langmuir",
            Evidence.Read,
            "Langmuir, read at docsbay.net/naismiths-rule",
            "Apply stage by stage; jumps at 5 and 12 degrees of descent.",
            s => Langmuir.Time(s)
        ),
        new(
            "tobler",
            "Tobler",
            Evidence.Read,
            "Tobler 1993, read at friendlywiki.com",
            "Footpaths; says nothing of loads.",
            s => Tobler.Time(s)
        ),
        new(
            "swiss",
            "Swiss signposts",
            Evidence.Read,
            "geoblocks/tracktime src/walking.js",
            "Signed footpaths, slopes under 40 %.",
            SwissSignpost.Time
        ),
        new(
            "munter",
            "Munter",
            Evidence.Read,
            "Munter, read at chrismarchbanks.com/post/trip-speed",
            "Rates 4 up and 6 down.",
            s => Munter.Time(s)
        ),
        new(
            "campbell",
            "Campbell",
            Evidence.Read,
            "Campbell and others 2019, Applied Geography 106:93-107",
            "The middle of hikers and runners who recorded themselves: fast.",
            s => Campbell.Time(s)
        ),
        new(
            "runner",
            "a runner",
            Evidence.Computed,
            "Campbell and others 2019, the fastest tenth but one",
            "One fit person without a load; not in the dark, not in snow.",
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
