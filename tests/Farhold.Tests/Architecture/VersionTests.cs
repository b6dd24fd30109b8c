using System.Xml.Linq;

namespace Farhold.Tests.Architecture;

/// <summary>One version for everything that is delivered, from one place.</summary>
public class VersionTests
{
    private static readonly string[] Naming =
    [
        "Version",
        "VersionPrefix",
        "VersionSuffix",
        "AssemblyVersion",
        "FileVersion",
        "InformationalVersion",
        "PackageVersion",
    ];

    [Fact]
    public void The_program_names_the_version_of_the_one_place() =>
        Assert.Equal(
            Elements(Path.Combine(Repository.Root, "Directory.Build.props")).Single(e => e.Name.LocalName == "Version").Value,
            Product.Version
        );

    [Fact]
    public void No_other_file_sets_a_version() =>
        Assert.DoesNotContain(
            Repository.Files("*.csproj").Concat(Repository.Files("*.props")).SelectMany(Elements),
            e => Naming.Contains(e.Name.LocalName)
        );

    private static IEnumerable<XElement> Elements(string file) =>
        XDocument.Load(file).Descendants().Where(e => e.Parent?.Name == "PropertyGroup");
}
