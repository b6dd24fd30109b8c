using System.Text;
using Bunit;
using Farhold.App.Rehearse;
using Farhold.Exchange.Qr;
using Farhold.Rehearsal.Scenarios;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Rehearse;

/// <summary>An instructor writes a scenario on the phone, tries it, keeps it and hands it on.</summary>
public class OwnScenarioTests : ScreenTest
{
    private OwnScenarios Own => Services.GetRequiredService<OwnScenarios>();

    [Fact]
    public void A_new_one_is_usable_and_kept_apart_from_those_that_ship()
    {
        var screen = Render<OwnScenarioScreen>();
        Assert.Contains(Texts.OwnUsable, screen.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Type(screen, Texts.OwnTitle, "By the weir");
        Button(screen, Texts.OwnKeep).Click();
        var list = Render<RehearseScreen>();
        var row = Assert.Single(list.FindAll(".own-scenarios a.row-link"));
        Assert.Equal("rehearse/our-first", row.GetAttribute("href"));
        Assert.Contains("By the weir", row.TextContent, StringComparison.Ordinal);
        Assert.Contains(Texts.OwnScenarioMark, list.Markup, StringComparison.Ordinal);
        Assert.Equal(10, list.FindAll("a.row-link").Count);
        Assert.DoesNotContain(
            Texts.OwnScenarioMark,
            Render<StartRehearsalScreen>(p => p.Add(s => s.Id, "child")).Markup,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_is_wrong_stands_beneath_with_line_and_column_and_nothing_can_be_kept()
    {
        var screen = Render<OwnScenarioScreen>();
        var text = screen.Find("textarea[spellcheck]").GetAttribute("value")!;
        var broken = text.Replace("\"massKg\": 70", "\"massKg\": 7", StringComparison.Ordinal);
        screen.Find("textarea[spellcheck]").Input(broken);
        var line = broken[..broken.IndexOf("\"massKg\"", StringComparison.Ordinal)].Count(c => c == '\n') + 1;
        var refusal = ((Read<Scenario>.Refused)ScenarioReader.Read(Encoding.UTF8.GetBytes(broken), "")).Refusals.Single();
        Assert.Equal(line, refusal.Line);
        Assert.Equal(
            Texts.RefusalLine(refusal.Line, refusal.Column, refusal.Reason),
            Assert.Single(screen.FindAll("[role=alert] li")).TextContent
        );
        foreach (var name in (string[])[Texts.OwnTry, Texts.OwnKeep, Texts.OwnSave, Texts.OwnShow])
            Assert.True(Button(screen, name).HasAttribute("disabled"));
        screen.Find("textarea[spellcheck]").Input("{");
        Assert.NotEmpty(screen.FindAll("[role=alert] li"));
        screen.Find("textarea[spellcheck]").Input(text);
        Assert.Empty(screen.FindAll("[role=alert]"));
        Assert.False(Button(screen, Texts.OwnKeep).HasAttribute("disabled"));
    }

    [Fact]
    public void The_form_writes_into_the_text()
    {
        var screen = Render<OwnScenarioScreen>();
        Type(screen, Texts.OwnStart, "2032-02-02T08:00:00Z");
        Button(screen, Texts.StepMore(Texts.OwnAge)).Click();
        Button(screen, Texts.StepMore(Texts.OwnTied)).Click();
        Button(screen, Texts.StepLess(Texts.OwnHelp)).Click();
        Choose(screen, Texts.OwnPlace, Texts.Word(Limb.RightArm));
        Choose(screen, Texts.OwnDifficulty, Texts.OwnCruel);
        Button(screen, Texts.OwnKeep).Click();
        var scenario = Kept();
        Assert.Equal((Instant.FromUtc(2032, 2, 2, 8, 0), 31), (scenario.Start, scenario.Casualty.AgeYears));
        Assert.Equal((-25 * 60.0, 7.5 * 3_600), (scenario.Before[0].At, scenario.Help!.Likely));
        Assert.Equal((Limb.RightArm, 0.95), (scenario.Wounds[0].Limb, scenario.Wounds[0].Difficulty));
    }

    [Fact]
    public void One_that_ships_is_begun_with_under_another_name_and_its_own_name_is_refused()
    {
        var screen = Render<OwnScenarioScreen>(p => p.Add(s => s.Id, "child"));
        Button(screen, Texts.OwnTry).Click();
        Assert.EndsWith("/rehearse/our-child", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        Assert.Equal(ShippedScenarios.All.Single(s => s.Id == "child").Briefing, Kept().Briefing);
        screen.Find("textarea[spellcheck]").Input(ShippedScenarios.TextOf("child")!);
        Assert.Contains("is the name of a scenario that ships", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void One_of_ones_own_is_rehearsed_by_its_own_text()
    {
        Render<OwnScenarioScreen>().FindAll("button").Single(b => b.TextContent == Texts.OwnKeep).Click();
        var start = Render<Farhold.App.Shell.Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<StartRehearsalScreen>(0);
                    b.AddComponentParameter(1, nameof(StartRehearsalScreen.Id), "our-first");
                    b.CloseComponent();
                }
            )
        );
        Assert.Contains(Texts.OwnScenarioMark, start.Markup, StringComparison.Ordinal);
        start.FindAll("button.act").Single(b => b.TextContent == Texts.RehearseStart).Click();
        var run = KeptRun.Read(Practice.Run)!;
        Assert.Equal(("our-first", Own.Files["our-first"]), (run.Scenario, run.File));
    }

    [Fact]
    public async Task It_goes_to_another_phone_as_codes_and_as_a_file()
    {
        var screen = Render<OwnScenarioScreen>();
        Type(screen, Texts.OwnBriefing, "Über dem Fjord.");
        var text = screen.Find("textarea[spellcheck]").GetAttribute("value")!;
        Button(screen, Texts.OwnSave).Click();
        Assert.Equal(("PRACTICE-our-first.scenario.json", text), (Alerts.Saved[0].Name, Alerts.Saved[0].Text));
        Button(screen, Texts.OwnShow).Click();
        var sender = new FrameSender(Pack.OfText(Encoding.UTF8.GetBytes(text)));
        Assert.Equal(QrPicture.Of(sender[0].Text()).Path(), screen.Find("path.code-dark").GetAttribute("d"));

        var other = Render<OwnScenarioScreen>();
        await Button(other, Texts.TakeCamera).ClickAsync(new());
        for (var i = 0; i <= sender.Blocks && HandOver.Scanning; i++)
            await other.InvokeAsync(() => HandOver.See(sender[i].Text()));
        other.WaitForAssertion(() => Assert.Equal(text, other.Find("textarea[spellcheck]").GetAttribute("value")));
        Assert.Equal("Über dem Fjord.", other.FindAll("textarea")[0].GetAttribute("value"));
    }

    [Fact]
    public void What_is_kept_can_be_opened_again_and_removed()
    {
        Button(Render<OwnScenarioScreen>(), Texts.OwnKeep).Click();
        var again = Render<OwnScenarioScreen>(p => p.Add(s => s.Id, "our-first"));
        Button(again, Texts.OwnRemove).Click();
        Button(again, Texts.OwnRemoveYes).Click();
        Assert.Empty(Own.All);
        Assert.Empty(Render<RehearseScreen>().FindAll(".own-scenarios"));
    }

    private Scenario Kept() =>
        ((Read<Scenario>.Usable)ScenarioReader.Read(Encoding.UTF8.GetBytes(Assert.Single(Own.All).File), "own")).Value;

    private static void Type(IRenderedComponent<OwnScenarioScreen> screen, string field, string text) =>
        screen.FindAll("label.field").Single(l => l.TextContent.Trim() == field).QuerySelector("input, textarea")!.Input(text);

    private static void Choose(IRenderedComponent<OwnScenarioScreen> screen, string field, string option) =>
        screen
            .FindAll("fieldset")
            .Single(f => f.QuerySelector("legend")!.TextContent == field)
            .QuerySelectorAll("label.choice")
            .Single(l => l.TextContent.Trim() == option)
            .QuerySelector("input")!
            .Change(true);
}
