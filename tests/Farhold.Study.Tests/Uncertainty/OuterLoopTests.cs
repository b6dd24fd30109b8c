namespace Farhold.Study.Tests.Uncertainty;

public class OuterLoopTests
{
    /// <summary>Where every figure is fixed, all that differs between draws is the casualties' own luck, and it is taken out.</summary>
    [Fact]
    public void Noise_of_the_casualties_is_no_uncertainty_of_the_figures()
    {
        var json = SomePlan.Oracle(2048);
        json["uncertainty"]!["draws"] = 256;
        json["uncertainty"]!["casualties"] = 512;
        json["uncertainty"]!["atH"] = new System.Text.Json.Nodes.JsonArray(4);
        var plan = SomePlan.Read(json);
        Assert.Empty(plan.Figures.Drawn);
        var outer = OuterLoop.Run(plan, null, 2);
        var fan = outer.Fan(0, plan.Uncertainty.Policy, plan.Evacuation.IndexOf(4));
        Assert.InRange(fan.InnerShare, 0.8, 1);
        // Of a spread of 5 to 7 per 1,000 among such samples, less than half is left.
        Assert.InRange(fan.P95 - fan.P5, 0, 9);
        Assert.InRange(fan.Error, 0, 1);
    }

    [Fact]
    public void Figures_that_are_drawn_spread_the_fan_and_its_ends_stand_in_order()
    {
        var plan = SomePlan.Read(SomePlan.Shares());
        var outer = OuterLoop.Run(plan, null, 2);
        var fan = outer.Fan(1, plan.Uncertainty.Policy, plan.Evacuation.IndexOf(8));
        Assert.True(fan.P5 < fan.P25 && fan.P25 < fan.P50 && fan.P50 < fan.P75 && fan.P75 < fan.P95);
        Assert.InRange(fan.InnerShare, 0, 0.6);
        var ranks = outer.Ranks(1, plan.Evacuation.IndexOf(8));
        Assert.Equal(1, ranks.Sum(r => r.Best), 1e-9);
        Assert.All(ranks, r => Assert.True(r.NearBest >= r.Best - 1e-9 && r.Regret >= 0));
        Assert.Equal(outer.Net[3], OuterLoop.Run(plan, null, 1).Net[3]);
    }
}
