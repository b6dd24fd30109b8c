using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

public partial class WeightTests
{
    /// <summary>Design: what a phone takes in once, over a thin link before departure.</summary>
    private const long LargestBytes = 3_650_000;

    /// <summary>Design: a language beside English. It is in every offline copy, but fetched by a start only where it is spoken.</summary>
    private const long LargestLanguage = 53_000;

    /// <summary>Design: what somebody who rehearses waits for once.</summary>
    private const long LargestLater = 230_000;

    /// <summary>Design: what a phone fetches once it belongs to a hub.</summary>
    private const long LargestOfHub = 25_000;

    /// <summary>What a start fetches; the casualty model comes when somebody first rehearses.</summary>
    [Fact]
    public void The_whole_app_stays_within_its_weight()
    {
        var files = Files().Where(f => !IsLanguage(f) && !IsLater(f) && !IsOfHub(f)).ToList();
        Assert.NotEmpty(files);
        Assert.InRange(files.Sum(Bytes), 1, LargestBytes);
    }

    [Fact]
    public void A_language_is_a_small_file_of_its_own()
    {
        var languages = Files().Where(IsLanguage).ToList();
        Assert.Equal(
            ["core.de.json", "core.es.json", "texts.de.json", "texts.es.json"],
            languages.Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.All(languages, f => Assert.InRange(Bytes(f), 1, LargestLanguage));
    }

    /// <summary>A part whose name stands neither among the files nor in what starts them is not loaded.</summary>
    [Theory]
    [InlineData("System.Private.Xml")]
    [InlineData("System.Xml")]
    [InlineData("Farhold.Xml")]
    [InlineData("Farhold.Signing")]
    public void The_frameworks_xml_does_not_go_to_the_phone(string part)
    {
        Assert.DoesNotContain(
            Directory.GetFiles(Published.Folder, "*", SearchOption.AllDirectories),
            f => Path.GetFileName(f).StartsWith(part, StringComparison.Ordinal)
        );
        Assert.All(
            Directory.GetFiles(Path.Combine(Published.Folder, "_framework"), "dotnet*.js"),
            f => Assert.DoesNotContain(part, File.ReadAllText(f), StringComparison.Ordinal)
        );
    }

    private static IEnumerable<string> Files() =>
        Url()
            .Matches(File.ReadAllText(Path.Combine(Published.Folder, "service-worker-assets.js")))
            .Select(m => Path.Combine(Published.Folder, m.Groups[1].Value));

    [Fact]
    public void What_is_loaded_when_somebody_rehearses_is_light()
    {
        var later = Files().Where(IsLater).ToList();
        Assert.Equal(2, later.Count);
        Assert.InRange(later.Sum(Bytes), 1, LargestLater);
    }

    [Fact]
    public void What_is_loaded_once_a_phone_belongs_to_a_hub_is_light() =>
        Assert.InRange(Bytes(Assert.Single(Files(), IsOfHub)), 1, LargestOfHub);

    /// <summary>The build joins them as texts: what they hold has to be JSON still.</summary>
    [Fact]
    public void Every_language_can_be_read() =>
        Assert.All(Files().Where(IsLanguage), f => System.Text.Json.JsonDocument.Parse(File.ReadAllBytes(f)).Dispose());

    private static bool IsLater(string file) => Path.GetFileName(file).Split('.') is ["Farhold", "Physiology" or "Rehearsal", .., "wasm"];

    private static bool IsOfHub(string file) => Path.GetFileName(file).Split('.') is ["Farhold", "Sync", .., "wasm"];

    private static bool IsLanguage(string file) => Path.GetFileName(file).Split('.') is ["texts" or "core", { Length: 2 }, "json"];

    /// <summary>As it goes over the link.</summary>
    private static long Bytes(string file) => new FileInfo(File.Exists(file + ".br") ? file + ".br" : file).Length;

    [GeneratedRegex("\"url\": \"([^\"]+)\"")]
    private static partial Regex Url();
}
