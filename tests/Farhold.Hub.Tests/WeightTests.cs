using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

public partial class WeightTests
{
    /// <summary>Design: what a phone takes in once, over a thin link before departure.</summary>
    private const long LargestBytes = 3_200_000;

    [Fact]
    public void The_whole_app_stays_within_its_weight()
    {
        var manifest = File.ReadAllText(Path.Combine(Published.Folder, "service-worker-assets.js"));
        var files = Url().Matches(manifest).Select(m => Path.Combine(Published.Folder, m.Groups[1].Value)).ToList();
        Assert.NotEmpty(files);
        Assert.InRange(files.Sum(f => new FileInfo(File.Exists(f + ".br") ? f + ".br" : f).Length), 1, LargestBytes);
    }

    /// <summary>A part whose name stands neither among the files nor in what starts them is not loaded.</summary>
    [Theory]
    [InlineData("System.Private.Xml")]
    [InlineData("System.Xml")]
    [InlineData("Farhold.Xml")]
    [InlineData("Farhold.Signing")]
    public void The_frameworks_xml_does_not_go_to_the_phone(string part)
    {
        Assert.DoesNotContain(Directory.GetFiles(Published.Folder, "*", SearchOption.AllDirectories), f => Path.GetFileName(f).StartsWith(part, StringComparison.Ordinal));
        Assert.All(Directory.GetFiles(Path.Combine(Published.Folder, "_framework"), "dotnet*.js"), f =>
            Assert.DoesNotContain(part, File.ReadAllText(f), StringComparison.Ordinal));
    }

    [GeneratedRegex("\"url\": \"([^\"]+)\"")]
    private static partial Regex Url();
}
