using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Whom to call, how and when, in words.</summary>
public static class ContactWords
{
    public static readonly ImmutableArray<IsoDayOfWeek> Week =
    [
        IsoDayOfWeek.Monday,
        IsoDayOfWeek.Tuesday,
        IsoDayOfWeek.Wednesday,
        IsoDayOfWeek.Thursday,
        IsoDayOfWeek.Friday,
        IsoDayOfWeek.Saturday,
        IsoDayOfWeek.Sunday,
    ];

    /// <summary><c>monday</c>, as in files.</summary>
    public static string Day(IsoDayOfWeek day) => day.ToString().ToLowerInvariant();

    /// <summary>Name, office, ways and hours in one line.</summary>
    public static string Whole(Contact contact) =>
        ProtocolTexts.ContactWhole(
            Who(contact),
            string.Join("; ", contact.Ways.Select(Way)),
            contact.Hours is { } hours ? Hours(hours) : ProtocolTexts.AtAnyHour
        );

    public static string Who(Contact contact) =>
        AllowedActs.Same(contact.Role, contact.Name) ? contact.Name : $"{contact.Name}, {contact.Role}";

    /// <summary><c>phone +47 55 50 10 10</c>, <c>radio, channel RK 5, call Skarvedal base</c>.</summary>
    public static string Way(ContactWay way) =>
        way.By switch
        {
            ContactChannel.Radio => ProtocolTexts.ByRadio(way.On ?? "", way.To),
            ContactChannel.Satellite => ProtocolTexts.BySatellite(way.To),
            ContactChannel.Message => ProtocolTexts.ByMessage(way.To),
            _ => ProtocolTexts.ByPhone(way.To),
        };

    /// <summary><c>07:00 to 23:00 on every day, 09:00 to 12:00 on saturday (Europe/Oslo)</c>.</summary>
    public static string Hours(ContactHours hours) => $"{string.Join(", ", hours.Open.Select(Hours))} ({hours.Zone.Id})";

    /// <summary>Whether it can be reached now, and when that changes, on the clock of whoever asks.</summary>
    /// <param name="when">An instant in words.</param>
    public static string Now(Contact contact, Instant now, Func<Instant, string> when)
    {
        if (contact.Hours is not { } hours)
            return ProtocolTexts.AtAnyHour;
        return hours.At(now) switch
        {
            { Open: true, Changes: { } ends } => ProtocolTexts.OpenUntil(when(ends), Say.Duration(ends - now)),
            { Open: true } => ProtocolTexts.Open,
            { Changes: { } opens } => ProtocolTexts.ClosedUntil(when(opens), Say.Duration(opens - now)),
            _ => ProtocolTexts.Closed,
        };
    }

    private static string Hours(OpenHours open)
    {
        var to = open.To == LocalTime.Midnight ? "24:00" : TimeText.Clock(open.To);
        var days = open.Days.Length == Week.Length ? ProtocolTexts.EveryDay : string.Join(", ", open.Days.Select(TimeText.Weekday));
        return ProtocolTexts.HoursOn(TimeText.Clock(open.From), to, open.Days.Length == Week.Length ? days : ProtocolTexts.OnDays + days);
    }
}
