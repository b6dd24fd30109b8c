using System.Globalization;
using System.Text;
using NodaTime;

namespace Farhold.Text;

/// <summary>Times and dates as digits, the same in every language.</summary>
/// <remarks>The library's patterns say the same, but setting them up costs a slow phone most of a second at each start.</remarks>
public static class TimeText
{
    /// <summary><c>02:14</c>.</summary>
    public static string Clock(LocalTime time) => string.Create(CultureInfo.InvariantCulture, $"{time.Hour:00}:{time.Minute:00}");

    /// <summary><c>3 May</c>.</summary>
    public static string Day(LocalDate date) =>
        string.Create(CultureInfo.InvariantCulture, $"{date.Day} {SayTexts.MonthsShort.Split(' ')[date.Month - 1]}");

    /// <summary><c>3 September</c>.</summary>
    public static string LongDay(LocalDate date) =>
        string.Create(CultureInfo.InvariantCulture, $"{date.Day} {SayTexts.Months.Split(' ')[date.Month - 1]}");

    /// <summary><c>Monday</c>.</summary>
    public static string Weekday(IsoDayOfWeek day) => SayTexts.Weekdays.Split(' ')[(int)day - 1];

    /// <summary><c>2031-05-04</c>.</summary>
    public static string Date(LocalDate date) =>
        string.Create(CultureInfo.InvariantCulture, $"{date.Year:0000}-{date.Month:00}-{date.Day:00}");

    /// <summary>A date such as <c>2031-05-04</c> of the years 1 to 9999; null if the text is none.</summary>
    public static LocalDate? TryDate(string text)
    {
        ReadOnlySpan<byte> s = Encoding.UTF8.GetBytes(text);
        if (s.Length != 10 || s[4] != '-' || s[7] != '-')
            return null;
        int year = WrittenInstant.Digits(s[..4]),
            month = WrittenInstant.Digits(s[5..7]),
            day = WrittenInstant.Digits(s[8..]);
        return year >= 1 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? new LocalDate(year, month, day)
            : null;
    }

    /// <summary>RFC 3339 in UTC, with the fraction of a second only where there is one: <c>2031-05-04T02:10:00.25Z</c>.</summary>
    public static string Utc(Instant instant)
    {
        var at = instant.InUtc().LocalDateTime;
        var text = new StringBuilder(30)
            .Append(Date(at.Date))
            .Append(CultureInfo.InvariantCulture, $"T{at.Hour:00}:{at.Minute:00}:{at.Second:00}");
        if (at.NanosecondOfSecond != 0)
            text.Append(string.Create(CultureInfo.InvariantCulture, $".{at.NanosecondOfSecond:000000000}").TrimEnd('0'));
        return text.Append('Z').ToString();
    }

    /// <summary>East of Greenwich, no finer than needed: <c>+12</c>, <c>-03:30</c>.</summary>
    public static string Ahead(Offset offset)
    {
        var seconds = Math.Abs(offset.Seconds);
        var text = string.Create(CultureInfo.InvariantCulture, $"{(offset.Seconds < 0 ? '-' : '+')}{seconds / 3600:00}");
        if (seconds % 3600 != 0)
            text += string.Create(CultureInfo.InvariantCulture, $":{seconds / 60 % 60:00}");
        return seconds % 60 == 0 ? text : text + string.Create(CultureInfo.InvariantCulture, $":{seconds % 60:00}");
    }
}
