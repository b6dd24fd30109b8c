using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Attempts;

public class SpokenCuesTests : LimbTest
{
    [Fact]
    public async Task Every_step_says_itself_in_its_brief_words_and_the_minutes_left_while_hands_press()
    {
        Alerts.Spoken = [];
        await ReadyAsync();
        await AtStepAsync(StepId.Pack);
        var screen = AttemptShown();
        Button(screen, Texts.PackedWith("haemostatic gauze")).Click();
        for (var second = 0; second < 180; second++)
            Pass(1 / 60.0);
        Button(screen, Texts.Dressed).Click();
        Assert.Equal(
            [Brief(StepId.Pack), Brief(StepId.Hold), Texts.SayPress(2), Texts.SayPress(1), Brief(StepId.Dress)],
            Alerts.Spoken.Take(5)
        );
    }

    [Fact]
    public async Task Bleeding_again_is_said_and_a_step_is_said_again_when_asked()
    {
        Alerts.Spoken = [];
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        var screen = AttemptShown();
        Button(screen, Texts.SayAgain).Click();
        Button(screen, Texts.BleedingAgainNow).Click();
        Assert.Equal([Brief(StepId.Hold), Brief(StepId.Hold), Texts.SayTighten], Alerts.Spoken);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task With_voice_or_sound_off_nothing_is_said(bool voice)
    {
        Alerts.Spoken = [];
        var signals = Services.GetRequiredService<AlertSignals>();
        (signals.Voice, signals.Sound) = (!voice, voice);
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        Assert.False(HasButton(AttemptShown(), Texts.SayAgain));
        Assert.Empty(Alerts.Spoken);
    }

    [Fact]
    public async Task One_reads_out_what_the_other_does()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Pack);
        var screen = AttemptShown();
        Button(screen, Texts.Script).Click();
        var script = screen.Find(".script").TextContent;
        Assert.Contains("Put a second tourniquet loosely above the first, ready to tighten.", script, StringComparison.Ordinal);
        Assert.Contains(Texts.ScriptAskPack, script, StringComparison.Ordinal);
        Assert.Contains(Texts.ScriptNext(Brief(StepId.Hold)), script, StringComparison.Ordinal);
        Button(screen, Texts.PackedWith("cloth")).Click();
        Assert.Contains(Texts.ScriptAskHold, screen.Find(".script").TextContent, StringComparison.Ordinal);
        Button(screen, Texts.ScriptEnd).Click();
        Assert.Empty(screen.FindAll(".script"));
    }

    /// <summary>Design: eight words at most are taken in by somebody who works, 66 characters are three lines on a phone.</summary>
    [Fact]
    public void What_is_said_of_a_step_is_short()
    {
        foreach (var step in Desk.Protocol.Steps)
        {
            var brief = Assert.IsType<string>(step.Brief);
            Assert.InRange(brief.Split(' ').Length, 2, 8);
            Assert.InRange(brief.Length, 10, AttemptStep.BriefLength);
        }
    }

    private string Brief(StepId id) => Desk.Protocol.Steps.Single(s => s.Id == id).Brief!;
}
