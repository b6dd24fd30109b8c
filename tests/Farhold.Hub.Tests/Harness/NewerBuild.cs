using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Deploys another build into a served folder: a changed page, a changed style, and a manifest that fits both.</summary>
internal static class NewerBuild
{
    public const string Style = "app.css";
    public const string Page = "index.html";

    public static void Deploy(string folder, string version)
    {
        Change(folder, Style, text => $"{text}\n:root {{ --build: \"{version}\"; }}\n");
        Change(folder, Page, text => text.Replace("<head>", $"<head><meta name=\"build\" content=\"{version}\">", StringComparison.Ordinal));
        Change(folder, "service-worker-assets.js", text =>
        {
            var start = text.IndexOf('{', StringComparison.Ordinal);
            var end = text.LastIndexOf('}') + 1;
            var manifest = JsonNode.Parse(text[start..end])!;
            manifest["version"] = version;
            foreach (var asset in manifest["assets"]!.AsArray())
                if (asset!["url"]!.GetValue<string>() is Style or Page)
                    asset["hash"] = Hash(Path.Combine(folder, asset["url"]!.GetValue<string>()));
            return text[..start] + manifest.ToJsonString(new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + text[end..];
        });
    }

    private static void Change(string folder, string name, Func<string, string> change)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, change(File.ReadAllText(path)));
        File.Delete(path + ".br");
        File.Delete(path + ".gz");
    }

    private static string Hash(string path) => "sha256-" + Convert.ToBase64String(SHA256.HashData(File.ReadAllBytes(path)));
}
