using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>Time from left to right, in pixels.</summary>
internal sealed record TimeAxis(Instant From, Instant To, double Left, double Right)
{
    private static readonly ImmutableArray<int> StepMinutes = [15, 30, 60, 120, 180, 360, 720, 1440, 2880, 7200, 14400, 43200];

    /// <summary>From first tightening to the limit and beyond: to now and to the arrival of help, unless that is far off.</summary>
    public static TimeAxis Of(LimbPicture picture, double left, double right)
    {
        var from = picture.Clock.FirstTightened.Earliest;
        var to = Instant.Max(picture.LimitAt, picture.Now);
        var furthest = Instant.Max(from + (picture.Limits.Limit * 2), from + ((picture.Now - from) * 1.25));
        if (picture.Arrival is { } arrival)
            to = Instant.Max(to, Instant.Min(arrival.Late, furthest));
        var span = to - from;
        return new(from - (span / 40), to + (span / 16), left, right);
    }

    /// <summary>Times outside stand at the edge.</summary>
    public double X(Instant at) => Left + ((Right - Left) * Math.Clamp((at - From).TotalSeconds / (To - From).TotalSeconds, 0, 1));

    public bool Holds(Instant at) => at >= From && at <= To;

    /// <summary>Even local times, far enough apart for their labels.</summary>
    public IEnumerable<(double X, LocalDateTime Local)> Ticks(DateTimeZone zone, double labelWidth)
    {
        var perMinute = (Right - Left) / (To - From).TotalMinutes;
        var step = StepMinutes.FirstOrDefault(m => m * perMinute >= labelWidth, StepMinutes[^1]);
        var midnight = zone.AtStartOfDay(From.InZone(zone).Date).ToInstant();
        for (var at = midnight; at <= To; at += Duration.FromMinutes(step))
            if (at >= From && X(at) is var x && x - (labelWidth / 2) >= 0)
                yield return (x, at.InZone(zone).LocalDateTime);
    }

    public static string Clock(Instant at, DateTimeZone zone) => at.InZone(zone).ToString("HH:mm", CultureInfo.InvariantCulture);

    public static string Day(LocalDateTime local) => local.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
