using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Whether the phone's clock contradicts what this phone itself has recorded.</summary>
public static class ClockDoubt
{
    /// <summary>Design: smaller steps are the phone's own corrections.</summary>
    public static readonly Duration Ignored = Duration.FromMinutes(2);

    /// <summary>How far the clock is behind <paramref name="latestRecorded"/>; null if it is not, or nothing was recorded.</summary>
    public static Duration? Behind(Instant? latestRecorded, Instant now) => latestRecorded - now is { } gap && gap > Ignored ? gap : null;

    /// <summary>The latest time recorded by <paramref name="device"/>; null if it has recorded nothing.</summary>
    /// <remarks>Its own lines are of one form, in which later times sort later: most need no reading.</remarks>
    public static Instant? LatestRecorded(ImmutableArray<StoredLine> lines, string device)
    {
        var own = $"{{\"id\":\"{device}-";
        var (latest, written) = ((Instant?)null, "");
        foreach (var line in lines)
            if (
                line.State == LineState.Kept
                && line.Text.StartsWith(own, StringComparison.Ordinal)
                && Recorded(line.Text) is { } at
                && string.CompareOrdinal(at, written) > 0
                && WrittenInstant.TryParse(at) is { } parsed
            )
                (latest, written) = (parsed, at);
        return latest;
    }

    // Within a text quotes are escaped, so this is the field itself.
    private static string? Recorded(string line)
    {
        const string field = "\"recorded\":\"";
        var from = line.IndexOf(field, StringComparison.Ordinal) + field.Length;
        var to = from < field.Length ? -1 : line.IndexOf('"', from);
        return to < 0 ? null : line[from..to];
    }
}
