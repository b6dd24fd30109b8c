using System.Reflection;
using System.Text.RegularExpressions;

namespace Farhold.Tests.Architecture;

/// <summary>Every name of code in docs/glossary.md is one: a page that nothing holds to the code is soon wrong.</summary>
public partial class GlossaryTests
{
    private static readonly string[] Parts = ["Farhold.Core", "Farhold.Exchange", "Farhold.WayOut", "Farhold.Physiology"];

    public static TheoryData<string> Names => [.. Rows().SelectMany(r => Code().Matches(r[^1]).Select(m => m.Groups[1].Value)).Distinct()];

    [Theory, MemberData(nameof(Names))]
    public void A_name_in_the_glossary_is_in_the_code(string name) =>
        Assert.True(IsInCode(name), $"{name} is nowhere in {string.Join(", ", Parts)}");

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
