using System.Collections.Immutable;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using Microsoft.AspNetCore.Components.WebAssembly.Services;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserHubLine : IHubLine
{
    private const string Module = "hub";

    private static readonly string[] Assemblies = ["Farhold.Sync.wasm"];

    private LazyAssemblyLoader? loader;
    private Task? loading;

    public event Action? Woken;

    public bool IsOnline => Script.IsOnline();

    public static async Task<BrowserHubLine> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "hub.js");
        var line = new BrowserHubLine();
        Script.OnWake(() => line.Woken?.Invoke());
        return line;
    }

    /// <summary>By which the rest is loaded; there is none before the app's services are built.</summary>
    public void LoadBy(LazyAssemblyLoader through) => loader = through;

    public async Task<PhoneKey?> KeyAsync() => Key(await Script.KeyAsync());

    public async Task<PhoneKey?> MakeKeyAsync() => Key(await Script.MakeKeyAsync());

    public Task ForgetKeyAsync() => Script.ForgetKeyAsync();

    public async Task<HubAnswer> AskAsync(string method, string path, string type = "", ReadOnlyMemory<byte> body = default)
    {
        using var json = JsonDocument.Parse(await Script.AskAsync(method, path, type, Convert.ToBase64String(body.Span)));
        var answer = json.RootElement;
        return new(
            answer.Number("status"),
            (int)Math.Ceiling(answer.GetProperty("wait").GetDouble()),
            answer.Text("code"),
            answer.Text("said"),
            answer.GetProperty("body").GetBytesFromBase64()
        );
    }

    public async Task<ImmutableArray<ReadOnlyMemory<byte>>> LinesAsync(string casualty) =>
        [
            .. (await StoreScript.RawLinesAsync(casualty))
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(l => (ReadOnlyMemory<byte>)Convert.FromBase64String(l)),
        ];

    public void Listen(string path, Action<string, string> callback) => Script.Listen(path, callback);

    public void StopListening() => Script.StopListening();

    public string Invitation() => Script.Invitation();

    public async Task<bool> LoadAsync()
    {
        loading ??= loader!.LoadAssembliesAsync(Assemblies);
        try
        {
            await loading;
            return true;
        }
        catch (JSException)
        {
            loading = null; // neither in the copy of this phone nor to be fetched; asked for again another time
            return false;
        }
    }

    private static PhoneKey? Key(string json)
    {
        if (json.Length == 0)
            return null;
        using var document = JsonDocument.Parse(json);
        return new(document.RootElement.Text("key"), document.RootElement.Text("thumb"));
    }

    private static partial class Script
    {
        [JSImport("key", Module)]
        public static partial Task<string> KeyAsync();

        [JSImport("makeKey", Module)]
        public static partial Task<string> MakeKeyAsync();

        [JSImport("forgetKey", Module)]
        public static partial Task ForgetKeyAsync();

        [JSImport("ask", Module)]
        public static partial Task<string> AskAsync(string method, string path, string type, string body);

        [JSImport("listen", Module)]
        public static partial void Listen(
            string path,
            [JSMarshalAs<JSType.Function<JSType.String, JSType.String>>] Action<string, string> callback
        );

        [JSImport("stopListening", Module)]
        public static partial void StopListening();

        [JSImport("onWake", Module)]
        public static partial void OnWake([JSMarshalAs<JSType.Function>] Action callback);

        [JSImport("isOnline", Module)]
        public static partial bool IsOnline();

        [JSImport("invitation", Module)]
        public static partial string Invitation();
    }
}
