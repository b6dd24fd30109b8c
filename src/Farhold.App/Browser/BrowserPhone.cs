using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using NodaTime;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserPhone : IPhone
{
    private const string Module = "phone";

    public event Action? Hidden;

    public IReadOnlyList<string> Languages { get; } = Script.Languages().Split(' ');

    public DateTimeZone TimeZone { get; } = PhoneZone.Of(Script.TimeZone(), Script.Offsets());

    public static async Task<BrowserPhone> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "phone.js");
        var phone = new BrowserPhone();
        Script.OnHidden(() => phone.Hidden?.Invoke());
        return phone;
    }

    public string Get(string key) => Script.Get(key);

    public bool Set(string key, string value) => Script.Set(key, value);

    public double Room => Script.Room();

    public bool IsWide => Script.IsWide();

    public bool DocksKeys => Script.DocksKeys();

    public void Look(string name) => Script.Look(name);

    public void Speaks(string language, string direction) => Script.Speaks(language, direction);

    public async Task<FetchedTexts?> TextsAsync(string language)
    {
        var core = Script.CoreTextsAsync(language); // on its way at the same time: a start waits for the slower of the two only
        var fetched = await Script.TextsAsync(language);
        var said = await core;
        return fetched.Length > 0 && fetched.Split('\n') is [var mark, .. var lines]
            ? new(mark, lines) { Core = said.Length > 0 ? said : null }
            : null;
    }

    public void MarkOpener() => Script.MarkOpener();

    public void BackToOpener() => Script.BackToOpener();

    public void Replaced() => Script.Replaced();

    public void BringUp(string id) => Script.BringUp(id);

    public Task<bool> CopyAsync(string text) => Script.CopyAsync(text);

    public Task QuietAsync() => Script.QuietAsync();

    private static partial class Script
    {
        [JSImport("get", Module)]
        public static partial string Get(string key);

        [JSImport("set", Module)]
        public static partial bool Set(string key, string value);

        [JSImport("onHidden", Module)]
        public static partial void OnHidden([JSMarshalAs<JSType.Function>] Action callback);

        [JSImport("look", Module)]
        public static partial void Look(string name);

        [JSImport("markOpener", Module)]
        public static partial void MarkOpener();

        [JSImport("backToOpener", Module)]
        public static partial void BackToOpener();

        [JSImport("replaced", Module)]
        public static partial void Replaced();

        [JSImport("bringUp", Module)]
        public static partial void BringUp(string id);

        [JSImport("isWide", Module)]
        public static partial bool IsWide();

        [JSImport("docksKeys", Module)]
        public static partial bool DocksKeys();

        [JSImport("room", Module)]
        public static partial double Room();

        [JSImport("languages", Module)]
        public static partial string Languages();

        [JSImport("speaks", Module)]
        public static partial void Speaks(string language, string direction);

        [JSImport("texts", Module)]
        public static partial Task<string> TextsAsync(string language);

        [JSImport("coreTexts", Module)]
        public static partial Task<string> CoreTextsAsync(string language);

        [JSImport("timeZone", Module)]
        public static partial string TimeZone();

        [JSImport("offsets", Module)]
        public static partial string Offsets();

        [JSImport("quiet", Module)]
        public static partial Task QuietAsync();

        [JSImport("copy", Module)]
        public static partial Task<bool> CopyAsync(string text);
    }
}
