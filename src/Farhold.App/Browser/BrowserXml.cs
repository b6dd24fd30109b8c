using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

/// <summary>Reads XML with a library of the browser's own language: the framework's weighs some twenty times as much.</summary>
[SupportedOSPlatform("browser")]
internal sealed partial class BrowserXml : IXmlFiles
{
    private const string Module = "xml";

    public static async Task<BrowserXml> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "xml.js");
        return new BrowserXml();
    }

    public IXmlNodes Open(ReadOnlyMemory<byte> content) => new FedXmlNodes(content, new Feed());

    public Task<bool> ReadyAsync() => Script.ReadyAsync();

    private sealed class Feed : IXmlFeed
    {
        private readonly JSObject parser = Script.Open();

        public string Take(string text, bool isLast) => Script.Take(parser, text, isLast);

        public void Dispose() => parser.Dispose();
    }

    private static partial class Script
    {
        [JSImport("ready", Module)]
        public static partial Task<bool> ReadyAsync();

        [JSImport("open", Module)]
        public static partial JSObject Open();

        [JSImport("take", Module)]
        public static partial string Take(JSObject feed, string text, bool isLast);
    }
}
