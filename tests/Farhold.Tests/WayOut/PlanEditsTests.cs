namespace Farhold.Tests.WayOut;

public class PlanEditsTests
{
    private static readonly Plan Plan = SomePlan.Of(
        """{"name":"a","mode":"wait","p10":1,"p90":2},{"branches":[{"probability":0.7,"legs":[{"name":"b","mode":"wait","p10":1,"p90":2}]},{"legs":[{"name":"c","mode":"wait","p10":1,"p90":2},{"name":"d","mode":"wait","p10":1,"p90":2}]}]}"""
    );

    private static readonly Leg Fresh = SomePlan.Of("""{"name":"new","mode":"wait","p10":3,"p90":4}""").Legs[0];

    private static string Names(Plan p) => string.Join(' ', p.All.Select(l => l.Name ?? "fork"));

    private static int Slot(string name) => Plan.All.First(l => l.Name == name).Slot;

    [Fact]
    public void A_leg_goes_to_the_end_of_its_row()
    {
        var leg = Fresh with { Slot = Plan.NextSlot() };
        Assert.Equal("a fork b c d new", Names(Plan.Added(LegRow.Plan, leg)));
        Assert.Equal("a fork b new c d", Names(Plan.Added(new(Slot("a") + 1, 0), leg)));
    }

    [Fact]
    public void A_leg_moves_earlier_only_among_its_neighbours()
    {
        Assert.Equal("a fork b d c", Names(Plan.Earlier(Slot("d"))));
        Assert.Equal("a fork b c d", Names(Plan.Earlier(Slot("c"))));
        Assert.Equal("fork b c d a", Names(Plan.Earlier(Plan.Legs[1].Slot)));
    }

    [Fact]
    public void A_leg_is_struck_or_replaced_by_its_slot()
    {
        Assert.Equal("a fork b d", Names(Plan.Without(Slot("c"))));
        Assert.Equal("a fork b new d", Names(Plan.Replaced(Fresh with { Slot = Slot("c") })));
    }

    [Fact]
    public void Of_two_branches_the_other_takes_what_is_left() =>
        Assert.Equal([0.2, 0.8], ((Choice)Plan.WithChance(new(Plan.Legs[1].Slot, 0), 0.2).Legs[1]).Ways.Select(w => w.Probability));

    [Fact]
    public void Settled_is_as_read_back_and_a_plan_without_an_end_is_refused()
    {
        var settled = Assert.IsType<Read<Plan>.Usable>(Plan.Without(Slot("c")).Settled()).Value;
        Assert.Equal(Enumerable.Range(1, 4), settled.All.Select(l => l.Slot));
        Assert.IsType<Read<Plan>.Refused>((Plan with { Legs = [] }).Settled());
    }

    [Fact]
    public void What_waits_for_daylight_is_refused_without_a_place()
    {
        var halting = Plan with
        {
            Legs = [SomePlan.Of("""{"mode":"walk","distanceKm":3,"dark":"stop"}""", "\"from\":{\"lat\":1,\"lon\":2},").Legs[0]],
        };
        Assert.Contains("daylight", Assert.IsType<Read<Plan>.Refused>(halting.Settled()).Refusals[0].Reason, StringComparison.Ordinal);
        Assert.IsType<Read<Plan>.Usable>((halting with { From = new(1, 2) }).Settled());
    }
}
