using Farhold.App.Rehearse;

namespace Farhold.App.Tests.Rehearse;

public class RehearseScreenTests : ScreenTest
{
    [Fact]
    public void Every_scenario_is_offered_and_none_says_how_it_goes()
    {
        var screen = Render<RehearseScreen>();
        var offers = screen.FindAll("a.row-link").Select(a => a.TextContent).ToArray();
        Assert.Equal(9, offers.Length);
        Assert.All(offers, o => Assert.DoesNotMatch("(?i)bleeds|bled|holds|held|needless|never needed|too late|past six", o));
        Assert.Contains(Texts.RefresherNever, screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_model_it_says_so_and_can_be_asked_again()
    {
        Practice.HasModel = false;
        var screen = Render<RehearseScreen>();
        Assert.Contains(Texts.RehearseNoModel, screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Practice.HasModel = true;
        Button(screen, Texts.TryAgain).Click();
        Assert.Equal(9, screen.FindAll("a.row-link").Count);
    }

    [Fact]
    public async Task A_real_casualty_of_today_is_named_before_anything_begins()
    {
        await OpenCasualtyAsync("Tor");
        var screen = Render<StartRehearsalScreen>(p => p.Add(s => s.Id, "child"));
        Assert.Contains(Texts.RehearseRealOpen("Tor"), screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_start_keeps_scenario_and_seed()
    {
        Render<Farhold.App.Shell.Frame>(p =>
                p.Add(
                    f => f.Body,
                    b =>
                    {
                        b.OpenComponent<StartRehearsalScreen>(0);
                        b.AddComponentParameter(1, nameof(StartRehearsalScreen.Id), "child");
                        b.CloseComponent();
                    }
                )
            )
            .FindAll("button.act")
            .Single(b => b.TextContent == Texts.RehearseStart)
            .Click();
        var run = KeptRun.Read(Practice.Run);
        Assert.Equal(("child", false, 0d), (run!.Scenario, run.RunsOn, run.At));
        Assert.True(Practice.IsRehearsing);
    }

    [Fact]
    public void An_unknown_scenario_leads_back()
    {
        var screen = Render<StartRehearsalScreen>(p => p.Add(s => s.Id, "nowhere"));
        Assert.Equal("rehearse", screen.Find("a.button").GetAttribute("href"));
    }
}
