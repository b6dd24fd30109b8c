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
