namespace Farhold.App.Tests.Doubles;

internal sealed class FakeBattery : IBattery
{
    public BatteryNow? Told { get; set; }

    public Task<BatteryNow?> LookAsync() => Task.FromResult(Told);
}
