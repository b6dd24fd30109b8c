using Farhold.App.Board;
using Farhold.App.Tests.Doubles;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Board;

public sealed class BoardScreenTests : ScreenTest
{
    private const string Tied =
        """{"id":"one","alias":"Runa","practice":false,"ended":false,"entries":4,"heard":"2031-05-04T01:59:00Z","written":"2031-05-04T01:58:00Z","missing":0,"doubts":0,"shock":"unknown","limbs":[{"limb":"left-leg","verdict":"check-first","tight":"met","from":"2031-05-04T01:20:00Z","to":"2031-05-04T01:20:00Z"}],"due":[{"text":"Take signs","at":"2031-05-04T02:10:00Z"}]}""";

    private const string Bleeding =
        """{"id":"two","alias":"Ragn","practice":false,"ended":false,"entries":9,"heard":"2031-05-04T01:30:00Z","missing":10,"doubts":1,"shock":"not-met","limbs":[{"limb":"right-arm","verdict":"leave-on","tight":"met","from":"2031-05-04T01:40:00Z","to":"2031-05-04T01:45:00Z"}],"due":[{"text":"Tighten at once","at":"2031-05-04T01:59:00Z","atOnce":true}],"position":{"lat":61.1,"lon":7.1,"at":"2031-05-04T01:30:00Z"}}""";

    private const string Asks =
        """{"id":"three","alias":"Odd","practice":false,"ended":false,"entries":9,"missing":-1,"doubts":1,"shock":"not-met","limbs":[],"due":[],"question":{"entry":"a-3","to":"doctor","text":"May we try?","by":"Tor","at":"2031-05-04T01:50:00Z","taken":"Dr Vann","takenAt":"2031-05-04T01:55:00Z"},"position":{"lat":61.2,"lon":7.3,"at":"2031-05-04T01:30:00Z"}}""";

    private readonly SmallHub hub = new() { Role = "coordinator" };

    [Fact]
    public async Task The_worst_is_first_and_each_says_how_far_it_can_be_relied_on()
    {
        var shown = await ShowAsync();
        foreach (var row in new[] { Tied, Asks, Bleeding })
            HubLine.Listener!("standing", row);
        HubLine.Listener!("all", "\"\"");
        Assert.Equal(["Ragn", "Odd", "Runa"], shown.FindAll(".board-who > b").Select(b => b.TextContent));
        var rows = shown
            .FindAll(".board-row")
            .Select(r => string.Join(' ', r.TextContent.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)))
            .ToArray();
        Assert.Contains("Tighten at once", rows[0], StringComparison.Ordinal);
        Assert.Contains("10 entries are known to be missing", rows[0], StringComparison.Ordinal);
        Assert.Contains("or more", rows[0], StringComparison.Ordinal);
        Assert.Contains("Heard 30 min ago", rows[0], StringComparison.Ordinal);
        Assert.Contains("Question: May we try?", rows[1], StringComparison.Ordinal);
        Assert.Contains("Dr Vann has been on it since", rows[1], StringComparison.Ordinal);
        Assert.Contains("Entries are known to be missing", rows[1], StringComparison.Ordinal);
        Assert.Contains("No phone has been heard", rows[1], StringComparison.Ordinal);
        Assert.Contains("LEFT leg: Check first", rows[2], StringComparison.Ordinal);
        Assert.DoesNotContain("or more", rows[2], StringComparison.Ordinal);
        Assert.Contains("svg", shown.Find(".board-sketch").InnerHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stream_that_is_still_is_said_to_be_old_and_what_the_hub_no_longer_tells_goes()
    {
        var shown = await ShowAsync();
        HubLine.Listener!("standing", Tied);
        HubLine.Listener!("all", "\"\"");
        Assert.StartsWith("Live", shown.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Time.Advance(TimeSpan.FromSeconds(70));
        shown.WaitForAssertion(() =>
            Assert.StartsWith("Not live. Last heard", shown.Find("[role=status]").TextContent, StringComparison.Ordinal)
        );
        var before = HubLine.Listener;
        before!("ended", "");
        Time.Advance(TimeSpan.FromSeconds(6));
        HubLine.Listener!("standing", Bleeding);
        HubLine.Listener!("all", "\"\"");
        shown.WaitForAssertion(() => Assert.Equal(["Ragn"], shown.FindAll(".board-who > b").Select(b => b.TextContent)));
    }

    [Fact]
    public void What_is_no_standing_is_not_shown() => Assert.Null(BoardRow.Read("{\"id\":1}"));

    private async Task<IRenderedComponent<BoardScreen>> ShowAsync()
    {
        Preferences.Carer = "Ane";
        HubLine.Answer = hub.Answer;
        var desk = Services.GetRequiredService<HubDesk>();
        await desk.StartAsync();
        await desk.JoinAsync("abcd", "Ane");
        var shown = Render<BoardScreen>();
        Assert.NotNull(HubLine.Listener);
        return shown;
    }
}
