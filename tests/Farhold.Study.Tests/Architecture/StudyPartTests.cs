using System.Xml.Linq;

namespace Farhold.Study.Tests.Architecture;

public class StudyPartTests
{
    [Fact]
    public void The_study_uses_only_what_it_may() =>
        Assert.Empty(
            typeof(StudyPlan)
                .Assembly.GetReferencedAssemblies()
                .Select(a => a.Name!)
                .Where(n => !n.StartsWith("System", StringComparison.Ordinal))
                .Except(["NodaTime", "MathNet.Numerics", "Farhold.Core", "Farhold.WayOut", "Farhold.Physiology"])
        );

    /// <summary>A verdict must never lean on it, and the phone never carries it: of what ships only the command line knows it.</summary>
    [Fact]
    public void Only_the_command_line_refers_to_it() =>
        Assert.Equal(
            ["src/Farhold.Cli/Farhold.Cli.csproj"],
            Repository
                .Files("*.csproj")
                .Where(f =>
                    XDocument.Load(f).Descendants("ProjectReference").Any(r => ((string)r.Attribute("Include")!).Contains("Farhold.Study"))
                )
                .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
                .Where(f => f.StartsWith("src/", StringComparison.Ordinal))
        );
}
