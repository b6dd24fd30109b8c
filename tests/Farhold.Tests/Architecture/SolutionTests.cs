using System.Xml.Linq;

namespace Farhold.Tests.Architecture;

/// <summary>What a build of the solution leaves out is not held to its rules; what nobody refers to is only noise.</summary>
public class SolutionTests
{
    private static readonly string Root = FindRoot();

    public static TheoryData<string> Projects => [.. ProjectFiles()];

    public static TheoryData<string> Packages =>
        [.. Elements(Path.Combine(Root, "Directory.Packages.props"), "PackageVersion").Select(e => (string)e.Attribute("Include")!)];

    [Theory, MemberData(nameof(Projects))]
    public void A_project_is_in_the_solution(string project) => Assert.Contains(
        project, Elements(Path.Combine(Root, "Farhold.slnx"), "Project").Select(e => (string)e.Attribute("Path")!));

    [Theory, MemberData(nameof(Packages))]
    public void A_package_with_a_version_is_used_by_a_project(string package) => Assert.Contains(
        package, ReferringFiles().SelectMany(f => Elements(f, "PackageReference")).Select(e => (string)e.Attribute("Include")!));

    private static IEnumerable<string> ProjectFiles() => Files("*.csproj").Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'));

    private static IEnumerable<string> ReferringFiles() => Files("*.csproj").Concat(Files("Directory.Build.props"));

    private static IEnumerable<string> Files(string pattern) => Directory.GetDirectories(Root)
        .Where(d => Path.GetFileName(d) is var name && name != "artifacts" && !name.StartsWith('.'))
        .SelectMany(d => Directory.GetFiles(d, pattern, SearchOption.AllDirectories))
        .Where(f => !f.Contains("node_modules", StringComparison.Ordinal));

    private static IEnumerable<XElement> Elements(string file, string name) => XDocument.Load(file).Descendants(name);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Farhold.slnx")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("Farhold.slnx is in no folder above the tests.");
        return folder.FullName;
    }
}
