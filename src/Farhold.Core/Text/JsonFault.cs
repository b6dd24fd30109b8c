using System.Text.Json;

namespace Farhold;

/// <summary>What is wrong with JSON text, in a sentence without the library's own positions.</summary>
internal static class JsonFault
{
    public static string Of(JsonException fault)
    {
        var message = fault.Message;
        var cut = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        if (cut > 0)
            message = message[..cut];
        return "this is not JSON: " + message.TrimEnd('.');
    }
}
