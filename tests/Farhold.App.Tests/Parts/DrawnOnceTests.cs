namespace Farhold.App.Tests.Parts;

/// <summary>On the phone drawing is what a tap waits for.</summary>
public class DrawnOnceTests : CareTest
{
    [Fact]
    public async Task An_entry_draws_the_verdict_once_and_nothing_that_stays_as_it_is()
    {
        await ReadyAsync(Well);
        var frame = Show<NowScreen>();
        var card = frame.FindComponent<LimbBlock>();
        var times = frame.FindComponent<LimbNext>();
        var cautions = frame.FindComponent<CautionSection>();
        var clock = frame.FindComponent<LimbTime>();
        await LogAsync(0, new Payload.BleedingChecked("w1", Bleeding.Oozing));
        Assert.Equal(3, card.RenderCount); // when it was first drawn, then itself and the answer in it
        Assert.Equal((1, 1, 1), (clock.RenderCount, times.RenderCount, cautions.RenderCount));
    }

    [Fact]
    public async Task A_new_remark_is_among_the_cautions_at_once()
    {
        await ReadyAsync(Well);
        var frame = Show<NowScreen>();
        await LogAsync(0, new Payload.TourniquetSlackened("t9"));
        Assert.Contains("t9 was never tightened", frame.FindComponent<CautionSection>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_choice_is_not_drawn_again_while_its_answer_is_written()
    {
        await ReadyAsync(Well);
        var frame = Show<NowScreen>();
        Tap(frame, "Bleeding now?");
        var choice = frame.FindComponent<QuickChooser>();
        var drawn = choice.RenderCount;
        Tap(frame, "None");
        frame.WaitForAssertion(() => Assert.Empty(frame.FindAll("[role=dialog]")));
        Assert.Equal(drawn, choice.RenderCount);
    }
}
