using System.Globalization;
using NodaTime;

namespace Farhold.App.Dev;

/// <summary>The phone's clock; once the demo was opened, the demo's day, running on from there.</summary>
public sealed class DemoClock(IPhone phone) : TimeProvider
{
    private const string Key = "demo-ahead";

    private long ahead = long.TryParse(phone.Get(Key), CultureInfo.InvariantCulture, out var kept) ? kept : 0;

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow().AddTicks(ahead);

    public void Set(Instant to)
    {
        ahead = (to.ToDateTimeOffset() - System.GetUtcNow()).Ticks;
        phone.Set(Key, ahead.ToString(CultureInfo.InvariantCulture));
    }
}
