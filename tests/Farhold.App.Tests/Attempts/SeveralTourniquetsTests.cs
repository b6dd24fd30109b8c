using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Attempts;

/// <summary>Two tourniquets side by side on the limb: what is said of one is said of that one alone.</summary>
public class SeveralTourniquetsTests : LimbTest
{
    [Theory]
    [InlineData("t1", "t2")]
    [InlineData("t2", "t1")]
    public async Task Each_is_logged_as_loose_by_itself_and_the_other_is_called_still_tight(string first, string last)
    {
        await SlackeningAsync();
        Loosen(first);
        Assert.Equal([first], Slackened);
        var limb = Assert.Single(Care.Picture!.Limbs);
        Assert.Equal((Truth.Met, last), (limb.Clock.Tight, Assert.Single(limb.Clock.Tourniquets)));
        var screen = AttemptShown();
        Assert.Contains("One is still tight: " + last, screen.Find("main [role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains(Texts.StepOf(4, 5), screen.Markup, StringComparison.Ordinal);

        Pass(2);
        Loosen(last);
        Assert.Equal([first, last], Slackened);
        Assert.Single(Care.Picture!.Observed);
        Assert.Equal("15:00", Timer(AttemptShown()));
    }

    [Fact]
    public async Task Before_either_is_loose_it_says_how_many_there_are()
    {
        await SlackeningAsync();
        Assert.Contains(Texts.SlackenSeveralReached(2), AttemptShown().Markup, StringComparison.Ordinal);
        Assert.False(HasButton(AttemptShown(), Texts.SlackenLog));
    }

    [Fact]
    public async Task Wherever_one_of_two_is_logged_as_loose_the_message_says_that_one_is_still_tight()
    {
        await SlackeningAsync();
        await Services.GetRequiredService<Logbook>().LogAsync(new Payload.TourniquetSlackened("t1"));
        Assert.StartsWith("One is still tight: t2. Logged: ", Toasts.Shown!.Text, StringComparison.Ordinal);
        await Services.GetRequiredService<Logbook>().LogAsync(new Payload.TourniquetSlackened("t2"));
        Assert.DoesNotContain("still tight", Toasts.Shown!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Abandoned_with_both_loose_each_is_asked_for()
    {
        await SlackeningAsync();
        await TellAsync(new Payload.TourniquetSlackened("t1"));
        await TellAsync(new Payload.TourniquetSlackened("t2"));
        Pass(1);
        var screen = AttemptShown();
        Button(screen, Texts.Abandon).Click();
        Assert.Equal(2, screen.FindAll("fieldset").Count(f => f.TextContent.Contains(Texts.AbandonTightAgain, StringComparison.Ordinal)));
        screen.FindAll("input[type=radio]")[0].Change("on");
        Button(screen, Texts.AbandonYes).Click();
        Assert.Equal(0, Count<Payload.AttemptEnded>());
        screen.FindAll("input[type=radio]")[3].Change("on");
        Button(screen, Texts.AbandonYes).Click();
        Assert.Equal("t1", Assert.Single(Assert.Single(Care.Picture!.Limbs).Clock.Tourniquets));
        Assert.Equal(AttemptOutcome.Abandoned, Last<Payload.AttemptEnded>().Outcome);
    }

    private string[] Slackened =>
        [.. Care.Record!.Entries.Select(e => e.Payload).OfType<Payload.TourniquetSlackened>().Select(s => s.Tourniquet)];

    private async Task SlackeningAsync()
    {
        await ReadyAsync();
        await TellAsync(1, new Payload.TourniquetTightened("t2", Limb.LeftLeg, Wound: "w1"));
        await AtStepAsync(StepId.Slacken);
        await TellAsync(new Payload.BleedingChecked("w1", Bleeding.None));
        Pass(1.1);
    }

    private void Loosen(string tourniquet) =>
        AttemptShown().FindAll("main button.act").Single(b => b.TextContent.Contains(tourniquet, StringComparison.Ordinal)).Click();
}
