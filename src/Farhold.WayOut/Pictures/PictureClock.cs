using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>Time across a picture: where an instant lies, and at which hours a line is drawn.</summary>
internal sealed record PictureClock(Instant From, Instant To, double Left, double Right, DateTimeZone Zone)
{
    private const int MostTicks = 5;
    private static readonly ImmutableArray<int> Steps = [1, 2, 3, 6, 12, 24, 48, 96, 240];

    public double X(Instant at) => Left + ((Right - Left) * Math.Clamp((at - From) / (To - From), 0, 1));

    /// <summary>Whole hours of the clock, with the day where it is a new one.</summary>
    public IEnumerable<(Instant At, string Text)> Ticks()
    {
        var step = Steps.First(h => h == Steps[^1] || (To - From).TotalHours / h <= MostTicks);
        var first = From.InZone(Zone).LocalDateTime.Date.AtMidnight();
        LocalDate? told = From.InZone(Zone).Date;
        for (var hours = 0; ; hours += step)
        {
            var at = Zone.AtLeniently(first.PlusHours(hours)).ToInstant();
            if (at > To)
                yield break;
            if (at < From)
                continue;
            var local = at.InZone(Zone);
            var day = local.Date != told && step < 24;
            told = local.Date;
            yield return (
                at,
                step >= 24 || day
                    ? PictureTexts.TickDay(local.Day, SayTexts.MonthsShort.Split(' ')[local.Month - 1])
                    : local.ToString("HH:mm", CultureInfo.InvariantCulture)
            );
        }
    }
}
