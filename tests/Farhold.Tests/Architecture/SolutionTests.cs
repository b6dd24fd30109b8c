using System.Xml.Linq;

namespace Farhold.Tests.Architecture;

/// <summary>What a build of the solution leaves out is not held to its rules; what nobody refers to is only noise.</summary>
public class SolutionTests
{
    public static TheoryData<string> Projects => [.. ProjectFiles()];

    public static TheoryData<string> Packages =>
        [
            .. Elements(Path.Combine(Repository.Root, "Directory.Packages.props"), "PackageVersion")
                .Select(e => (string)e.Attribute("Include")!),
        ];

    [Theory, MemberData(nameof(Projects))]
    public void A_project_is_in_the_solution(string project) =>
        Assert.Contains(
            project,
            Elements(Path.Combine(Repository.Root, "Farhold.slnx"), "Project").Select(e => (string)e.Attribute("Path")!)
        );

    [Theory, MemberData(nameof(Packages))]
    public void A_package_with_a_version_is_used_by_a_project(string package) =>
        Assert.Contains(
            package,
            ReferringFiles().SelectMany(f => Elements(f, "PackageReference")).Select(e => (string)e.Attribute("Include")!)
        );

    private static IEnumerable<string> ProjectFiles() =>
        Repository.Files("*.csproj").Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'));

    private static IEnumerable<string> ReferringFiles() => Repository.Files("*.csproj").Concat(Repository.Files("Directory.Build.props"));

    private static IEnumerable<XElement> Elements(string file, string name) => XDocument.Load(file).Descendants(name);
}
