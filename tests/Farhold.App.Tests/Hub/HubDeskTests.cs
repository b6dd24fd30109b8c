using System.Text;
using Farhold.App.Hub;
using Farhold.App.Tests.Doubles;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Hub;

/// <summary>The phone's side of the hub, against one that speaks the real messages.</summary>
public sealed class HubDeskTests : ScreenTest
{
    private readonly SmallHub hub = new();

    public HubDeskTests() => HubLine.Answer = hub.Answer;

    private HubDesk Hub => Services.GetRequiredService<HubDesk>();

    [Fact]
    public async Task Without_a_hub_nothing_is_asked_and_nothing_is_said_of_one()
    {
        var id = await OpenCasualtyAsync();
        await Hub.StartAsync();
        await PassAsync(600);
        Assert.Empty(HubLine.Asked);
        Assert.Empty(HubWords.State(Hub, Session.Open!, Texts, Clock, Now));
        Assert.Equal(AtHub.Nothing, Hub.Of(id));
    }

    [Fact]
    public async Task What_is_logged_goes_to_the_hub_by_itself_and_only_what_it_holds_counts_as_there()
    {
        var id = await OpenCasualtyAsync();
        await Hub.StartAsync();
        Assert.Equal("", await Hub.JoinAsync("abcd", "Ane"));
        await PassAsync(3);
        Assert.Equal(Session.Lines.Length, hub.Lines.Count);
        Assert.Equal(0, Hub.Waiting(Session.Open!));
        Assert.StartsWith(
            "All of it is at the hub, up to",
            HubWords.State(Hub, Session.Open!, Texts, Clock, Now),
            StringComparison.Ordinal
        );

        hub.Refusal = FakeHubLine.Refused(503, "");
        await Logbook.LogAsync(new Payload.NoteWritten("one"));
        await Logbook.LogAsync(new Payload.NoteWritten("two"));
        Assert.Equal(2, Hub.Waiting(Session.Open!));
        Assert.Contains("2 entries wait", HubWords.State(Hub, Session.Open!, Texts, Clock, Now), StringComparison.Ordinal);
        await PassAsync(5);
        Assert.Equal(HubTrouble.NotReached, Hub.TroubleWith(id));
        Assert.Equal(2, Hub.Waiting(Session.Open!));
        hub.Refusal = null;
        HubLine.Wake();
        await PassAsync(2);
        Assert.Equal(Session.Lines.Length, hub.Lines.Count);
        Assert.Equal(0, Hub.Waiting(Session.Open!));
        Assert.Equal(HubTrouble.None, Hub.TroubleWith(id));
    }

    [Fact]
    public async Task What_another_phone_wrote_comes_here_by_itself_and_is_kept_as_it_came()
    {
        await OpenCasualtyAsync();
        await Hub.StartAsync();
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(3);
        var at = WrittenInstant.Write(Now);
        var line =
            $"{{\"id\":\"n95q2x-1\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Liv\",\"kind\":\"note\",\"text\":\"from Liv\"}}";
        hub.Lines.Add(Encoding.UTF8.GetBytes(line));
        await PassAsync(20);
        Assert.Contains(Session.Lines, l => l.Text == line);
        Assert.Contains(Desk.Record!.Readings[0].Of(Kind.Note), n => n.As<Payload.NoteWritten>().Text == "from Liv");
    }

    [Fact]
    public async Task What_is_known_to_exist_elsewhere_is_a_doubt_also_after_a_start_and_goes_when_it_has_come()
    {
        var id = await OpenCasualtyAsync();
        await Hub.StartAsync();
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(3);
        Assert.Empty(Desk.Picture!.Doubts);
        hub.Known = hub.Known.Add("n95q2x", 2);
        await PassAsync(20);
        Assert.Contains("n95q2x-1 to n95q2x-2 are known to exist", Assert.Single(Desk.Picture!.Doubts).Text, StringComparison.Ordinal);

        // As after a start, before anything was asked.
        var again = new KeptElsewhere(Phone);
        Assert.Equal(2, again.Of(id).Last["n95q2x"]);

        var at = WrittenInstant.Write(Now);
        for (var i = 1; i <= 2; i++)
            hub.Lines.Add(
                Encoding.UTF8.GetBytes(
                    $"{{\"id\":\"n95q2x-{i}\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Liv\",\"kind\":\"note\",\"text\":\"n\"}}"
                )
            );
        hub.Known = hub.Known.Clear();
        await PassAsync(600);
        Assert.Empty(Desk.Picture!.Doubts);
        Assert.Equal("", Phone.Get("elsewhere-" + id));
    }

    [Fact]
    public async Task A_phone_that_waits_or_was_let_out_says_so_and_sends_nothing()
    {
        await OpenCasualtyAsync();
        await Hub.StartAsync();
        hub.IsConfirmed = false;
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(3);
        Assert.Equal(HubTrouble.Unconfirmed, Hub.Trouble);
        Assert.Equal(0, hub.Lines.Count);
        var panel = Render<HubPanel>();
        Assert.Contains("482 913", panel.Markup, StringComparison.Ordinal);
        hub.IsConfirmed = true;
        await PassAsync(60);
        Assert.Equal(Session.Lines.Length, hub.Lines.Count);

        hub.Refusal = FakeHubLine.Refused(403, "revoked");
        await Logbook.LogAsync(new Payload.NoteWritten("kept here"));
        await PassAsync(5);
        Assert.True(Hub.Member!.IsOut);
        Assert.Contains("let out of the hub", panel.Markup, StringComparison.Ordinal);
        var asked = HubLine.Asked.Count;
        await PassAsync(900);
        Assert.Equal(asked, HubLine.Asked.Count);
    }

    [Theory]
    [InlineData(403, "other-team", HubTrouble.OtherTeam)]
    [InlineData(409, "", HubTrouble.SeveralMatch)]
    [InlineData(410, "erased", HubTrouble.Erased)]
    public async Task What_keeps_a_casualty_from_the_hub_is_said_of_it_and_nothing_is_deleted(int status, string code, HubTrouble trouble)
    {
        var id = await OpenCasualtyAsync();
        await Hub.StartAsync();
        HubLine.Answer = (method, path, body) =>
            path.EndsWith("/find", StringComparison.Ordinal) ? FakeHubLine.Refused(status, code) : hub.Answer(method, path, body);
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(3);
        Assert.Equal(trouble, Hub.TroubleWith(id));
        Assert.NotEmpty(HubWords.Of(Hub.TroubleWith(id), Hub.Member, Texts));
        Assert.NotEmpty(Session.Lines);
    }

    [Theory]
    [InlineData(404, "no-such-code", "No invitation that can still be used")]
    [InlineData(0, "", "The hub was not reached")]
    public async Task Who_does_not_come_in_is_told_why(int status, string code, string says)
    {
        await Hub.StartAsync();
        hub.Refusal = new(status, 0, code, "", default);
        var panel = Render<HubPanel>(p => p.Add(x => x.Open, true));
        await panel.Find("input").InputAsync("abcd-efgh-jkmn");
        await Button(panel, "Join").ClickAsync(new());
        Assert.Contains(says, panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Null(Hub.Member);
    }

    [Fact]
    public async Task A_practice_record_never_reaches_the_hub()
    {
        await OpenCasualtyAsync(practice: true);
        await Hub.StartAsync();
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(60);
        Assert.Equal(0, hub.Lines.Count);
        Assert.DoesNotContain(HubLine.Asked, a => a.Path.Contains("casualties", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_answer_that_comes_by_itself_stands_until_it_was_repeated()
    {
        await OpenCasualtyAsync();
        await Hub.StartAsync();
        await Hub.JoinAsync("abcd", "Ane");
        await Logbook.LogAsync(new Payload.QuestionAsked("duty doctor", "May we try?"));
        var asked = Desk.Record!.Readings[0].Of(Kind.QuestionAsked)[0];
        var shown = Render<AdviceArrived>();
        var waits = Render<QuestionAtHub>(p => p.Add(x => x.Question, asked));
        Assert.Contains("has not reached the hub yet", waits.Markup, StringComparison.Ordinal);
        await PassAsync(3);
        Assert.Contains("is at the hub", waits.Markup, StringComparison.Ordinal);
        var at = WrittenInstant.Write(Now);
        hub.Lines.Add(
            Encoding.UTF8.GetBytes(
                $"{{\"id\":\"vann-1\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Dr Vann\",\"kind\":\"question.taken\",\"answers\":\"{asked.Id}\"}}"
            )
        );
        await PassAsync(40);
        Assert.Contains("Dr Vann has been on it since", waits.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Answer from", shown.Markup, StringComparison.Ordinal);
        hub.Lines.Add(
            Encoding.UTF8.GetBytes(
                $"{{\"id\":\"vann-2\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Dr Vann\",\"kind\":\"advice.received\",\"from\":\"Dr Vann\",\"text\":\"Leave it on.\",\"allows\":[],\"answers\":\"{asked.Id}\"}}"
            )
        );
        await PassAsync(60);
        Assert.Contains("Leave it on.", shown.Markup, StringComparison.Ordinal);
        Assert.Contains("They do not allow an attempt to convert.", shown.Markup, StringComparison.Ordinal);
        await Button(shown, "I have repeated it aloud").ClickAsync(new());
        Assert.DoesNotContain("Leave it on.", shown.Markup, StringComparison.Ordinal);
        Assert.True(Correspondence.IsConfirmed(Desk.Record!.Readings[0], new("vann", 2)));
    }

    [Fact]
    public async Task Who_leaves_the_hub_is_nobody_to_it_any_more_and_keeps_the_record()
    {
        await OpenCasualtyAsync();
        await Hub.StartAsync();
        await Hub.JoinAsync("abcd", "Ane");
        await PassAsync(3);
        await Hub.LeaveAsync();
        Assert.Null(Hub.Member);
        Assert.Null(await HubLine.KeyAsync());
        var asked = HubLine.Asked.Count;
        await Logbook.LogAsync(new Payload.NoteWritten("after"));
        await PassAsync(600);
        Assert.Equal(asked, HubLine.Asked.Count);
        Assert.NotEmpty(Session.Lines);
    }

    /// <summary>Seconds pass, one by one, and what was begun in each comes to its end.</summary>
    private async Task PassAsync(int seconds)
    {
        for (var i = 0; i < seconds; i++)
        {
            Time.Advance(TimeSpan.FromSeconds(1));
            await Task.Yield();
        }
    }
}
