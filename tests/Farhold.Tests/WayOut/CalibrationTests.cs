using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Farhold.Tools.Fit;
using Json.Schema;

namespace Farhold.Tests.WayOut;

/// <summary>
/// Forecasts beside published rescues, each source in its table. The aim: the range from one in ten to nine in ten holds 70 to 90 % of
/// what happened, and actual over middle lies between 0.85 and 1.15, on the ground and by air apart.
/// </summary>
/// <remarks>Where the table in docs/quality.md is behind, FARHOLD_APPROVE=1 writes it anew.</remarks>
public class CalibrationTests
{
    private const string From = "<!-- calibration -->";
    private const string To = "<!-- /calibration -->";

    private static readonly IReadOnlyList<CaseRow> GroundRows = CaseRow.Of(Table("ground_cases.csv"));
    private static readonly IReadOnlyList<Calibrated> Ground = Calibration.Ground(GroundRows);
    private static readonly IReadOnlyList<Calibrated> Air = Calibration.Air(CaseRow.Of(Table("air_cases.csv")));

    [Fact]
    public void On_the_ground_ranges_hold_what_happened_and_the_middle_is_fair() => Fair(Ground);

    [Fact]
    public void By_air_ranges_hold_what_happened_and_the_middle_is_fair() => Fair(Air);

    [Fact]
    public void The_pace_that_ships_is_the_fitted_one_rounded_down()
    {
        var fitted = Calibration.Median(Calibration.TrailSpeeds(GroundRows).Select(s => s.Kmh));
        Assert.InRange(LitterCarry.OnTrailKmh.Median, fitted - 0.15, fitted);
    }

    [Fact]
    public void Every_case_is_in_the_table_of_reported_carries()
    {
        var reported = CaseRow.Of(Table("litter_cases.csv")).ToDictionary(c => c["case_id"]);
        Assert.All(
            GroundRows.Where(c => c["interval"] == "carry"),
            c =>
            {
                var whole = reported[c["case_id"]];
                Assert.Equal(whole.Number("distance_km"), c.Number("carry_km"));
                Assert.Equal(60 * whole.Number("carry_time_h")!.Value, c.Number("actual_min")!.Value, 0.5);
                Assert.Equal(whole.Number("people_on_carry"), c.Number("people"));
            }
        );
        Assert.All(
            GroundRows.Where(c => c["interval"] != "carry"),
            c => Assert.Equal(60 * reported[c["case_id"]].Number("call_to_road_h")!.Value, c.Number("actual_min")!.Value, 0.5)
        );
    }

    [Fact]
    public void The_table_in_the_quality_page_is_of_this_run()
    {
        var table = string.Join(
            "\n",
            Calibration.Table("on the ground", Ground).Append("").Concat(Calibration.Table("by air", Air)).Append("")
        );
        if (Environment.GetEnvironmentVariable("FARHOLD_APPROVE") is { Length: > 0 } && Root() is { } root)
        {
            var page = Path.Combine(root, "docs", "quality.md");
            File.WriteAllText(page, Replaced(File.ReadAllText(page), table));
        }

        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "quality.md")).ReplaceLineEndings("\n");
        Assert.Equal(Replaced(text, table), text);
    }

    [Fact]
    public void Every_prior_has_its_source_and_the_table_fits_its_schema()
    {
        var schema = JsonSchema.FromText(Encoding.UTF8.GetString(SomePlan.File("priors.schema.json")));
        Assert.True(schema.Evaluate(JsonNode.Parse(SomePlan.File("priors.json"))!.Deserialize<JsonElement>()).IsValid);
        Assert.All(PriorTable.Figures, f => Assert.True(f is { Source.Length: > 3, Value: >= 0 }, f.Id));
        Assert.All(PriorTable.Times, t => Assert.True(t.Source.Length > 3, t.Id));
        Assert.Equal(PriorTable.Figures.Length, PriorTable.Figures.Select(f => f.Id).Distinct().Count());
        Assert.Throws<ArgumentException>(() => PriorTable.Figure("none such"));
    }

    private static void Fair(IReadOnlyList<Calibrated> cases)
    {
        Assert.InRange(Calibration.Coverage(cases), 0.7, 0.9);
        Assert.InRange(Calibration.Ratio(cases), 0.85, 1.15);
    }

    private static string Replaced(string page, string table)
    {
        var (from, to) = (page.IndexOf(From, StringComparison.Ordinal) + From.Length, page.IndexOf(To, StringComparison.Ordinal));
        return page[..from] + "\n\n" + table + "\n" + page[to..];
    }

    private static string Table(string name) => Path.Combine(AppContext.BaseDirectory, "tables", name);

    private static string? Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Farhold.slnx")))
            at = at.Parent;
        return at?.FullName;
    }
}
