using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserHandOver : IHandOverPhone
{
    private const string Module = "handover";

    public bool CanShare => Script.CanShare();

    public static async Task<BrowserHandOver> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "handover.js");
        return new BrowserHandOver();
    }

    public Task<bool> ShareAsync(string text) => Script.ShareAsync(text);

    public Task<string> StartScanAsync(string video, Action<string> seen) => Script.StartScanAsync(video, seen);

    public void StopScan() => Script.StopScan();

    private static partial class Script
    {
        [JSImport("canShare", Module)]
        public static partial bool CanShare();

        [JSImport("share", Module)]
        public static partial Task<bool> ShareAsync(string text);

        [JSImport("startScan", Module)]
        public static partial Task<string> StartScanAsync(string video, [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> seen);

        [JSImport("stopScan", Module)]
        public static partial void StopScan();
    }
}
