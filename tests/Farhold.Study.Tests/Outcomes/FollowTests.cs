using Farhold.WayOut.Chance;

namespace Farhold.Study.Tests.Outcomes;

public class FollowTests
{
    private static readonly StudyPlan Plan = SomePlan.Read(SomePlan.Shipped());
    private static readonly InputValues Values = InputValues.Central(Plan, Plan.Cohorts[1]);

    private static Watch Every(double minutes) => new("", [new(double.PositiveInfinity, minutes)]);

    /// <summary>A quarter through a gap of 8 min, no look missed, reaction at its middle: 2 min and 1.375.</summary>
    [Fact]
    public void A_bleed_is_caught_at_the_next_look_and_a_reaction_later()
    {
        Assert.Equal(2 + 1.375, Follow.Caught(Every(8), Values, new(0.25, 0.5, 0.5, 0), 90), 1e-12);
        // One look in ten misses it: with luck of 0.05 one is missed, and the next 8 min later sees it.
        Assert.Equal(10 + 1.375, Follow.Caught(Every(8), Values, new(0.25, 0.05, 0.5, 0), 90), 1e-12);
    }

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(14.9, 0.5)]
    [InlineData(15, 2)]
    [InlineData(59, 2)]
    [InlineData(60, 15)]
    [InlineData(500, 60)]
    public void The_shipped_watch_has_its_periods(double since, double every) => Assert.Equal(every, Plan.Policies[1].Watch.Every(since));

    /// <summary>The watch of the study is the one of the protocol that ships, to the minute.</summary>
    [Fact]
    public void The_studys_shipped_watch_is_the_protocols()
    {
        using var protocol = System.Text.Json.JsonDocument.Parse(
            File.ReadAllText(Path.Combine(Repository.Root, "protocols", "farhold-base.json"))
        );
        double Minutes(System.Text.Json.JsonElement of, string name, double otherwise) =>
            of.TryGetProperty(name, out var span) ? Farhold.Text.IsoSpan.Read(span.GetString()!)!.Value.TotalMinutes : otherwise;
        Assert.Equal(
            protocol
                .RootElement.GetProperty("watch")
                .GetProperty("periods")
                .EnumerateArray()
                .Select(p => new WatchPeriod(Minutes(p, "until", double.PositiveInfinity), Minutes(p, "every", 0.5))),
            Plan.Policies[1].Watch.Periods
        );
    }

    /// <summary>The model is left out, and two attempts on one wound agree more often than chance would have it.</summary>
    [Fact]
    public void A_second_attempt_on_a_wound_that_failed_holds_less_often_than_a_first()
    {
        var json = SomePlan.Shares();
        json["figures"]!["rebleed"] = SomePlan.Value(0);
        var plan = SomePlan.Read(json);
        var (v, draws) = (InputValues.Central(plan, plan.Cohorts[1]), new StudyDraws(3));
        var twice = plan.Policies.Single(p => p.SecondTry);
        var courses = Enumerable.Range(0, 20_000).Select(i => Follow.Of(twice, v, new Luck(draws.Casualty(i)), true, null, i)).ToArray();
        var first = courses.Count(c => !c.Failed);
        var second = courses.Count(c => c.OnSecond && c.ReleasedAt == 2.5);
        var failed = courses.Length - first;
        Assert.Equal(14.0 / 21, (double)first / courses.Length, 0.015);
        Assert.InRange((double)second / failed, 0.1, 0.45);
    }

    /// <summary>
    /// A wound that bled for four of its six minutes has two left at the next bleed, and the limb counts from its first tightening.
    /// </summary>
    [Fact]
    public void What_bled_before_counts_against_the_limit()
    {
        var limits = new LimitTable([.. Enumerable.Repeat(6.0, 2 * LimitTable.Hours.Length)]);
        var json = SomePlan.Shipped();
        foreach (var (name, value) in new[] { ("holdHaemostatic", 0.0), ("missedLook", 0), ("timeToDeath", 1), ("reactionMin", 0) })
            json["figures"]![name] = SomePlan.Value(value);
        var plan = SomePlan.Read(json);
        var v = InputValues.Central(plan, plan.Cohorts[0]);
        var twice = plan.Policies.Single(p => p.SecondTry) with { Watch = Every(4) };
        var (draws, dead, tied) = (new StudyDraws(1), 0, 0);
        for (var i = 0; i < 2000; i++)
        {
            var luck = new Luck(draws.Casualty(i));
            var bled = 4 * (luck.First.Phase + luck.Second.Phase);
            var course = Follow.Of(twice, v, luck, true, limits, 0);
            Assert.Equal(bled >= 6, !double.IsInfinity(course.DiesAt));
            Assert.True(double.IsInfinity(course.ReleasedAt));
            (dead, tied) = double.IsInfinity(course.DiesAt) ? (dead, tied + 1) : (dead + 1, tied);
        }

        Assert.True(dead > 100 && tied > 100);
    }
}
