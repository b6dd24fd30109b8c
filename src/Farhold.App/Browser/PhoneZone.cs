using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;

namespace Farhold.App.Browser;

/// <summary>The phone's own time zone, as its browser tells it, from some years back to some years ahead.</summary>
/// <remarks>The rules of all zones of the world need not be read first, which takes a slow phone half a second.</remarks>
public sealed class PhoneZone : DateTimeZone
{
    private readonly ZoneInterval[] intervals;

    private PhoneZone(string id, ZoneInterval[] intervals)
        : base(id, intervals.Length == 1, intervals.Min(i => i.WallOffset), intervals.Max(i => i.WallOffset)) => this.intervals = intervals;

    /// <summary>Stands beside times where the phone does not name its zone.</summary>
    private const string Nameless = "local time";

    /// <param name="id">Name of the zone, such as <c>Pacific/Auckland</c>; empty if the phone does not say.</param>
    /// <param name="told">
    /// Seconds east of Greenwich, then every change as <c>seconds since 1970:seconds east</c>, in order of time, divided by
    /// spaces: <c>43200 1727532000:46800 1743861600:43200</c>. The first and last hold on without end.
    /// </param>
    public static PhoneZone Of(string id, string told)
    {
        id = id.Length == 0 ? Nameless : id;
        var parts = told.Split(' ');
        var (offset, from) = (Seconds(parts[0]), (Instant?)null);
        var intervals = new ZoneInterval[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            var change = i + 1 < parts.Length ? parts[i + 1].Split(':') : null;
            var to = change is null ? (Instant?)null : Instant.FromUnixTimeSeconds(long.Parse(change[0], CultureInfo.InvariantCulture));
            intervals[i] = new ZoneInterval(id, from, to, offset, Offset.Zero);
            (from, offset) = (to, change is null ? offset : Seconds(change[1]));
        }

        return new(id, intervals);
    }

    public override ZoneInterval GetZoneInterval(Instant instant)
    {
        var (low, high) = (0, intervals.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (intervals[middle].End <= instant)
                low = middle + 1;
            else
                high = middle;
        }

        return intervals[low];
    }

    private static Offset Seconds(string text) => Offset.FromSeconds(int.Parse(text, CultureInfo.InvariantCulture));
}
