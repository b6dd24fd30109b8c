using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Farhold.Bom;

/// <summary>Everything of others that is built in or built with, as CycloneDX 1.6 (ECMA-424), from the lock files.</summary>
/// <remarks>
/// No time and no serial number: the same lock files give the same bytes. Scope <c>required</c> is what some part that is
/// delivered uses, <c>excluded</c> what only builds, tests or measures. A NuGet lock file's hash leaves the signature of the
/// package out, so it is no hash of the file and stands as a property.
/// </remarks>
internal static class BillOfMaterials
{
    public const string FileName = "bom.cdx.json";

    private const string LockFile = "packages.lock.json";

    /// <summary>Referenced by delivered parts, and yet nothing of it is delivered.</summary>
    private static readonly string[] BuildOnly =
    [
        "Microsoft.CodeAnalysis.BannedApiAnalyzers",
        "Microsoft.NET.ILLink.Tasks",
        "Microsoft.NET.Sdk.WebAssembly.Pack",
        "Microsoft.AspNetCore.Components.WebAssembly.DevServer",
    ];

    private static readonly string[] DeliveredScripts = ["jsqr", "saxes", "xmlchars"];

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Of(string root)
    {
        var parts = NuGetParts(root)
            .Concat(NpmParts(root))
            .Concat(Tools(root))
            .Concat(ByHand(root))
            .GroupBy(p => p.Ref)
            .Select(Merged)
            .OrderBy(p => p.Ref, StringComparer.Ordinal)
            .ToArray();
        var bom = new JsonObject
        {
            ["bomFormat"] = "CycloneDX",
            ["specVersion"] = "1.6",
            ["version"] = 1,
            ["metadata"] = new JsonObject
            {
                ["component"] = new JsonObject
                {
                    ["type"] = "application",
                    ["bom-ref"] = "farhold",
                    ["name"] = "Farhold",
                    ["licenses"] = new JsonArray(new JsonObject { ["license"] = new JsonObject { ["id"] = "Apache-2.0" } }),
                },
            },
            ["components"] = new JsonArray([.. parts.Select(Component)]),
            ["dependencies"] = new JsonArray([
                .. parts
                    .Where(p => p.Needs.Length > 0)
                    .Select(p =>
                        (JsonNode)new JsonObject { ["ref"] = p.Ref, ["dependsOn"] = new JsonArray([.. p.Needs.Select(n => (JsonNode)n)]) }
                    ),
            ]),
        };
        return bom.ToJsonString(Indented).ReplaceLineEndings("\n") + "\n";
    }

    private static JsonNode Component(Part part)
    {
        var component = new JsonObject
        {
            ["type"] = part.Type,
            ["bom-ref"] = part.Ref,
            ["name"] = part.Name,
            ["version"] = part.Version,
            ["scope"] = part.Delivered ? "required" : "excluded",
        };
        if (part.Sha512 is { } hash)
            component["hashes"] = new JsonArray(
                new JsonObject { ["alg"] = "SHA-512", ["content"] = Convert.ToHexStringLower(Convert.FromBase64String(hash)) }
            );
        if (part.Ref.StartsWith("pkg:", StringComparison.Ordinal))
            component["purl"] = part.Ref;
        if (part.ContentHash is { } content)
            component["properties"] = new JsonArray(new JsonObject { ["name"] = "farhold:nuget-content-hash", ["value"] = content });
        return component;
    }

    private static Part Merged(IGrouping<string, Part> same) =>
        same.First() with
        {
            Delivered = same.Any(p => p.Delivered),
            Needs = [.. same.SelectMany(p => p.Needs).Distinct().Order(StringComparer.Ordinal)],
        };

    private static IEnumerable<Part> NuGetParts(string root)
    {
        foreach (var folder in (string[])["src", "tests", "bench", "tools"])
        foreach (var file in Directory.GetFiles(Path.Combine(root, folder), LockFile, SearchOption.AllDirectories))
        foreach (var (_, framework) in Parsed(file)["dependencies"]!.AsObject())
        foreach (var part in OfFramework(framework!.AsObject(), folder == "src"))
            yield return part;
    }

    private static IEnumerable<Part> OfFramework(JsonObject packages, bool delivered)
    {
        foreach (var (name, package) in packages)
        {
            if ((string?)package!["resolved"] is not { } version)
                continue; // a project of this repository
            var needs = (package["dependencies"]?.AsObject() ?? [])
                .Select(n => (n.Key, Version: (string?)packages[n.Key]?["resolved"]))
                .Where(n => n.Version is not null);
            yield return new(
                "library",
                NuGet(name, version),
                name,
                version,
                delivered && !BuildOnly.Contains(name),
                null,
                (string?)package["contentHash"],
                [.. needs.Select(n => NuGet(n.Key, n.Version!))]
            );
        }
    }

    private static IEnumerable<Part> NpmParts(string root)
    {
        var packages = Parsed(Path.Combine(root, "tools", "vendor", "package-lock.json"))["packages"]!.AsObject();
        foreach (var (path, package) in packages.Where(p => p.Key.Length > 0))
        {
            var (name, version) = (path["node_modules/".Length..], (string)package!["version"]!);
            var needs = (package["dependencies"]?.AsObject() ?? []).Select(n =>
                Npm(n.Key, (string)packages["node_modules/" + n.Key]!["version"]!)
            );
            yield return new(
                "library",
                Npm(name, version),
                name,
                version,
                DeliveredScripts.Contains(name),
                ((string)package["integrity"]!)["sha512-".Length..],
                null,
                [.. needs]
            );
        }
    }

    private static IEnumerable<Part> Tools(string root) =>
        Parsed(Path.Combine(root, ".config", "dotnet-tools.json"))["tools"]!
            .AsObject()
            .Select(t => (t.Key, Version: (string)t.Value!["version"]!))
            .Select(t => new Part("application", NuGet(t.Key, t.Version), t.Key, t.Version, false, null, null, []));

    /// <summary>What no lock file knows: the runtime comes with the SDK, fonts and icons are files of this repository.</summary>
    private static IEnumerable<Part> ByHand(string root)
    {
        var sdk = (string)Parsed(Path.Combine(root, "global.json"))["sdk"]!["version"]!;
        yield return new("framework", "dotnet-sdk@" + sdk, ".NET SDK and its runtime", sdk, true, null, null, []);
        yield return new("data", "dejavu-fonts@2.37", "DejaVu fonts", "2.37", true, null, null, []);
        yield return new("data", Npm("lucide-static", "1.62.0"), "lucide-static", "1.62.0", true, null, null, []);
    }

    private static JsonNode Parsed(string file) => JsonNode.Parse(File.ReadAllText(file))!;

    private static string NuGet(string name, string version) => $"pkg:nuget/{name}@{version}";

    private static string Npm(string name, string version) => $"pkg:npm/{name.Replace("@", "%40", StringComparison.Ordinal)}@{version}";

    private sealed record Part(
        string Type,
        string Ref,
        string Name,
        string Version,
        bool Delivered,
        string? Sha512,
        string? ContentHash,
        string[] Needs
    );
}
