using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Shell;

public class HeadTests : CareTest
{
    [Fact]
    public async Task The_mark_counts_entries_that_are_nowhere_else_until_they_are_exported()
    {
        await StartAsync();
        var mark = Render<StatusMark>();
        Assert.Equal("Phone. " + Texts.OnlyHere(1), mark.Find("button").GetAttribute("aria-label"));
        await LogAsync(0, new Payload.NoteWritten("pale"));
        mark.WaitForAssertion(() => Assert.Equal("2", mark.Find("button").GetAttribute("data-count")));
        await Session.ExportAsync();
        mark.WaitForAssertion(() => Assert.Equal("Phone. " + Texts.AllCopied, mark.Find("button").GetAttribute("aria-label")));
        Assert.False(mark.Find("button").HasAttribute("data-count"));
    }

    [Fact]
    public async Task What_is_not_stored_turns_the_mark_into_an_alarm()
    {
        await StartAsync();
        var mark = Render<StatusMark>();
        Store.Full = true;
        await Session.AppendAsync(Session.Open!, new Payload.NoteWritten("Must not get lost"));
        mark.WaitForAssertion(() =>
            Assert.Contains("NOT SAFELY STORED", mark.Find("button.alarm").GetAttribute("aria-label")!, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_mark_unfolds_what_the_phone_has_to_say_and_another_place_folds_it()
    {
        await TightAsync();
        var head = Render<Head>();
        Assert.Empty(head.FindAll(".status-panel"));
        head.Find(".mark").Click();
        var panel = Text(head.Find(".status-panel"));
        Assert.Contains("Phone clock 14:00", panel, StringComparison.Ordinal);
        Assert.Contains(Texts.OnlyHere(Session.NotCopied), panel, StringComparison.Ordinal);
        Store.OpenElsewhere(Casualty);
        head.WaitForAssertion(() =>
            Assert.Contains("Also open in another tab", head.Find(".status-panel").TextContent, StringComparison.Ordinal)
        );
        Services.GetRequiredService<Microsoft.AspNetCore.Components.NavigationManager>().NavigateTo(Places.Log.Of(Casualty));
        head.WaitForAssertion(() => Assert.Empty(head.FindAll(".status-panel")));
    }

    /// <summary>Two limbs, one known only as a range: the one that may have gone longest, by its longest.</summary>
    [Fact]
    public async Task The_worst_limb_stands_in_the_head_by_the_worse_side_of_its_clock()
    {
        await TightAsync(40);
        var head = Render<HeadLimb>();
        Assert.Equal("LEFT leg 40 min", Text(head.Find("p")));
        await Logbook.WriteAsync(
            Session.Open!,
            new Payload.TourniquetTightened("t2", Limb.RightArm),
            new Happened(Now - Duration.FromMinutes(62), Now - Duration.FromMinutes(20))
        );
        head.WaitForAssertion(() => Assert.Equal("RIGHT arm 1 h 02", Text(head.Find("p"))));
        Time.Advance(TimeSpan.FromMinutes(1));
        head.WaitForAssertion(() => Assert.Equal("RIGHT arm 1 h 03", Text(head.Find("p"))));
    }

    [Fact]
    public async Task A_limb_that_is_only_watched_is_said_to_be_loose()
    {
        await TightAsync();
        await LogAsync(0, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(12, new Payload.TourniquetSlackened("t1"));
        Assert.Equal("LEFT leg loose 12 min", Text(Render<HeadLimb>().Find("p")));
    }
}
