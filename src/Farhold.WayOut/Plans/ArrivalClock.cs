using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>
/// Times of a plan as people say them: with the day always, the year where it is another, the offset where clocks change.
/// </summary>
/// <param name="Start">The plan's.</param>
public sealed record ArrivalClock(DateTimeZone Zone, Instant Start)
{
    public static ArrivalClock Of(Plan plan) => new(plan.TimeZone ?? DateTimeZone.Utc, plan.Start);

    /// <summary>Such as <c>14:20 on 4 May</c>, or <c>14:20 today, 4 May</c> where it is known what day it is.</summary>
    /// <param name="outward">−1 rounds to earlier, 1 to later, 0 to the nearest, by what the length from the start deserves.</param>
    /// <param name="now">Null: no day is called today or tomorrow.</param>
    public string At(Instant at, int outward = 0, Instant? now = null) => Said(Rounded(at, outward), at, now);

    /// <summary>To the minute.</summary>
    public string Exactly(Instant at, Instant? now = null) => Said(at.InZone(Zone), at, now);

    /// <summary>Such as <c>between 14:20 and 15:30 on 4 May</c>; rounded outwards, so that the words never promise more.</summary>
    public string Between(Instant early, Instant late)
    {
        var (from, to) = (Rounded(early, -1), Rounded(late, 1));
        return from.Date == to.Date
            ? PlanTexts.BetweenTimes(Hour(from), Hour(to), Day(to))
            : PlanTexts.BetweenDays(Hour(from), Day(from), Hour(to), Day(to));
    }

    private string Said(ZonedDateTime local, Instant at, Instant? now)
    {
        var (hour, day) = (Hour(local), Day(local));
        var days = now is { } known ? Period.DaysBetween(known.InZone(Zone).Date, at.InZone(Zone).Date) : (int?)null;
        return days switch
        {
            0 => PlanTexts.TimeToday(hour, day),
            1 => PlanTexts.TimeTomorrow(hour, day),
            _ => PlanTexts.TimeOnDay(hour, day),
        };
    }

    private ZonedDateTime Rounded(Instant at, int outward)
    {
        var minutes = ArrivalWords.Step(at - Start);
        var steps = at.ToUnixTimeTicks() / (double)(NodaConstants.TicksPerMinute * minutes);
        var whole =
            outward < 0 ? Math.Floor(steps)
            : outward > 0 ? Math.Ceiling(steps)
            : Math.Round(steps);
        return Instant.FromUnixTimeSeconds((long)whole * minutes * 60).InZone(Zone);
    }

    // A clock that is put back shows some hours twice, and one put forward jumps: then the offset says which is meant.
    private string Hour(ZonedDateTime local) =>
        local.ToString("HH:mm", CultureInfo.InvariantCulture)
        + (
            Zone == DateTimeZone.Utc ? " UTC"
            : local.Offset != Start.InZone(Zone).Offset || Zone.MapLocal(local.LocalDateTime).Count > 1
                ? local.ToString(" '(UTC'o<m>')'", CultureInfo.InvariantCulture)
            : ""
        );

    private string Day(ZonedDateTime local)
    {
        var month = SayTexts.Months.Split(' ')[local.Month - 1];
        return local.Year == Start.InZone(Zone).Year
            ? PlanTexts.DayOfMonth(local.Day, month)
            : PlanTexts.DayOfYear(local.Day, month, local.Year);
    }
}
