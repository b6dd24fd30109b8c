using System.Globalization;
using NodaTime;

namespace Farhold.Text;

/// <summary>Times and spans in words, for people.</summary>
public static class Say
{
    /// <summary>Whole minutes, rounded down: <c>40 min</c>, <c>1 h 02 min</c>, <c>3 d 4 h</c>.</summary>
    public static string Duration(Duration d)
    {
        var minutes = (long)Math.Floor(d.TotalMinutes);
        return minutes switch
        {
            < 0 => "−" + Duration(-d),
            < 60 => SayTexts.Minutes(minutes),
            < 72 * 60 => SayTexts.HoursMinutes(minutes / 60, string.Create(CultureInfo.InvariantCulture, $"{minutes % 60:00}")),
            _ => SayTexts.DaysHours(minutes / 1440, minutes % 1440 / 60),
        };
    }

    /// <summary>One span, or a range where it is not known exactly.</summary>
    public static string Elapsed(Elapsed e)
    {
        var (least, most) = (Duration(e.Min), Duration(e.Max));
        return least == most ? most : SayTexts.Range(least, most);
    }

    /// <summary>UTC to the minute, without saying so: <c>2031-05-04 02:10</c>.</summary>
    public static string Minute(Instant instant) => Minute(instant.InUtc().LocalDateTime);

    /// <summary>To the minute, always marked: <c>2031-05-04 02:10 UTC</c>, or <c>2031-05-04 14:10 UTC+12</c> in another zone.</summary>
    /// <param name="zone">Null: UTC.</param>
    public static string Time(Instant instant, DateTimeZone? zone = null)
    {
        var at = instant.InZone(zone ?? DateTimeZone.Utc);
        return $"{Minute(at.LocalDateTime)} UTC{(at.Offset == Offset.Zero ? "" : TimeText.Ahead(at.Offset))}";
    }

    public static string Time(Happened happened, DateTimeZone? zone = null) =>
        happened.IsInstant
            ? Time(happened.Earliest, zone)
            : SayTexts.BetweenTimes(Time(happened.Earliest, zone), Time(happened.Latest, zone));

    private static string Minute(LocalDateTime at) => $"{TimeText.Date(at.Date)} {TimeText.Clock(at.TimeOfDay)}";

    /// <summary><c>left leg</c>.</summary>
    public static string Limb(Limb limb) => Word(limb);

    /// <summary>A word of a file as people read it: <c>plain gauze</c>.</summary>
    public static string Word<T>(T value)
        where T : struct, Enum =>
        (Translation.None ? null : Translation.Word($"{typeof(T).Name}.{value}")) ?? Wire.Word(value).Replace('-', ' ');

    /// <summary>A number without trailing zeros.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
