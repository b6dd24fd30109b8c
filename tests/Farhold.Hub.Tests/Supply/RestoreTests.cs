using System.Xml.Linq;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Supply;

/// <summary>Where packages come from, and that nothing else can be put in their place.</summary>
public class RestoreTests
{
    [Fact]
    public void Every_project_has_a_lock_file() =>
        Assert.All(
            ((string[])["src", "tests", "bench", "tools"])
                .Select(f => Path.Combine(Published.Root, f))
                .SelectMany(f => Directory.GetFiles(f, "*.csproj", SearchOption.AllDirectories)),
            p => Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(p)!, "packages.lock.json")), p)
        );

    [Fact]
    public void Every_package_has_one_source_and_no_other_is_asked()
    {
        var config = XDocument.Load(Path.Combine(Published.Root, "nuget.config")).Root!;
        foreach (var name in (string[])["packageSources", "packageSourceMapping", "auditSources"])
            Assert.Equal("clear", config.Element(name)!.Elements().First().Name);
        var source = Assert.Single(config.Element("packageSources")!.Elements("add"));
        var mapped = Assert.Single(config.Element("packageSourceMapping")!.Elements("packageSource"));
        Assert.Equal((string?)source.Attribute("key"), (string?)mapped.Attribute("key"));
        Assert.Equal("*", (string?)Assert.Single(mapped.Elements("package")).Attribute("pattern"));
        Assert.StartsWith("https://", (string?)source.Attribute("value"), StringComparison.Ordinal);
    }

    [Fact]
    public void Restore_is_locked_and_audited_for_everybody()
    {
        var settings = XDocument
            .Load(Path.Combine(Published.Root, "Directory.Build.props"))
            .Descendants()
            .Where(e => !e.HasElements)
            .ToDictionary(e => e.Name.LocalName, e => e.Value);
        Assert.Equal(("true", "true"), (settings["RestorePackagesWithLockFile"], settings["RestoreLockedMode"]));
        Assert.Equal(("true", "all", "low"), (settings["NuGetAudit"], settings["NuGetAuditMode"], settings["NuGetAuditLevel"]));
        Assert.Equal("true", settings["TreatWarningsAsErrors"]);
        Assert.Equal("$(WarningsNotAsErrors);NU1900;NU1905", settings["WarningsNotAsErrors"]);
    }
}
