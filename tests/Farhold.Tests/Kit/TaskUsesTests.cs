using System.Collections.Immutable;
using System.Text;

namespace Farhold.Tests.Kit;

/// <summary>What the coming tasks of the care plan take, ahead and ticked off.</summary>
/// <remarks>Pieces for one task and the intervals of the tasks are designs of the shipped files, worked out here by hand.</remarks>
public class TaskUsesTests
{
    private static readonly Surroundings Two = new(2, Heat.Cool);

    [Fact]
    public void Every_task_that_the_list_names_is_one_of_the_protocol() =>
        Assert.All(
            ShippedRules.Book.Kit.Items.SelectMany(i => i.Uses).Where(u => u.Kind == Kind.TaskDone),
            u => Assert.Contains(u.Of, ShippedProtocol.Protocol.Tasks.Where(t => t.Once is null).Select(t => t.Id))
        );

    [Fact]
    public void The_interval_of_the_plan_drives_the_use()
    {
        // Before six hours the wound is not asked for: at the least none; at the most every 8 h.
        Assert.Equal(new Between(0, 1 / 8.0), Planned("plain-dressing", Case.Well));
        var closer = ShippedProtocol.Protocol with
        {
            Tasks = [.. ShippedProtocol.Protocol.Tasks.Select(t => t.Id == "wound" ? t with { Every = Duration.FromHours(2) } : t)],
        };
        Assert.Equal(new Between(0, 1 / 2.0), Planned("plain-dressing", Case.Well, closer));
    }

    [Fact]
    public void Gloves_are_taken_for_the_tasks_that_may_have_to_be_done()
    {
        // Urine every 4 h, wound every 8 h, mouth every 4 h, one pair each; the eyes of someone awake are not cleaned.
        Assert.Equal((1 / 4.0) + (1 / 8.0) + (1 / 4.0), Planned("gloves", Case.Well)!.Value.High, 9);
        var asleep = Case.Well.Signs(s => s with { Mental = Mental.Unresponsive }); // unstable: urine every 2 h, eyes every 4 h
        Assert.Equal((1 / 2.0) + (1 / 8.0) + (1 / 4.0) + (1 / 4.0), Planned("gloves", asleep)!.Value.High, 9);
    }

    [Fact]
    public void Once_a_task_is_asked_for_its_least_counts_as_seldom_as_a_night_may_stretch_it()
    {
        var hours = Case.Well.And("07:00", new Payload.CasualtyOpened("Runa", AgeYears: 34));
        Assert.Equal(0.3 / 12, Planned("gloves", hours)!.Value.Low, 9);
    }

    [Fact]
    public void Of_a_task_and_the_one_in_its_place_only_one_is_counted()
    {
        var measure = Task("urine", "PT4H") with { ReplacedBy = "release-urine" };
        var instead = Task("release-urine", "PT1H");
        var gloves = ShippedRules.Book.Kit.Named("gloves")!;
        Assert.Equal(1, TaskUses.PerHour(gloves, [Plan(measure, Truth.Met), Plan(instead, Truth.Unknown)])!.Value.High);
        Assert.Equal(0.25, TaskUses.PerHour(gloves, [Plan(measure, Truth.Met), Plan(instead, Truth.NotMet)])!.Value.High);
    }

    [Fact]
    public void One_measuring_of_urine_does_for_both_legs_and_one_dressing_does_not()
    {
        var urine = Task("release-urine", "PT1H") with { DoneBy = [Kind.UrineMeasured] };
        var wound = Task("wound", "PT1H");
        Assert.Equal(
            1,
            TaskUses.PerHour(ShippedRules.Book.Kit.Named("gloves")!, [Plan(urine, Truth.Met), Plan(urine, Truth.Met)])!.Value.High
        );
        Assert.Equal(
            2,
            TaskUses.PerHour(ShippedRules.Book.Kit.Named("plain-dressing")!, [Plan(wound, Truth.Met), Plan(wound, Truth.Met)])!.Value.High
        );
    }

    [Fact]
    public void A_task_worded_otherwise_for_another_limb_is_the_same_task()
    {
        var wound = Task("wound", "PT1H");
        Assert.Equal(
            2,
            TaskUses
                .PerHour(
                    ShippedRules.Book.Kit.Named("plain-dressing")!,
                    [Plan(wound, Truth.Met), Plan(wound with { Text = "Look." }, Truth.Met)]
                )!
                .Value.High
        );
    }

    [Fact]
    public void A_task_that_is_ticked_off_is_taken_off_the_stock()
    {
        var ticked = Case.Well.And("00:30", new Payload.SuppliesStated("plain-dressing", 5)).And("00:05", new Payload.TaskDone("wound"));
        Assert.Equal(new Between(4, 5), Left("plain-dressing", ticked));
        var other = Case.Well.And("00:30", new Payload.SuppliesStated("plain-dressing", 5)).And("00:05", new Payload.TaskDone("woundless"));
        Assert.Equal(Between.Exactly(5), Left("plain-dressing", other));
        var onLimb = Case
            .Well.And("00:02", new Payload.SuppliesStated("gloves", 5))
            .And("00:01", new Payload.TaskDone("release-urine.left-leg"));
        Assert.Equal(new Between(4, 5), Left("gloves", onLimb));
    }

    [Fact]
    public void What_is_offered_to_drink_is_part_of_the_need_and_not_added()
    {
        // JTS nursing guideline: 2.1 to 3.0 L a day at rest for each of two; a mug of 250 mL every two hours is those 3.0 L.
        var water = Planned("water-ml", Case.Well)!.Value;
        Assert.Equal((2 * 2100 / 24.0, 2 * 3000 / 24.0), (Math.Round(water.Low, 6), Math.Round(water.High, 6)));
    }

    [Fact]
    public void Where_nothing_may_be_drunk_no_one_knows_how_long_sachets_last()
    {
        var drowsy = Case
            .Well.Signs(s => s with { Mental = Mental.Voice })
            .And("00:30", new Payload.SuppliesStated("rehydration-sachet", 3));
        var outlook = SupplyOutlook
            .Of(drowsy.Record, ShippedRules.Book, Two, Case.Now)
            .Items.Single(i => i.Item.Id == "rehydration-sachet");
        Assert.Equal((null, Truth.Unknown), (outlook.RunsOut, outlook.Short));
    }

    [Fact]
    public void What_is_not_asked_for_yet_is_not_due()
    {
        var plan = Case.Well.Judgement;
        Assert.Contains(plan.Plan, p => p is { Later: true, Task.Id: "wound" });
        Assert.DoesNotContain(plan.Due, d => d.Task == "wound");
        Assert.DoesNotContain(plan.Withheld, w => w.Name == "food"); // asked for from six hours on
    }

    [Theory]
    [InlineData("""{"kind":"task.done","each":[0,1]}""")]
    [InlineData("""{"kind":"fluid.given","each":[0,1]}""")]
    [InlineData("""{"kind":"drug.given","pieceMg":500}""")]
    public void A_use_that_names_nothing_is_refused(string use)
    {
        var file = $$$"""
            {"kit":"x","version":"1","title":"X","sources":{"design":{"title":"D","known":"design"}},"items":[
             {"id":"a","name":"a","unit":"piece","step":1,"uses":[{{{use}}}],"sources":["design"]}]}
            """;
        var refused = Assert.IsType<Read<KitList>.Refused>(KitReader.Read(Encoding.UTF8.GetBytes(file), "x.json"));
        Assert.Contains(refused.Refusals, r => r.Line == 2 && r.Reason.EndsWith("says of what", StringComparison.Ordinal));
    }

    private static CareTask Task(string id, string every) => new(id, TaskScope.Limb, id, IsoSpan.Read(every), null, null, [], ["design"]);

    private static PlannedTask Plan(CareTask task, Truth applies) => new(task, null, task.Id, Case.Now, applies, [], [], task.Every, false);

    private static Between? Planned(string item, Case of, Protocol? protocol = null) =>
        SupplyOutlook
            .Of(of.Record, ShippedRules.Book.By(protocol ?? ShippedProtocol.Protocol), Two, Case.Now)
            .Items.Single(i => i.Item.Id == item)
            .Rate.Planned;

    private static Between? Left(string item, Case of) => Stock.Of(ShippedRules.Book.Kit.Named(item)!, of.Record, Case.Now).Left;
}
