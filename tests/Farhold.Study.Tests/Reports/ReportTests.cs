using System.Xml.Linq;

namespace Farhold.Study.Tests.Reports;

public class ReportTests
{
    private static readonly StudyPlan Plan = SomePlan.Read(SomePlan.Shares(1024));

    private static readonly Lazy<StudyResult> Result = new(() =>
        StudyResult.Of(Plan, StudyRun.Run(Plan, RunPart.Whole, 2, new Dictionary<int, Batch>(), _ => { }, _ => { }), 2)
    );

    private static readonly Lazy<Dictionary<string, string>> Made = new(() =>
        StudyFiles.Of(Result.Value).ToDictionary(f => f.Name, f => f.Content)
    );

    [Fact]
    public void Every_output_says_first_what_it_is_not()
    {
        var parts = PartFile.Head(PartHead.For(Plan, RunPart.Whole));
        Assert.StartsWith($"{{\"not\":\"{StudyTexts.NotGuidance}\"", parts, StringComparison.Ordinal);
        foreach (var (name, content) in Made.Value)
            if (name.EndsWith(".svg", StringComparison.Ordinal))
                Assert.Equal(
                    StudyTexts.NotGuidance[..20],
                    XElement.Parse(content).Descendants().First(e => e.Name.LocalName == "text").Value[..20]
                );
            else
                Assert.Contains(StudyTexts.NotGuidance, content.Split('\n')[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Threads_change_no_byte_of_a_report()
    {
        var one = StudyResult.Of(Plan, StudyRun.Run(Plan, RunPart.Whole, 1, new Dictionary<int, Batch>(), _ => { }, _ => { }), 1);
        Assert.Equal(Made.Value.OrderBy(f => f.Key), StudyFiles.Of(one).ToDictionary(f => f.Name, f => f.Content).OrderBy(f => f.Key));
    }

    /// <summary>Each picture's numbers stand in a table: of net benefit in fans.csv, of bars in decides.csv.</summary>
    [Fact]
    public void Every_picture_has_its_table()
    {
        var rows = Made.Value["fans.csv"].Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2 + (Plan.Cohorts.Length * (Plan.Policies.Length - 1) * Plan.Evacuation.Length), rows.Length);
        Assert.Equal(
            2 + (Plan.Cohorts.Length * Plan.Uncertainty.At.Length * (Plan.Figures.Drawn.Length + 1)),
            Made.Value["decides.csv"].Split('\n', StringSplitOptions.RemoveEmptyEntries).Length
        );
        Assert.Equal(
            Plan.Cohorts.Length * (2 + (2 * Plan.Uncertainty.At.Length)),
            Made.Value.Keys.Count(k => k.EndsWith(".svg", StringComparison.Ordinal))
        );
    }

    /// <summary>A mean in the heat map is that of the table, and it is hatched where its nine tenths cross 0.</summary>
    [Fact]
    public void The_heat_map_is_hatched_where_the_table_crosses_nought()
    {
        var svg = XElement.Parse(Made.Value["heat-mixed.svg"]);
        var crosses = 0;
        for (var policy = 0; policy < Plan.Policies.Length; policy++)
        for (var hour = 0; hour < Plan.Evacuation.Length; hour++)
            if (
                policy != Plan.Reference
                && Plan.Policies[policy].AttemptH < Plan.Evacuation[hour]
                && Result.Value.Outer.Fan(1, policy, hour).Crosses
            )
                crosses++;
        Assert.True(crosses > 0);
        // One more is in the key.
        Assert.Equal(crosses + 1, svg.Descendants().Count(e => (string?)e.Attribute("fill") == "url(#hatch)"));
    }

    /// <summary>Nothing is drawn past the edges.</summary>
    [Fact]
    public void Pictures_stay_within_their_edges()
    {
        foreach (var (name, content) in Made.Value.Where(f => f.Key.EndsWith(".svg", StringComparison.Ordinal)))
        {
            var svg = XElement.Parse(content);
            var (width, height) = ((double)svg.Attribute("width")!, (double)svg.Attribute("height")!);
            Assert.All(
                svg.Descendants().Where(e => e.Name.LocalName == "text"),
                t =>
                {
                    var (x, y, wide) = ((double)t.Attribute("x")!, (double)t.Attribute("y")!, StudySvg.Width(t.Value) * 0.85);
                    var left = (string?)t.Attribute("text-anchor") switch
                    {
                        "middle" => x - (wide / 2),
                        "end" => x - wide,
                        _ => x,
                    };
                    Assert.True(left >= -1 && left + wide <= width + 1 && y <= height, $"{name}: {t.Value} at {x}, {y}");
                }
            );
        }
    }

    [Fact]
    public void Which_rule_ended_it_is_said() =>
        Assert.Contains("Ended because all casualties asked for were run", Made.Value["report.txt"], StringComparison.Ordinal);

    /// <summary>RFC 4180: a cell with a comma, a quote or a line feed is quoted.</summary>
    [Fact]
    public void A_spreadsheet_takes_any_cell()
    {
        var csv = new StudyTable(
            "a",
            "b",
            ["x", "y"],
            [
                ["1,5", "say \"so\""],
            ]
        ).Csv();
        Assert.EndsWith("x,y\n\"1,5\",\"say \"\"so\"\"\"\n", csv, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-0.04, "0")]
    [InlineData(0.04, "0")]
    [InlineData(2.26, "+2.3")]
    [InlineData(-13.2, "−13.2")]
    [InlineData(-123.4, "−123")]
    public void A_difference_bears_its_sign(double value, string said) => Assert.Equal(said, StudyReport.Signed(value));
}
