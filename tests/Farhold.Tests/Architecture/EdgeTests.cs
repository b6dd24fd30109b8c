using System.Text.RegularExpressions;

namespace Farhold.Tests.Architecture;

/// <summary>What ships is taken up where a program begins, and handed on from there: nothing else reaches for it.</summary>
public partial class EdgeTests
{
    private static readonly string[] Edges =
    [
        "src/Farhold.App/FarholdServices.cs",
        "src/Farhold.Cli/Opened.cs",
        "src/Farhold.Hub/Program.cs",
        "src/Farhold.Rehearsal/Scenarios/ScenarioReader.cs",
    ];

    [Fact]
    public void Only_the_edges_reach_for_what_ships() =>
        Assert.Equal(
            Edges,
            Directory
                .EnumerateFiles(Path.Combine(Repository.Root, "src"), "*", SearchOption.AllDirectories)
                .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !f.Contains("/obj/", StringComparison.Ordinal))
                .Where(f => !Path.GetFileName(f).StartsWith("Shipped", StringComparison.Ordinal))
                .Where(f => Reaches().IsMatch(File.ReadAllText(f)))
                .Select(f => Path.GetRelativePath(Repository.Root, f))
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void What_ships_is_loaded_by_these_alone() =>
        Assert.Equal(
            ["Formulary", "Kit", "Protocol", "Rules", "WarningSigns"],
            typeof(Rulebook)
                .Assembly.GetTypes()
                .Where(t => t.IsPublic && t.Name.StartsWith("Shipped", StringComparison.Ordinal))
                .Select(t => t.Name["Shipped".Length..])
                .Order(StringComparer.Ordinal)
        );

    [GeneratedRegex(@"\bShipped(Rules|Protocol|Formulary|Kit|WarningSigns)\b")]
    private static partial Regex Reaches();
}
