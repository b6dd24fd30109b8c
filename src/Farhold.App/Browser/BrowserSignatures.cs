using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

/// <summary>The browser's <see cref="SignatureCheck"/>.</summary>
[SupportedOSPlatform("browser")]
internal static partial class BrowserSignatures
{
    private const string Module = "signature";

    public static async Task<SignatureCheck> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(Module, baseAddress + "signature.js");
        return async (key, message, signature) =>
            await HoldsAsync(
                Convert.ToBase64String(key.Span),
                Convert.ToBase64String(message.Span),
                Convert.ToBase64String(signature.Span)
            );
    }

    [JSImport("holds", Module)]
    private static partial Task<bool> HoldsAsync(string key, string message, string signature);
}
