using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

/// <remarks>Its script is taken in with <see cref="BrowserPhone"/>.</remarks>
[SupportedOSPlatform("browser")]
internal sealed partial class BrowserBattery : IBattery
{
    /// <summary>The level, negative while charging; not a number where the browser does not tell.</summary>
    public async Task<BatteryNow?> LookAsync()
    {
        var told = await ReadAsync();
        return double.IsNaN(told) ? null : new(Math.Abs(told), told < 0);
    }

    [JSImport("battery", "phone")]
    private static partial Task<double> ReadAsync();
}
