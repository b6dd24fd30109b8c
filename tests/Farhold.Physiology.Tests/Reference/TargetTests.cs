using System.Globalization;
using System.Text;
using Farhold.Tests.Architecture;

namespace Farhold.Physiology.Tests.Reference;

/// <summary>
/// The 26 targets of published figures, met or outside, as <c>docs/casualty-model-targets.md</c> lists them. What falls outside is listed
/// there, and no constant is turned until it fits.
/// </summary>
public class TargetTests
{
    private const string Start = "<!-- targets -->\n";
    private const string End = "<!-- /targets -->\n";

    private static readonly string Page = Path.Combine(Repository.Root, "docs", "casualty-model-targets.md");

    /// <summary>Set <c>FARHOLD_APPROVE</c> to write the page anew; then read the difference.</summary>
    [Fact]
    public void The_page_lists_every_target_as_it_is_met()
    {
        var page = File.ReadAllText(Page);
        var (from, to) = (page.IndexOf(Start, StringComparison.Ordinal) + Start.Length, page.IndexOf(End, StringComparison.Ordinal));
        var found = Table();
        if (Environment.GetEnvironmentVariable("FARHOLD_APPROVE") is not null)
            File.WriteAllText(Page, page[..from] + found + page[to..]);
        Assert.Equal(found, page[from..to]);
    }

    [Fact]
    public void All_twenty_six_targets_are_in_the_table() =>
        Assert.Equal(Enumerable.Range(1, 26).Select(i => $"{i}"), Rows().Select(r => r["target"]).Distinct());

    private static string Table()
    {
        var (lines, met, outside, unjudged) = (new StringBuilder(), 0, 0, 0);
        foreach (var row in Rows())
        {
            var value = TargetCourses.Measure(row["target"], row["input"], row["sign"]);
            string verdict;
            if (row["low"].Length == 0)
                (verdict, unjudged) = ("not judged", unjudged + 1);
            else if (value >= Number(row["low"]) && value <= Number(row["high"]))
                (verdict, met) = ("met", met + 1);
            else
                (verdict, outside) = ("**outside**", outside + 1);
            var accepted = row["low"].Length == 0 ? "" : $"{row["low"]} to {row["high"]}";
            lines.Append(
                CultureInfo.InvariantCulture,
                $"| {row["target"]} | {row["input"]} | {row["sign"]}, {row["unit"]} | {row["expected"]} | {row["source"]} "
                    + $"| {accepted} | {Digits(value)} | {verdict} |\n"
            );
        }

        return $"""
            {met} signs met, {outside} outside, {unjudged} not judged.

            | # | input | sign | published | source | accepted | model 1 | |
            |---|---|---|---|---|---|---|---|
            {lines}
            """.ReplaceLineEndings("\n");
    }

    private static IEnumerable<Dictionary<string, string>> Rows() =>
        Csv.Rows(Path.Combine(AppContext.BaseDirectory, "tables", "targets.csv"));

    /// <summary>Three digits: what the page shows does not turn on the last bit.</summary>
    private static string Digits(double value) =>
        Math.Abs(value) >= 100 ? value.ToString("0", CultureInfo.InvariantCulture) : value.ToString("G3", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
