using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>The sentence that twenty dots add up to, right for whoever reads only it: share, what, by when, on which day.</summary>
public static class DotWords
{
    /// <param name="care">What is reached, such as <c>a clinic</c>.</param>
    /// <param name="limit">A limit that is still to come; null: by when seven in ten have arrived.</param>
    public static string Sentence(ArrivalDots dots, string care, Instant? limit, ArrivalClock clock, Instant now)
    {
        var through = dots.Arrivals.Count(at => at is not null);
        if (dots.By(limit) is not { } by)
            return $"{Share(through)} that {care} is reached at all; else none gets through within 60 days.";
        // What is not rounded to a limit is rounded later, so that the words never promise more than the dots.
        var said = limit is null ? clock.At(by, 1) : clock.Exactly(by);
        var count = limit is null ? dots.Arrivals.Count(at => at <= by) : dots.Before(by);
        return $"{Share(count)} that {care} is reached {(limit is null ? "by" : "before")} {Day(said, by, clock, now)}.";
    }

    /// <summary>Of ten where that comes out whole, else of twenty.</summary>
    public static string Share(int dots) =>
        dots == 0 ? $"Fewer than 1 in {ArrivalDots.Count}"
        : dots == ArrivalDots.Count ? $"More than {ArrivalDots.Count - 1} in {ArrivalDots.Count}"
        : dots % 2 == 0 ? $"{dots / 2} in 10"
        : $"{dots} in {ArrivalDots.Count}";

    private static string Day(string said, Instant at, ArrivalClock clock, Instant now)
    {
        var days = Period.DaysBetween(now.InZone(clock.Zone).Date, at.InZone(clock.Zone).Date);
        var day =
            days == 0 ? "today, "
            : days == 1 ? "tomorrow, "
            : "";
        return said.Replace(" on ", day.Length == 0 ? " on " : $" {day}", StringComparison.Ordinal);
    }
}
