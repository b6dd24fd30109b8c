using NodaTime;

namespace Farhold.Values;

/// <summary>A value and when it was seen.</summary>
/// <remarks><c>default</c> is the default value at the Unix epoch, so stale for any real look; what nobody saw is null.</remarks>
public readonly record struct Seen<T>(T Value, Happened When)
{
    /// <summary>
    /// Whether the value still counts at <paramref name="now"/>: surely seen by then, and no older than
    /// <paramref name="freshFor"/> even if it was seen at the earliest possible time.
    /// </summary>
    public bool IsFreshAt(Instant now, Duration freshFor) => When.Latest <= now && When.Until(now).Max <= freshFor;
}
