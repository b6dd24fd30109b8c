using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Deploys another build into a served folder: a changed page, a changed style, and a manifest that fits both.</summary>
internal static class NewerBuild
{
    public const string Style = "app.css";
    public const string Page = "index.html";

    private const string Assets = "service-worker-assets.js",
        Signatures = "service-worker-signatures.json";

    private static readonly JsonSerializerOptions Raw = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <param name="signedBy">Keys that the list names, and that sign it.</param>
    public static void Deploy(string folder, string version, params ECDsa[] signedBy)
    {
        Change(folder, Style, text => $"{text}\n:root {{ --build: \"{version}\"; }}\n");
        Change(
            folder,
            Page,
            text => text.Replace("<head>", $"<head><meta name=\"build\" content=\"{version}\">", StringComparison.Ordinal)
        );
        List(
            folder,
            manifest =>
            {
                manifest["version"] = version;
                foreach (var asset in manifest["assets"]!.AsArray())
                    if (asset!["url"]!.GetValue<string>() is Style or Page)
                        asset["hash"] = Hash(Path.Combine(folder, asset["url"]!.GetValue<string>()));
            }
        );
        Sign(folder, signedBy);
    }

    /// <summary>Signs the build that is there, by the keys its list then names.</summary>
    public static void Sign(string folder, params ECDsa[] keys)
    {
        List(
            folder,
            manifest =>
            {
                manifest.Remove("keys");
                if (keys.Length > 0)
                    manifest["keys"] = new JsonArray([.. keys.Select(k => (JsonNode)Public(k))]);
            }
        );
        var list = File.ReadAllBytes(Path.Combine(folder, Assets));
        var signatures = new JsonArray([.. keys.Select(k => (JsonNode)Signature(k, list))]);
        File.WriteAllText(Path.Combine(folder, Signatures), signatures.ToJsonString());
    }

    /// <summary>Puts one more signature beside those of a list, without touching the list.</summary>
    public static void SignBeside(string folder, ECDsa key)
    {
        var signatures = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, Signatures)))!.AsArray();
        signatures.Add(Signature(key, File.ReadAllBytes(Path.Combine(folder, Assets))));
        File.WriteAllText(Path.Combine(folder, Signatures), signatures.ToJsonString());
    }

    private static JsonObject Signature(ECDsa key, byte[] list) =>
        new() { ["key"] = Public(key), ["signature"] = Convert.ToBase64String(key.SignData(list, HashAlgorithmName.SHA256)) };

    private static string Public(ECDsa key) => Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());

    private static void List(string folder, Action<JsonObject> change) =>
        Change(
            folder,
            Assets,
            text =>
            {
                var start = text.IndexOf('{', StringComparison.Ordinal);
                var end = text.LastIndexOf('}') + 1;
                var manifest = JsonNode.Parse(text[start..end])!.AsObject();
                change(manifest);
                return text[..start] + manifest.ToJsonString(Raw) + text[end..];
            }
        );

    public static void Change(string folder, string name, Func<string, string> change)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, change(File.ReadAllText(path)));
        File.Delete(path + ".br");
        File.Delete(path + ".gz");
    }

    private static string Hash(string path) => "sha256-" + Convert.ToBase64String(SHA256.HashData(File.ReadAllBytes(path)));
}
