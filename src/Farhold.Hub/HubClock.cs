using NodaTime;

namespace Farhold.Hub;

/// <summary>The hub's clock, as instants.</summary>
internal static class HubClock
{
    public static Instant Now(this TimeProvider clock) => Instant.FromDateTimeOffset(clock.GetUtcNow());
}
