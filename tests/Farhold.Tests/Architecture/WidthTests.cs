using System.Text.RegularExpressions;

namespace Farhold.Tests.Architecture;

/// <summary>
/// CSharpier breaks code where it can; comments and literals are left to whoever writes them. A line may be wider only for one literal
/// that can't be broken: a line of a record, a script for the browser, a part of an SVG.
/// </summary>
public partial class WidthTests
{
    private const int Most = 140;

    [Fact]
    public void No_line_of_code_is_wider_than_the_editor_is_told() =>
        Assert.Empty(
            Repository
                .Files("*.cs")
                .Where(f => !f.Contains("/obj/", StringComparison.Ordinal))
                .SelectMany(f => TooWide(File.ReadAllLines(f)).Select(n => $"{Path.GetRelativePath(Repository.Root, f)}:{n}"))
        );

    [Theory]
    [InlineData("// ", 138, true)]
    [InlineData("// ", 137, false)]
    [InlineData("x = \"", 150, false)]
    [InlineData("x = $\"{(a ? \"b\" : \"c\")} ", 150, false)]
    public void Only_a_literal_makes_a_line_wider(string start, int more, bool tooWide)
    {
        var line = start + new string('y', more) + (start.Contains('"', StringComparison.Ordinal) ? "\";" : "");
        Assert.Equal(tooWide, TooWide([line]).Any());
    }

    [Fact]
    public void Lines_of_a_raw_literal_are_what_they_hold()
    {
        var wide = new string('y', 200);
        Assert.Empty(TooWide(["x = \"\"\"", wide, "\"\"\";"]));
        Assert.Equal([4], TooWide(["x = \"\"\"", wide, "\"\"\";", wide]));
    }

    private static IEnumerable<int> TooWide(string[] lines)
    {
        var raw = false;
        for (var i = 0; i < lines.Length; i++)
        {
            var within = raw;
            raw ^= RawQuotes().Count(lines[i]) % 2 == 1;
            if (!within && !raw && lines[i].Length > Most && Literal().Replace(lines[i], "").Length > Most)
                yield return i + 1;
        }
    }

    [GeneratedRegex("\"{3,}")]
    private static partial Regex RawQuotes();

    /// <summary>From the first quote to the last, so that literals within an interpolation count as part of it.</summary>
    [GeneratedRegex("\".*\"")]
    private static partial Regex Literal();
}
