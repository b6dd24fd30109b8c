using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using NodaTime;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserPositions : IPositions
{
    private const string Module = "position";

    public static async Task<BrowserPositions> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "position.js");
        return new BrowserPositions();
    }

    public void Start() => Script.Start();

    public void Stop() => Script.Stop();

    public Fix Latest() =>
        Script.Latest() switch
        {
            [var state] => new((FixState)state),
            [var state, var lat, var lon, var accuracy, var altitude, var at] => new(
                (FixState)state,
                lat,
                lon,
                accuracy,
                double.IsNaN(altitude) ? null : altitude,
                Instant.FromUnixTimeMilliseconds((long)at)
            ),
            _ => new(FixState.Waiting),
        };

    private static partial class Script
    {
        [JSImport("start", Module)]
        public static partial void Start();

        [JSImport("stop", Module)]
        public static partial void Stop();

        [JSImport("latest", Module)]
        public static partial double[] Latest();
    }
}
