using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Why a night is as it is.</summary>
public enum NightBy
{
    /// <summary>The hours that hold if nobody says otherwise.</summary>
    UsualHours,

    /// <summary>Hours set on this phone.</summary>
    SetHours,

    /// <summary>Hours, although daylight was asked for: no place is known.</summary>
    HoursWithoutPlace,

    Daylight,
}

/// <summary>The night that counts now.</summary>
/// <param name="Span">The one under way, or the next; null where it does not get dark.</param>
/// <param name="Cut">The dark is longer than a night may be.</param>
public sealed record NightInForce(NightSpan? Span, NightBy By, bool Cut)
{
    public bool Holds(Instant at) => Span is { } span && span.From <= at && at < span.To;
}

/// <summary>When it is night for the carers, as set on this phone: by its clock, or by the daylight where the way out begins.</summary>
public sealed class NightHours(IPhone phone, PhoneClock clock, Preferences preferences)
{
    private const string HoursKey = "night";
    private const string DaylightKey = "night-by";

    private (LocalDate Day, PlanPlace? Place, LocalTime From, LocalTime To) made;
    private Rhythm? nights;
    private ImmutableArray<DarkNight> dark = [];
    private (string Text, PlanPlace? Place) read = ("", null);

    public event Action? Changed;

    /// <summary>Whole hours of the clock; never further apart than a night may be.</summary>
    public (LocalTime From, LocalTime To) Hours
    {
        get =>
            phone.Get(HoursKey).Split('-') is [var from, var to]
            && Hour(from) is { } begins
            && Hour(to) is { } ends
            && Rhythm.CanBeANight(begins, ends)
                ? (begins, ends)
                : (Rhythm.UsualFrom, Rhythm.UsualTo);
        set => Keep(HoursKey, string.Create(CultureInfo.InvariantCulture, $"{value.From.Hour}-{value.To.Hour}"));
    }

    /// <summary>To follow daylight where a place is known; the hours hold where none is.</summary>
    public bool FollowsDaylight
    {
        get => phone.Get(DaylightKey) == "daylight";
        set => Keep(DaylightKey, value ? "daylight" : "");
    }

    /// <summary>Where the way out of the open casualty begins; null where nobody said.</summary>
    public PlanPlace? Place
    {
        get
        {
            var text = preferences.OpenCasualty is { Length: > 0 } open ? phone.Get(KeptWay.Key(open)) : "";
            if (text != read.Text)
                read = (text, KeptWay.Read(text)?.Plan.From);
            return read.Place;
        }
    }

    /// <summary>Nights around an instant, without changes of watch.</summary>
    public Rhythm Around(Instant now)
    {
        var place = FollowsDaylight ? Place : null;
        var (from, to) = Hours;
        var wanted = (now.InZone(clock.Zone).Date, place, from, to);
        if (nights is not null && wanted == made)
            return nights;
        dark = place is { } at ? DarkNights.Around(now, new(at.LatDeg, at.LonDeg)) : [];
        made = wanted;
        return nights = place is null ? Rhythm.ByClock(clock.Zone, from, to, now) : new([.. dark.Select(d => d.Span)], []);
    }

    public NightInForce InForce(Instant now)
    {
        var next = Around(now).Nights.Where(n => n.To > now).Select(n => (NightSpan?)n).FirstOrDefault();
        var cut = dark.Any(d => d.Cut && d.Span == next);
        if (made.Place is not null)
            return new(next, NightBy.Daylight, cut);
        return new(
            next,
            FollowsDaylight ? NightBy.HoursWithoutPlace
                : Hours == (Rhythm.UsualFrom, Rhythm.UsualTo) ? NightBy.UsualHours
                : NightBy.SetHours,
            false
        );
    }

    private static LocalTime? Hour(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour <= 23 ? new(hour, 0) : null;

    private void Keep(string key, string value)
    {
        phone.Set(key, value);
        Changed?.Invoke();
    }
}
