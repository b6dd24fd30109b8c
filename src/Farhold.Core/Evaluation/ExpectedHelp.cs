using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>What kind of help comes when, by the newest entry of each kind.</summary>
internal static class ExpectedHelp
{
    /// <summary>
    /// Whether care that can take the limb over comes soon enough: surgery, at the latest, within the protocol's time and while the
    /// limb is within its limit; or a clinic while it is within the first window. More hands never are. No reading: unknown.
    /// </summary>
    public static ImmutableArray<Reading> Soon(Scene scene)
    {
        if (scene.Clock is not { } clock)
            return [];
        var on = TimeOn.Of(clock, scene.Casualty).Max;
        var limits = scene.Casualty.Protocol.Clock;
        var coming = Coming(scene);
        if (coming.Length == 0)
            return scene.Casualty.Advice.Unreached ? [InputReadings.Now(scene, false)] : [];
        var soon = coming.Aggregate(
            Truth.NotMet,
            (truth, help) =>
                truth.Or(
                    help.Care switch
                    {
                        HelpCare.Surgery => help.By(limits.Soon).And(help.By(limits.Longest.Limit - on, sharp: true)),
                        HelpCare.Clinic => help.By(limits.Longest.Window - on, sharp: true),
                        _ => help.Likely <= limits.Soon ? Truth.Unknown : help.By(limits.Soon).And(Truth.Unknown),
                    }
                )
        );
        return soon == Truth.Unknown ? [] : [InputReadings.Now(scene, soon == Truth.Met)];
    }

    /// <summary>Seconds until surgery, or help of a kind nobody named, at the latest.</summary>
    public static ImmutableArray<Reading> Within(Scene scene) =>
        [.. Newest(scene).Where(h => h.Care is HelpCare.Surgery or null).Select(h => h.Reading)];

    /// <summary>Those that count: help of an unnamed kind no longer once a kind was named later.</summary>
    private static Help[] Coming(Scene scene) => [.. Newest(scene).Where(h => h.Care != HelpCare.Hands)];

    private static IEnumerable<Help> Newest(Scene scene)
    {
        var all = scene.State.Of(Kind.HelpExpected);
        var fresh = scene.Casualty.Protocol.Freshness.GetValueOrDefault("helpWithin", Duration.MaxValue);
        var named = all.Where(d => d.When.Latest <= scene.Now && d.As<Payload.HelpExpected>().Care is HelpCare.Clinic or HelpCare.Surgery)
            .Select(d => d.When.Earliest)
            .DefaultIfEmpty(Instant.MinValue)
            .Max();
        foreach (var care in (HelpCare?[])[HelpCare.Surgery, HelpCare.Clinic, HelpCare.Hands, null])
        foreach (
            var help in Current.Of<Help>(
                all,
                scene.Now,
                d =>
                    d.As<Payload.HelpExpected>() is var p && p.Care == care
                        ? new Help(care, p.Likely - scene.Now, p.Latest - scene.Now, d.When, IsStale(d))
                        : null
            )
        )
            if (care is not null || help.When.Latest >= named)
                yield return help;

        bool IsStale(Dated entry) => entry.When.Until(scene.Now).Max > fresh && !scene.Casualty.Advice.Unreached;
    }

    /// <param name="Likely">From now; negative once it has passed.</param>
    /// <param name="Latest">Null where nobody said.</param>
    /// <param name="Stale">Too old to decide by.</param>
    private readonly record struct Help(HelpCare? Care, Duration Likely, Duration? Latest, Happened When, bool Stale)
    {
        /// <summary>Whether it is here by then at the latest.</summary>
        /// <param name="sharp">Arriving at that very time is too late.</param>
        public Truth By(Duration time, bool sharp = false)
        {
            if (time < Duration.Zero || (sharp && time == Duration.Zero))
                return Truth.NotMet;
            bool In(Duration from) => sharp ? from < time : from <= time;
            return Latest switch
            {
                { } latest when latest < Duration.Zero => Truth.Unknown,
                { } latest when In(latest) => Stale ? Truth.Unknown : Truth.Met,
                { } => Stale ? Truth.Unknown : Truth.NotMet,
                null => Stale || In(Likely) ? Truth.Unknown : Truth.NotMet,
            };
        }

        /// <summary>
        /// Without a latest time the worse side is open: only the likely time bounds it from below. Once the latest time has
        /// passed and nobody came, nothing is known any more.
        /// </summary>
        public Reading Reading =>
            Latest switch
            {
                null => new(Likely.TotalSeconds, double.PositiveInfinity, null, When),
                { } latest when latest < Duration.Zero => new(double.NegativeInfinity, double.PositiveInfinity, null, When),
                { } latest => Farhold.Signs.Reading.Of(latest.TotalSeconds, When),
            };
    }
}
