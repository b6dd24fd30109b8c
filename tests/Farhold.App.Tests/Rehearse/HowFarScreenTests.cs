using Farhold.App.Rehearse;
using Farhold.App.Shell;
using Farhold.Rehearsal.Trust;

namespace Farhold.App.Tests.Rehearse;

public class HowFarScreenTests : ScreenTest
{
    [Fact]
    public void Every_target_stands_in_a_table_and_those_outside_stand_open()
    {
        var screen = Render<HowFarScreen>();
        Assert.Equal(Texts.HowFarTitle, screen.Find("h1").TextContent);
        var tables = screen.FindAll("details");
        Assert.Equal([true, false, false], tables.Select(t => t.HasAttribute("open")));
        Assert.Equal(
            new[] { TargetFit.Outside, TargetFit.NotJudged, TargetFit.Met }.Select(f => Targets.That(f).Length),
            tables.Select(t => t.QuerySelectorAll("tbody tr").Length)
        );
        Assert.All(screen.FindAll("tbody tr"), r => Assert.Equal(3, r.Children.Length));
        Assert.Contains(Targets.That(TargetFit.Outside)[0].Found, tables[0].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_that_it_is_practice_and_proves_nothing_about_anybody()
    {
        var screen = Render<HowFarScreen>();
        Assert.Equal(Texts.Practice, screen.Find(".practice-word").TextContent);
        Assert.Contains(Texts.RehearseCaution, screen.Markup, StringComparison.Ordinal);
        Assert.Contains("proves nothing about a real casualty", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("No clinician has judged", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_model_it_says_so_and_can_be_asked_again()
    {
        Practice.HasModel = false;
        var screen = Render<HowFarScreen>();
        Assert.Contains(Texts.RehearseNoModel, screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains(Texts.RehearseCaution, screen.Markup, StringComparison.Ordinal);
        Practice.HasModel = true;
        Button(screen, Texts.TryAgain).Click();
        Assert.NotEmpty(screen.FindAll("tbody tr"));
    }

    [Fact]
    public void The_phone_is_checked_against_the_bits_of_the_model()
    {
        var screen = Render<HowFarScreen>();
        Button(screen, Texts.BitStart).Click();
        screen.WaitForAssertion(
            () => Assert.Equal(Texts.BitSame(8), screen.Find(".bit-check [role=status]").TextContent),
            TimeSpan.FromMinutes(2)
        );
        Assert.Equal(Texts.BitStart, screen.Find(".bit-check button").TextContent);
    }

    /// <summary>Every screen stands in the frame.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Every_screen_of_a_tab_that_rehearses_leads_to_it_and_no_real_one(bool rehearses)
    {
        Practice.IsRehearsing = rehearses;
        var frame = Render<Frame>(p => p.Add(f => f.Body, b => b.AddContent(0, "a screen")));
        Assert.Equal(rehearses ? 1 : 0, frame.FindAll("main a[href=how-far]").Count);
    }

    [Fact]
    public void The_scenarios_lead_to_it() => Assert.Single(Render<RehearseScreen>().FindAll("a[href=how-far]"));
}
