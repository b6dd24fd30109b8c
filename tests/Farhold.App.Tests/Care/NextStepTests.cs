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
    public async Task An_attempt_under_way_asks_for_its_next_step()
    {
        await TightAsync();
        await LogAsync(5, new Payload.AttemptStarted("w1", "t1"));
        Assert.Equal(Quick.Packed, Next()?.Opens);
        await LogAsync(4, new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        Assert.Equal(Quick.Held, Next()?.Opens);
        await LogAsync(1, new Payload.PressureHeld("w1", 3));
        Assert.Equal(Quick.Dressed, Next()?.Opens);
        await LogAsync(0, new Payload.DressingApplied("w1", DressingKind.Pressure));
        Assert.Equal(new Payload.TourniquetSlackened("t1"), Next()?.Logs);
    }

    private Step? Next() => new NextStep(Desk.Record!, Desk.Picture!, Texts).First();
}
