using System.Text.Json.Nodes;
using Farhold.Bom;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Supply;

public class BillOfMaterialsTests
{
    private static readonly string Committed = File.ReadAllText(Path.Combine(Published.Root, BillOfMaterials.FileName));

    /// <summary>Where this fails, the lock files changed: <c>dotnet run --project tools/bom</c>, and read the difference.</summary>
    [Fact]
    public void The_bill_is_what_the_lock_files_say() => Assert.Equal(BillOfMaterials.Of(Published.Root), Committed);

    [Theory]
    [InlineData("src/Farhold.App", "pkg:nuget/NodaTime@", "required")]
    [InlineData("src/Farhold.Documents", "pkg:nuget/PDFsharp@", "required")]
    [InlineData("tests/Farhold.Tests", "pkg:nuget/CsCheck@", "excluded")]
    [InlineData("tools/vendor", "pkg:npm/jsqr@", "required")]
    [InlineData("tools/vendor", "pkg:npm/esbuild@", "excluded")]
    public void What_is_delivered_is_told_from_what_only_builds_or_tests(string where, string start, string scope)
    {
        Assert.True(Directory.Exists(Path.Combine(Published.Root, where)));
        var found = Assert.Single(Components(), c => ((string)c["bom-ref"]!).StartsWith(start, StringComparison.Ordinal));
        Assert.Equal(scope, (string?)found["scope"]);
    }

    [Fact]
    public void Every_reference_leads_to_one_component()
    {
        var names = Components().Select(c => (string)c["bom-ref"]!).ToArray();
        Assert.Equal(names.Distinct(), names);
        var dependencies = JsonNode.Parse(Committed)!["dependencies"]!.AsArray();
        Assert.Empty(dependencies.SelectMany(d => d!["dependsOn"]!.AsArray().Append(d["ref"])).Select(r => (string)r!).Except(names));
    }

    private static IEnumerable<JsonNode> Components() => JsonNode.Parse(Committed)!["components"]!.AsArray().OfType<JsonNode>();
}
