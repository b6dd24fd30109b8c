using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>What the phone's receiver found, in words, and as an entry.</summary>
public static class PositionWords
{
    /// <summary>A position found longer ago is told with its age: a party that moves is elsewhere by then (design).</summary>
    public static readonly Duration Old = Duration.FromMinutes(2);

    /// <summary>Worse than this a searcher on foot, at night, passes by (design).</summary>
    private const double PoorM = 100;

    /// <summary>A degree in the seventh decimal is a centimetre; a fifth, a metre, is more than any phone knows.</summary>
    private const int Decimals = 5;

    public static Payload.PositionNoted Entry(Fix fix) =>
        new(
            Math.Round(fix.Lat, Decimals),
            Math.Round(fix.Lon, Decimals),
            Math.Clamp(Math.Ceiling(fix.AccuracyM), 1, 100_000),
            fix.AltitudeM is { } altitude ? Math.Round(altitude) : null
        );

    public static string Accuracy(Fix fix, Texts texts) =>
        fix.AccuracyM < 1000
            ? texts.Metres((long)Math.Ceiling(fix.AccuracyM))
            : texts.Kilometres(Say.Number(Math.Ceiling(fix.AccuracyM / 100) / 10));

    /// <summary>Why not to rely on it; null for no reason.</summary>
    public static string? Doubt(Fix fix, Instant now, Texts texts) =>
        fix.At < now - Old ? texts.PositionOld(Say.Duration(now - fix.At))
        : fix.AccuracyM > PoorM ? texts.PositionPoor(Accuracy(fix, texts))
        : null;

    public static string NotYet(FixState state, Texts texts) =>
        state switch
        {
            FixState.Waiting => texts.PositionWaiting,
            FixState.Refused => texts.PositionRefused,
            FixState.Unavailable => texts.PositionUnavailable,
            FixState.None => texts.PositionNone,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>Places worth a bearing: where the plan sets out, and where the casualty was last.</summary>
    public static IEnumerable<Mark> Marks(State state, Plan? plan, Texts texts, Func<Happened, string> when)
    {
        if (plan?.From is { } from)
            yield return new(texts.PositionPlan, new(from.LatDeg, from.LonDeg));
        if (state.Of(Kind.PositionNoted).LastOrDefault() is { } last && last.As<Payload.PositionNoted>() is var noted)
            yield return new(texts.PositionLast(when(last.When)), new(noted.Lat, noted.Lon));
    }

    /// <param name="Name">What it is.</param>
    public sealed record Mark(string Name, GeoPoint Place)
    {
        /// <summary>How far, and in which direction from true north, it lies from here.</summary>
        public string From(GeoPoint here, Texts texts)
        {
            var path = Geodesic.Between(here, Place);
            var far =
                path.Metres < 1000
                    ? texts.Metres((long)Math.Round(path.Metres / 10) * 10)
                    : texts.Kilometres(Say.Number(Math.Round(path.Metres / 100) / 10));
            return path.Metres < 5
                ? texts.PositionHere(Name)
                : texts.PositionMark(
                    Name,
                    far,
                    ((long)Math.Round(path.StartAzimuth) % 360).ToString("000", System.Globalization.CultureInfo.InvariantCulture)
                );
        }
    }
}
