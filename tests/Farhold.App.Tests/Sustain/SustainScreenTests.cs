using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Sustain;

public class SustainScreenTests : CareTest
{
    private ShiftParty Party => Services.GetRequiredService<ShiftParty>();

    [Fact]
    public async Task What_is_due_is_ticked_with_one_tap_and_taken_back_with_another()
    {
        await OldAsync();
        var screen = Show<SustainScreen>();
        var before = Desk.Picture!.Due.Count(d => d.At <= Now);
        Tap(screen, Desk.Picture!.Due.Single(d => d.Task == "warmth") is var warmth ? $"Done: {warmth.Text}" : "");
        Assert.Equal("warmth", Last<Payload.TaskDone>().Task);
        Assert.Equal(before - 1, Desk.Picture!.Due.Count(d => d.At <= Now));
        await Toasts.UndoAsync();
        Assert.Equal(before, Desk.Picture!.Due.Count(d => d.At <= Now));
    }

    [Fact]
    public async Task A_task_opens_to_its_reason_and_its_source()
    {
        await OldAsync();
        var item = Show<SustainScreen>()
            .FindAll("li.due")
            .Single(l => Text(l).Contains("Insulate from the ground", StringComparison.Ordinal));
        var why = Text(item.QuerySelector("details")!);
        Assert.Contains("Cold blood does not clot,", why, StringComparison.Ordinal);
        Assert.Contains("hypothermia, 24 January 2021", why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mug_drunk_is_logged_as_fluid()
    {
        await OldAsync();
        foreach (var prompt in Desk.Picture!.Due.Where(d => d.Group == TaskGroup.Treat))
            await LogAsync(0, new Payload.TaskDone(prompt.Task));
        var screen = Show<SustainScreen>();
        screen.FindAll("button").First(b => Text(b) == "Drank 250 ml").Click();
        Assert.Equal((Fluid.OralWater, 250), (Last<Payload.FluidGiven>().Fluid, Last<Payload.FluidGiven>().Millilitres));
    }

    [Fact]
    public async Task Air_and_wind_that_were_stated_say_how_cold_it_feels()
    {
        await OldAsync();
        Assert.Contains("Nobody has stated air and wind", Text(Exposed()), StringComparison.Ordinal);
        await LogAsync(0, new Payload.WeatherStated(-25, 30));
        Assert.Contains("Feels like -39 °C on bare skin.", Text(Exposed()), StringComparison.Ordinal);
        Services.GetRequiredService<Preferences>().Temperature = TemperatureUnit.Fahrenheit;
        Assert.Contains("Feels like -38 °F on bare skin.", Text(Exposed()), StringComparison.Ordinal);
        Assert.Contains("out of the wind", Text(Exposed()), StringComparison.Ordinal);

        AngleSharp.Dom.IElement Exposed() => Show<SustainScreen>().Find("[aria-labelledby=exposure-title]");
    }

    [Fact]
    public async Task What_must_not_be_done_is_said_where_the_tasks_are()
    {
        await OldAsync(Well with { Mental = Mental.Voice });
        var screen = Show<SustainScreen>();
        Assert.Contains(screen.FindAll(".notice.danger"), n => Text(n).StartsWith("Not now: Nothing by mouth", StringComparison.Ordinal));
        Assert.DoesNotContain(screen.FindAll("button"), b => Text(b) == "Drank 250 ml");
    }

    [Fact]
    public async Task A_warning_sign_says_what_to_do_and_what_can_not_be_told_where_to_look()
    {
        await OldAsync(Well with { TemperatureC = 38.7, HeartRate = 108 });
        await LogAsync(0, new Payload.CasualtyOpened("Tor", AgeYears: 34));
        var screen = Show<SustainScreen>();
        var signs = screen.Find("section[aria-labelledby=warning-signs-title]");
        // before all else
        Assert.Equal("warning-signs-title", screen.FindAll("section[aria-labelledby]")[0].GetAttribute("aria-labelledby"));
        Assert.Contains("Infection, or sepsis.", Text(signs), StringComparison.Ordinal);
        Assert.Contains("Look at every wound", Text(signs), StringComparison.Ordinal);
        Assert.Contains("of 1,000 days", Text(signs), StringComparison.Ordinal);
        Assert.NotEmpty(screen.FindAll("section[aria-label^='To know more'] ol.checks button"));
    }

    [Fact]
    public async Task A_party_is_named_once_and_shares_the_watches_and_the_sleep()
    {
        await OldAsync();
        var screen = Show<SustainScreen>();
        Join(screen, "Ane");
        Join(screen, "Jon");
        Join(screen, "Jon");
        Assert.Equal(["Ane", "Jon"], Party.Members);
        Assert.Contains("Ane has the watch until", Text(screen.Find("section[aria-labelledby=watches-title]")), StringComparison.Ordinal);
        Assert.Equal(["Ane", "Jon"], new ShiftParty(Phone, new(Phone, Clock, Preferences)).Members);
        Tap(screen, "Take out: Jon");
        Assert.Equal(["Ane"], Party.Members);
    }

    [Fact]
    public async Task A_long_tourniquet_brings_the_panel_of_its_release_and_a_short_one_does_not()
    {
        await TightAsync(minutesAgo: 200);
        Assert.Contains(Show<SustainScreen>().FindAll("h2"), h => Text(h) == "Before a release, left leg");
        await LogAsync(10, new Payload.TourniquetSlackened("t1"));
        var after = Show<SustainScreen>();
        Assert.Contains(after.FindAll("h2"), h => Text(h) == "After the release, left leg");
        Assert.Contains("Without blood for 3 h 10 min", Text(after.Find(".card")), StringComparison.Ordinal);
    }

    /// <summary>Half a day in, tourniquet loosened after half an hour, nothing of the care ticked.</summary>
    private async Task OldAsync(Payload.SignsTaken? signs = null)
    {
        await TightAsync(minutesAgo: 730);
        await LogAsync(700, new Payload.TourniquetSlackened("t1"));
        await OpenedAsync(minutesAgo: 729);
        await LogAsync(1, signs ?? Well);
        await LogAsync(1, new Payload.CasualtyLookedOver(false, false, false, false, false));
        await LogAsync(1, new Payload.BleedingChecked("w1", Bleeding.None));
        await HelpInAsync(30 * 60);
    }

    private static void Join(IRenderedComponent<Frame> screen, string name)
    {
        screen.Find("form input").Input(name);
        screen.Find("form").Submit();
    }
}
