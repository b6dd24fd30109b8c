using MathNet.Numerics.Distributions;

namespace Farhold.Study.Tests.Runs;

public class StoppingRuleTests
{
    /// <summary>Eight looks share 5 %: each has 0.625 %, two-sided.</summary>
    [Fact]
    public void Error_is_spent_over_the_looks()
    {
        var plan = SomePlan.Read(SomePlan.Shares());
        Assert.Equal(8, plan.Run.Batches);
        Assert.Equal(Normal.InvCDF(0, 1, 1 - (0.05 / 8 / 2)), StoppingRule.Reach(plan.Run), 1e-9);
    }

    [Fact]
    public void A_run_ends_at_the_first_look_within_the_margins_or_with_its_budget()
    {
        var json = SomePlan.Shares();
        json["run"]!["marginDeaths"] = 1000;
        json["run"]!["marginLimbs"] = 15;
        var (tally, batches, by) = Ended(json);
        Assert.Equal(EndedBy.Margins, by);
        Assert.InRange(batches, 2, 7);
        Assert.Equal(256 * batches, tally.Casualties);
        json["run"]!["marginLimbs"] = 0.01;
        Assert.Equal((8, EndedBy.Budget), (Ended(json).Batches, Ended(json).By));
    }

    private static (Tally Tally, int Batches, EndedBy By) Ended(System.Text.Json.Nodes.JsonNode json)
    {
        var plan = SomePlan.Read(json);
        return StoppingRule.Add(plan, StudyRun.Run(plan, RunPart.Whole, 2, new Dictionary<int, Batch>(), _ => { }, _ => { }));
    }
}
