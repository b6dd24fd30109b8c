using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Exchange.Calendar;

/// <summary>An iCalendar file of events with alarms, in UTC.</summary>
/// <remarks>Source: RFC 5545 (2009), sections 3.4, 3.6.1 and 3.6.6.</remarks>
public static class CalendarFile
{
    public const string MediaType = "text/calendar";

    /// <summary>Design: how long an event stands in the calendar.</summary>
    private static readonly Duration Length = Duration.FromMinutes(5);

    private static readonly InstantPattern Utc = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'Z'");

    /// <param name="written">When the file is made; sub-second parts are dropped everywhere.</param>
    /// <exception cref="ArgumentException">There is no item, two share a uid, or an alarm or sequence is negative.</exception>
    public static string Write(ImmutableArray<CalendarItem> items, Instant written)
    {
        if (items.IsEmpty)
            throw new ArgumentException("A calendar file needs at least one item.", nameof(items));
        if (items.DistinctBy(i => i.Uid).Count() < items.Length)
            throw new ArgumentException("Two items share a uid.", nameof(items));
        var file = new StringBuilder();
        ContentLine.Write(file, "BEGIN", "VCALENDAR");
        ContentLine.Write(file, "VERSION", "2.0");
        ContentLine.Write(file, "PRODID", $"-//Farhold//{Product.Named} reminders//EN");
        ContentLine.Write(file, "METHOD", "PUBLISH");
        foreach (var item in items)
            Write(file, item, written);
        ContentLine.Write(file, "END", "VCALENDAR");
        return file.ToString();
    }

    private static void Write(StringBuilder file, CalendarItem item, Instant written)
    {
        if (item.Sequence < 0 || item.Alarms.Any(a => a < Duration.Zero))
            throw new ArgumentException($"Sequence and alarms of {item.Uid} can't be negative.", nameof(item));
        ContentLine.Write(file, "BEGIN", "VEVENT");
        ContentLine.Write(file, "UID", ContentLine.Text(item.Uid));
        ContentLine.Write(file, "SEQUENCE", item.Sequence.ToString(CultureInfo.InvariantCulture));
        ContentLine.Write(file, "DTSTAMP", Utc.Format(written));
        ContentLine.Write(file, "DTSTART", Utc.Format(item.At));
        ContentLine.Write(file, "DTEND", Utc.Format(item.At + Length));
        ContentLine.Write(file, "SUMMARY", ContentLine.Text(item.Summary));
        ContentLine.Write(file, "DESCRIPTION", ContentLine.Text(item.Description));
        ContentLine.Write(file, "TRANSP", "TRANSPARENT");
        foreach (var alarm in item.Alarms)
        {
            ContentLine.Write(file, "BEGIN", "VALARM");
            ContentLine.Write(file, "ACTION", "DISPLAY");
            ContentLine.Write(file, "TRIGGER", alarm == Duration.Zero ? "PT0S" : "-" + IsoSpan.Write(alarm));
            ContentLine.Write(file, "DESCRIPTION", ContentLine.Text(item.Summary));
            ContentLine.Write(file, "END", "VALARM");
        }

        ContentLine.Write(file, "END", "VEVENT");
    }
}
