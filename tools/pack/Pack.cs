using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

// Puts all assemblies of a published field app into one file: together they compress better than one by one, and a start
// reads one file instead of some forty. Then signs the list of all files, where keys are given (docs/decisions/replaced-host.md).
// Usage: pack WWWROOT KEEP [LATER …], where KEEP holds compressed packs of earlier runs, and each LATER names an assembly that is loaded
// when
// it is first used, and stays a file of its own. FARHOLD_SIGNING_KEYS names files with a private
// P-256 key each (PEM), divided as in PATH; phones trust all of them from then on.
var (root, keep, later) = (args[0], args[1], args[2..]);
var framework = Path.Combine(root, "_framework");
var assemblies = Directory
    .GetFiles(framework, "*.wasm")
    .Where(f => !Path.GetFileName(f).StartsWith("dotnet.native.", StringComparison.Ordinal))
    .Where(f => !Array.Exists(later, l => Path.GetFileName(f).StartsWith(l + ".", StringComparison.Ordinal)))
    .Order(StringComparer.Ordinal)
    .ToArray();
if (assemblies.Length == 0)
    return 0;
foreach (var old in Directory.GetFiles(framework, "assemblies.*.dat*"))
    File.Delete(old);

// A line of JSON: the name of each assembly with its place and length behind that line.
var (index, at) = (new JsonObject(), 0);
foreach (var file in assemblies)
{
    var length = (int)new FileInfo(file).Length;
    index[Path.GetFileName(file)] = new JsonArray(at, length);
    at += length;
}

byte[] pack = [.. Encoding.UTF8.GetBytes(index.ToJsonString() + "\n"), .. assemblies.SelectMany(File.ReadAllBytes)];
var name = $"assemblies.{Convert.ToHexStringLower(SHA256.HashData(pack))[..10]}.dat";
var target = Path.Combine(framework, name);
File.WriteAllBytes(target, pack);
Directory.CreateDirectory(keep);
var kept = Path.Combine(keep, name + ".br");
if (!File.Exists(kept))
{
    Array.ForEach(Directory.GetFiles(keep), File.Delete);
    File.WriteAllBytes(kept, Brotli(pack));
}

File.Copy(kept, target + ".br");
File.WriteAllBytes(target + ".gz", Gzip(pack));
foreach (var file in assemblies)
foreach (var ending in (string[])["", ".br", ".gz"])
    File.Delete(file + ending);

// The page names the pack; the manifest of the offline copy lists it in place of what it holds. Licences stay with the server.
var page = Path.Combine(root, "index.html");
var html = File.ReadAllText(page);
var place = Regex.Match(html, "<meta name=\"assemblies\"[^>]*>");
if (!place.Success)
    throw new InvalidDataException("index.html has no place for the name of the pack.");
Replace(
    page,
    html.Replace(
        place.Value,
        $"<meta name=\"assemblies\" content=\"_framework/{name}\" data-integrity=\"{Hash(pack)}\">",
        StringComparison.Ordinal
    )
);

var list = Path.Combine(root, "service-worker-assets.js");
var script = File.ReadAllText(list);
var (start, end) = (script.IndexOf('{', StringComparison.Ordinal), script.LastIndexOf('}') + 1);
var manifest = JsonNode.Parse(script[start..end])!;
var packed = assemblies.Select(f => "_framework/" + Path.GetFileName(f)).ToHashSet();
var assets = manifest["assets"]!.AsArray();
foreach (var asset in assets.ToArray())
    if (
        asset!["url"]!.GetValue<string>() is var url
        && (
            packed.Contains(url)
            || url.StartsWith("_framework/assemblies.", StringComparison.Ordinal)
            || url.EndsWith("/LICENSE.txt", StringComparison.Ordinal)
        )
    )
        assets.Remove(asset);
    else if (url == "index.html")
        asset["hash"] = Hash(File.ReadAllBytes(page));
assets.Add(new JsonObject { ["hash"] = Hash(pack), ["url"] = "_framework/" + name });

// The SDK writes its version into the worker after it has compressed it: what is served compressed must be what is signed.
var worker = Path.Combine(root, "service-worker.js");
Replace(worker, File.ReadAllText(worker));
manifest["worker"] = Hash(File.ReadAllBytes(worker));
var keys = (Environment.GetEnvironmentVariable("FARHOLD_SIGNING_KEYS") ?? "")
    .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
    .Select(Key)
    .ToArray();
if (keys.Length > 0)
    manifest["keys"] = new JsonArray([.. keys.Select(k => (JsonNode)Public(k))]);
manifest["version"] = Hash(Encoding.UTF8.GetBytes(string.Concat(assets.Select(a => a!["hash"]!.GetValue<string>()))))[7..15];
Replace(
    list,
    script[..start]
        + manifest.ToJsonString(new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, WriteIndented = true })
        + script[end..]
);
File.WriteAllText(
    Path.Combine(root, "service-worker-signatures.json"),
    new JsonArray([
        .. keys.Select(k =>
            (JsonNode)
                new JsonObject
                {
                    ["key"] = Public(k),
                    ["signature"] = Convert.ToBase64String(k.SignData(File.ReadAllBytes(list), HashAlgorithmName.SHA256)),
                }
        ),
    ]).ToJsonString()
);
Console.WriteLine($"{assemblies.Length} assemblies in {name}, {new FileInfo(kept).Length} bytes compressed");
return 0;

static ECDsa Key(string file)
{
    var key = ECDsa.Create();
    key.ImportFromPem(File.ReadAllText(file));
    return key.KeySize == 256 ? key : throw new InvalidDataException($"{file} holds no key on the curve P-256.");
}

static string Public(ECDsa key) => Convert.ToBase64String(key.ExportSubjectPublicKeyInfo());

static string Hash(byte[] content) => "sha256-" + Convert.ToBase64String(SHA256.HashData(content));

static byte[] Brotli(byte[] content)
{
    const int best = 11,
        widest = 24;
    var compressed = new byte[BrotliEncoder.GetMaxCompressedLength(content.Length)];
    return BrotliEncoder.TryCompress(content, compressed, out var length, best, widest)
        ? compressed[..length]
        : throw new InvalidDataException();
}

static byte[] Gzip(byte[] content)
{
    using var target = new MemoryStream();
    using (var gzip = new GZipStream(target, CompressionLevel.SmallestSize))
        gzip.Write(content);
    return target.ToArray();
}

static void Replace(string path, string text)
{
    File.WriteAllText(path, text);
    var content = File.ReadAllBytes(path);
    if (File.Exists(path + ".br"))
        File.WriteAllBytes(path + ".br", Brotli(content));
    if (File.Exists(path + ".gz"))
        File.WriteAllBytes(path + ".gz", Gzip(content));
}
