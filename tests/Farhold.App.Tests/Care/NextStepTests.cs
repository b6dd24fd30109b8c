using Farhold.App.Care;

namespace Farhold.App.Tests.Care;

public class NextStepTests : CareTest
{
    [Fact]
    public async Task Everything_a_verdict_may_ask_to_look_at_leads_somewhere()
    {
        await TightAsync();
        var next = new NextStep(Desk.Record!, Desk.Picture!, Texts);
        Assert.All(Input.All, i => Assert.True(next.OfInput(i) is { Goes: not null } or { Opens: not null }, i.Name));
        Assert.Equal(Quick.Bleeding, next.OfInput(Input.Bleeding).Opens);
        Assert.Equal("signs/take/skin", next.OfInput(Input.Pale).Goes);
        Assert.Equal("amend/7k3f-1", next.OfInput(Input.AgeYears).Goes);
    }

    [Theory]
    [InlineData(null, null, 250.0)]
    [InlineData(34.0, 68.0, 250.0)]
    [InlineData(7.0, 25.0, 130.0)] // 65 mL/h by the 4-2-1 rule (from memory), for two hours
    [InlineData(7.0, null, null)] // entered by hand
    public async Task One_tap_logs_the_drink_that_was_offered(double? age, double? mass, double? millilitres)
    {
        await StartAsync();
        Time.Advance(TimeSpan.FromMinutes(1));
        await LogAsync(0, new Payload.CasualtyOpened("Eir", AgeYears: age, MassKg: mass));
        var due = new DueTask(Now, "drink", null, "", [], true) { Every = Duration.FromHours(2) };
        var step = new NextStep(Desk.Record!, Desk.Picture!, Texts).OfDue(due);
        Assert.Equal(millilitres, (step.Logs as Payload.FluidGiven)?.Millilitres);
        Assert.Equal(millilitres is null, step.Goes is not null);
    }

    [Fact]
    public async Task An_attempt_under_way_is_gone_on_with_before_what_is_overdue()
    {
        await TightAsync(100);
        Assert.Contains(Desk.Picture!.Due, d => d.Overdue);
        await LogAsync(5, new Payload.AttemptStarted("w1", "t1"));
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task What_is_overdue_does_not_stand_before_an_attempt_that_is_possible_now()
    {
        await ReadyAsync(Well);
        Assert.Contains(Desk.Picture!.Due, d => d is { Task: "pulse-beyond.left-leg", Overdue: true });
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }

    [Fact]
    public async Task A_verdict_to_attempt_leads_to_the_attempt()
    {
        await ReadyAsync(Well with { DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Absent) });
        Assert.Equal("attempt/left-leg", new NextStep(Desk.Record!, Desk.Picture!, Texts).First()?.Goes);
    }
}
