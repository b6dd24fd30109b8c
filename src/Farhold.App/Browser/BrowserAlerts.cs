using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserAlerts : IAlerts
{
    private const string Module = "alerts";

    public bool SoundUnlocked => Script.Unlocked();

    public bool CanVibrate => Script.CanVibrate();

    public bool Awake => Script.Awake();

    public static async Task<BrowserAlerts> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "alerts.js");
        return new BrowserAlerts();
    }

    public void Sound(Signal signal) => Script.Sound((int)signal);

    public void Vibrate(Signal signal) => Script.Vibrate((int)signal);

    public bool HasVoice(string language) => Script.HasVoice(language);

    public void Say(string words, string language) => Script.Say(words, language);

    public void Hush() => Script.Hush();

    public void KeepAwake(bool on) => Script.KeepAwake(on);

    public void Save(string fileName, string mediaType, string text) => Script.Save(fileName, mediaType, text);

    private static partial class Script
    {
        [JSImport("unlocked", Module)]
        public static partial bool Unlocked();

        [JSImport("canVibrate", Module)]
        public static partial bool CanVibrate();

        [JSImport("awake", Module)]
        public static partial bool Awake();

        [JSImport("sound", Module)]
        public static partial void Sound(int signal);

        [JSImport("vibrate", Module)]
        public static partial void Vibrate(int signal);

        [JSImport("hasVoice", Module)]
        public static partial bool HasVoice(string language);

        [JSImport("say", Module)]
        public static partial void Say(string words, string language);

        [JSImport("hush", Module)]
        public static partial void Hush();

        [JSImport("keepAwake", Module)]
        public static partial void KeepAwake(bool on);

        [JSImport("save", Module)]
        public static partial void Save(string fileName, string mediaType, string text);
    }
}
