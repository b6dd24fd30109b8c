using System.Collections.Immutable;
using System.Text.Json;
using Farhold.App.Store;
using NodaTime;
using NodaTime.Text;

namespace Farhold.App.Shell;

/// <summary>Whether the phone's clock contradicts what this phone itself has recorded.</summary>
public static class ClockDoubt
{
    /// <summary>Design: smaller steps are the phone's own corrections.</summary>
    public static readonly Duration Ignored = Duration.FromMinutes(2);

    /// <summary>How far the clock is behind <paramref name="latestRecorded"/>; null if it is not, or nothing was recorded.</summary>
    public static Duration? Behind(Instant? latestRecorded, Instant now) =>
        latestRecorded - now is { } gap && gap > Ignored ? gap : null;

    /// <summary>The latest time recorded by <paramref name="device"/>; null if it has recorded nothing.</summary>
    public static Instant? LatestRecorded(ImmutableArray<StoredLine> lines, string device) =>
        lines.Where(l => l.State == LineState.Kept).Max(l => RecordedBy(l.Text, device));

    private static Instant? RecordedBy(string line, string device)
    {
        if (!line.StartsWith($"{{\"id\":\"{device}-", StringComparison.Ordinal))
            return null;
        using var json = JsonDocument.Parse(line);
        return json.RootElement.TryGetProperty("recorded", out var at) && at.ValueKind == JsonValueKind.String
            && InstantPattern.ExtendedIso.Parse(at.GetString()!) is { Success: true } parsed ? parsed.Value : null;
    }
}
