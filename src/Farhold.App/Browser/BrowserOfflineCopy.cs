using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserOfflineCopy : IOfflineCopy
{
    private const string Module = "offline";

    public event Action? Changed;

    public static async Task<BrowserOfflineCopy> StartAsync(string baseAddress)
    {
        var copy = new BrowserOfflineCopy();
        await JSHost.ImportAsync(Module, baseAddress + "offline.js");
        await Script.StartAsync(_ => copy.Changed?.Invoke());
        return copy;
    }

    public Task LookAsync() => Script.LookAsync();

    public Task ChangeAsync() => Script.ChangeAsync();

    public async Task<CopyState> StateAsync()
    {
        using var json = JsonDocument.Parse(await Script.StateAsync());
        var e = json.RootElement;
        return new CopyState(
            e.GetProperty("able").GetBoolean(),
            e.Text("serving"),
            e.Text("ready"),
            e.GetProperty("installing").GetBoolean(),
            e.Number("tabs"),
            e.GetProperty("foreign").GetBoolean()
        );
    }

    public async Task<CopyCheck> VerifyAsync()
    {
        using var json = JsonDocument.Parse(await Script.VerifyAsync());
        var e = json.RootElement;
        return new CopyCheck(e.Number("files"), [.. e.GetProperty("bad").EnumerateArray().Select(b => b.GetString()!)], e.Text("signed"));
    }

    private static partial class Script
    {
        [JSImport("start", Module)]
        public static partial Task StartAsync([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> callback);

        [JSImport("look", Module)]
        public static partial Task LookAsync();

        [JSImport("change", Module)]
        public static partial Task ChangeAsync();

        [JSImport("state", Module)]
        public static partial Task<string> StateAsync();

        [JSImport("verify", Module)]
        public static partial Task<string> VerifyAsync();
    }
}
