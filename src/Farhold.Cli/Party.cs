using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Cli;

/// <summary>Who shares the watch, and where: what the options about a roster come to.</summary>
internal sealed record Party(ImmutableArray<string> Members, DateTimeZone Zone, (LocalTime From, LocalTime To)? Night)
{
    /// <param name="zone">Null: UTC, and no night.</param>
    /// <returns>Null with a refusal.</returns>
    public static Party? Of(string? names, DateTimeZone? zone, string night, out string? refusal)
    {
        refusal = null;
        ImmutableArray<string> members = names is null
            ? []
            : [.. names.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        if (names is not null && (members.Length is 0 or > Roster.MostMembers || members.Distinct().Count() != members.Length))
            refusal = $"--party is one to {Roster.MostMembers} different names, such as Ane,Jon";
        else if (Hours(night) is not { } hours)
            refusal = $"--night is two different hours of the clock, at most {Rhythm.LongestNight.TotalHours} h apart, such as 22-6";
        else
            return new(members, zone ?? DateTimeZone.Utc, zone is null ? null : hours);
        return null;
    }

    public Rhythm Nights(Instant around) => Night is { } night ? Rhythm.ByClock(Zone, night.From, night.To, around) : Rhythm.None;

    private static (LocalTime From, LocalTime To)? Hours(string night)
    {
        var parts = night.Split('-');
        return parts.Length == 2 && Hour(parts[0]) is { } from && Hour(parts[1]) is { } to && Rhythm.CanBeANight(new(from, 0), new(to, 0))
            ? (new(from, 0), new(to, 0))
            : null;
    }

    private static int? Hour(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && hour <= 23 ? hour : null;
}
