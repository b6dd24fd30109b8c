namespace Farhold.App.Browser;

/// <summary>What the phone tells of its battery.</summary>
/// <param name="Level">From 0 to 1.</param>
public sealed record BatteryNow(double Level, bool Charging);

public interface IBattery
{
    /// <summary>Null where this browser does not tell.</summary>
    Task<BatteryNow?> LookAsync();
}
