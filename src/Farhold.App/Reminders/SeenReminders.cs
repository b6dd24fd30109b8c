using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.App.Reminders;

/// <summary>
/// Which reminders of a casualty have been seen, and when; kept on the phone, so that a reload sounds for none of them again.
/// </summary>
public sealed class SeenReminders(IPhone phone)
{
    private string casualty = "";
    private ImmutableDictionary<string, Instant> seen = ImmutableDictionary<string, Instant>.Empty;

    /// <param name="of">Null: no casualty is open, and nothing has been seen.</param>
    public IReadOnlyDictionary<string, Instant> Of(string? of)
    {
        if (of is null)
            return ImmutableDictionary<string, Instant>.Empty;
        if (of != casualty)
            (casualty, seen) = (of, Read(phone.Get("seen-" + of)));
        return seen;
    }

    /// <summary>These have been seen; what is due no more is forgotten.</summary>
    public void Keep(string of, IEnumerable<string> keys, Instant now)
    {
        (casualty, seen) = (of, keys.ToImmutableDictionary(k => k, _ => now));
        phone.Set(
            "seen-" + of,
            string.Join('\n', seen.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Value.ToUnixTimeMilliseconds()} {s.Key}")))
        );
    }

    // A line that can't be read is a reminder not seen: it sounds once more.
    private static ImmutableDictionary<string, Instant> Read(string kept)
    {
        var read = ImmutableDictionary.CreateBuilder<string, Instant>();
        foreach (var line in kept.Split('\n'))
            if (
                line.IndexOf(' ', StringComparison.Ordinal) is > 0 and var gap
                && long.TryParse(line.AsSpan(0, gap), NumberStyles.None, CultureInfo.InvariantCulture, out var ms)
                && ms <= Instant.MaxValue.ToUnixTimeMilliseconds()
            )
                read[line[(gap + 1)..]] = Instant.FromUnixTimeMilliseconds(ms);
        return read.ToImmutable();
    }
}
