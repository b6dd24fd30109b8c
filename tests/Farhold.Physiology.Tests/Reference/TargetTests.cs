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

    /// <summary>What the app shows under "How far can this be trusted?".</summary>
    private static readonly string Data = Path.Combine(Repository.Root, "src", "Farhold.Physiology", "models", "1.targets.csv");

    private static readonly Lazy<Line[]> Found = new(() => [.. Rows().Select(Judge)]);

    /// <summary>Set <c>FARHOLD_APPROVE</c> to write the page anew; then read the difference.</summary>
    [Fact]
    public void The_page_lists_every_target_as_it_is_met()
    {
        var page = File.ReadAllText(Page);
        var (from, to) = (page.IndexOf(Start, StringComparison.Ordinal) + Start.Length, page.IndexOf(End, StringComparison.Ordinal));
        Approve(Page, page[..from] + Table() + page[to..]);
        Assert.Equal(Table(), page[from..to]);
    }

    /// <summary>Set <c>FARHOLD_APPROVE</c> to write it anew.</summary>
    [Fact]
    public void What_the_app_shows_is_what_the_model_gives()
    {
        var data = string.Concat(
            Found
                .Value.Select(l => l.Cells)
                .Prepend(["number", "input", "sign", "unit", "published", "source", "accepted", "found", "fit"])
                .Select(cells => string.Join(',', cells) + "\n")
        );
        Approve(Data, data);
        Assert.Equal(data, File.ReadAllText(Data));
        Assert.All(Found.Value, l => Assert.DoesNotContain(l.Cells, c => c.AsSpan().ContainsAny(',', '"')));
    }

    [Fact]
    public void All_twenty_six_targets_are_in_the_table() =>
        Assert.Equal(Enumerable.Range(1, 26).Select(i => $"{i}"), Rows().Select(r => r["target"]).Distinct());

    private static string Table()
    {
        var lines = new StringBuilder();
        foreach (var (row, accepted, found, fit) in Found.Value)
            lines.Append(
                CultureInfo.InvariantCulture,
                $"| {row["target"]} | {row["input"]} | {row["sign"]}, {row["unit"]} | {row["expected"]} | {row["source"]} "
                    + $"| {accepted} | {found} | {(fit == Outside ? $"**{fit}**" : fit.Replace('-', ' '))} |\n"
            );
        return $"""
            {Count(Met)} signs met, {Count(Outside)} outside, {Count(NotJudged)} not judged.

            | # | input | sign | published | source | accepted | model 1 | |
            |---|---|---|---|---|---|---|---|
            {lines}
            """.ReplaceLineEndings("\n");

        static int Count(string fit) => Found.Value.Count(l => l.Fit == fit);
    }

    private const string Met = "met";
    private const string Outside = "outside";
    private const string NotJudged = "not-judged";

    /// <param name="Found">What the model gives.</param>
    private sealed record Line(Dictionary<string, string> Row, string Accepted, string Found, string Fit)
    {
        public string[] Cells =>
            [Row["target"], Row["input"], Row["sign"], Row["unit"], Row["expected"], Row["source"], Accepted, Found, Fit];
    }

    private static Line Judge(Dictionary<string, string> row)
    {
        var value = TargetCourses.Measure(row["target"], row["input"], row["sign"]);
        var (low, high) = (row["low"], row["high"]);
        return low.Length == 0
            ? new(row, "", Digits(value), NotJudged)
            : new(row, $"{low} to {high}", Digits(value), value >= Number(low) && value <= Number(high) ? Met : Outside);
    }

    private static void Approve(string path, string text)
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_APPROVE") is not null)
            File.WriteAllText(path, text);
    }

    private static IEnumerable<Dictionary<string, string>> Rows() =>
        Csv.Rows(Path.Combine(AppContext.BaseDirectory, "tables", "targets.csv"));

    /// <summary>Three digits: what the page shows does not turn on the last bit.</summary>
    private static string Digits(double value) =>
        Math.Abs(value) >= 100 ? value.ToString("0", CultureInfo.InvariantCulture) : value.ToString("G3", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
