using System.Text.Json;

namespace Farhold.Files;

/// <summary>What is wrong with JSON text, in a sentence without the library's own positions.</summary>
internal static class JsonFault
{
    // The field app is built without the library's sentences: there its messages are names of resources.
    private static readonly bool NamesOnly = AppContext.TryGetSwitch("System.Resources.UseSystemResourceKeys", out var on) && on;

    public static string Of(JsonException fault)
    {
        if (NamesOnly)
            return "this is not JSON from here on";
        var message = fault.Message;
        var cut = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        if (cut > 0)
            message = message[..cut];
        return "this is not JSON: " + message.TrimEnd('.');
    }
}
