using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>The sentence that twenty dots add up to, right for whoever reads only it: share, what, by when, on which day.</summary>
public static class DotWords
{
    /// <param name="care">What is reached, such as <c>a clinic</c>.</param>
    /// <param name="limit">A limit that is still to come; null: by when seven in ten have arrived.</param>
    public static string Sentence(ArrivalDots dots, string care, Instant? limit, ArrivalClock clock, Instant now)
    {
        if (dots.By(limit) is not { } by)
            return PictureTexts.ReachedAtAll(Share(dots.Arrivals.Count(at => at is not null)), care);
        // What is not rounded to a limit is rounded later, so that the words never promise more than the dots.
        return limit is null
            ? PictureTexts.ReachedBy(Share(dots.Arrivals.Count(at => at <= by)), care, clock.At(by, 1, now))
            : PictureTexts.ReachedBefore(Share(dots.Before(by)), care, clock.Exactly(by, now));
    }

    /// <summary>Of ten where that comes out whole, else of twenty.</summary>
    public static string Share(int dots) =>
        dots == 0 ? PictureTexts.FewerThan(ArrivalDots.Count)
        : dots == ArrivalDots.Count ? PictureTexts.MoreThan(ArrivalDots.Count - 1, ArrivalDots.Count)
        : dots % 2 == 0 ? PictureTexts.OfTen(dots / 2)
        : PictureTexts.OfAll(dots, ArrivalDots.Count);
}
