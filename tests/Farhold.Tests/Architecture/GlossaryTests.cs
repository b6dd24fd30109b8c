using System.Reflection;
using System.Text.RegularExpressions;

namespace Farhold.Tests.Architecture;

/// <summary>Every name of code in docs/glossary.md is one: a page that nothing holds to the code is soon wrong.</summary>
public partial class GlossaryTests
{
    private static readonly string[] Parts = ["Farhold.Core", "Farhold.Exchange", "Farhold.WayOut", "Farhold.Physiology"];

    /// <summary>Parts that these tests do not load: their sources are read instead.</summary>
    private static readonly string[] Sources = ["Farhold.Rehearsal", Path.Combine("Farhold.App", "Rehearse")];

    public static TheoryData<string> Names => [.. Rows().SelectMany(r => Code().Matches(r[^1]).Select(m => m.Groups[1].Value)).Distinct()];

    [Theory, MemberData(nameof(Names))]
    public void A_name_in_the_glossary_is_in_the_code(string name) =>
        Assert.True(IsInCode(name) || IsInSources(name), $"{name} is nowhere in {string.Join(", ", Parts.Concat(Sources))}");

    [Theory]
    [InlineData("RunClock", true)]
    [InlineData("RunClock.SceneAt", true)]
    [InlineData("TakeRunScreen", true)]
    [InlineData("RunClock.SceneA", false)]
    [InlineData("RunCloc", false)]
    [InlineData("the", false)]
    public void A_name_of_a_part_that_is_not_loaded_is_declared_in_its_sources(string name, bool isThere) =>
        Assert.Equal(isThere, IsInSources(name));

    [Fact]
    public void Every_row_has_a_plain_word_a_term_and_a_name() =>
        Assert.All(Rows(), r => Assert.True(r.Length == 3 && r.All(c => c.Length > 0) && Code().IsMatch(r[2]), string.Join(" | ", r)));

    private static bool IsInCode(string name)
    {
        var types = Parts.SelectMany(p => Assembly.Load(p).GetTypes()).ToArray();
        return name.Split('.') switch
        {
            ["Farhold", ..] => types.Any(t => t.Namespace == name),
            [var type, var member] => types.Any(t => t.Name == type && t.GetMember(member).Length > 0),
            [var one] => char.IsLower(one[0])
                ? types.Any(t => t.GetProperty(char.ToUpperInvariant(one[0]) + one[1..]) is not null)
                : types.Any(t => t.Name == one),
            _ => false,
        };
    }

    /// <summary>A type is declared there, or is a component's file; of a member, in the file of its type.</summary>
    private static bool IsInSources(string name)
    {
        var (type, member) = name.Split('.') switch
        {
            [var one] => (one, null),
            [var of, var its] => (of, its),
            _ => (name, (string?)null),
        };
        var declared = new Regex($@"\b(class|record|struct|interface|enum) {Regex.Escape(type)}\b");
        return Sources
            .SelectMany(s => Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", s), "*.*", SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor")
            .Select(f => (Name: Path.GetFileName(f), Text: File.ReadAllText(f)))
            .Where(f => f.Name == $"{type}.razor" || declared.IsMatch(f.Text))
            .Any(f => member is null || Regex.IsMatch(f.Text, $@"\b{Regex.Escape(member)}\b *[(={{,;]"));
    }

    private static string[][] Rows() =>
        [
            .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "docs", "glossary.md"))
                .Where(l => l.StartsWith('|'))
                .Skip(2)
                .Select(l => l.Trim('|').Split('|').Select(c => c.Trim()).ToArray()),
        ];

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Code();
}
