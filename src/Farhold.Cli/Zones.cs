using NodaTime;

namespace Farhold.Cli;

/// <summary>The time zone that an option names.</summary>
internal static class Zones
{
    /// <summary>UTC without a name; null, and said, where there is no such zone.</summary>
    public static DateTimeZone? Of(string? name)
    {
        var zone = name is null ? DateTimeZone.Utc : DateTimeZoneProviders.Tzdb.GetZoneOrNull(name);
        if (zone is null)
            ErrorOutput.Plainly($"--zone {name} is no time zone; write it like Europe/Oslo");
        return zone;
    }
}
