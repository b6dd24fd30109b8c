using Farhold.App.Tests.Doubles;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Respond;

public class AskScreenTests : CareTest
{
    [Fact]
    public async Task The_call_is_there_in_one_tap_from_the_try_to_reach_advice()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Try to reach advice");
        Assert.Equal($"casualty/{Casualty}/ask", now.Find("[role=dialog] a.act").GetAttribute("href"));
    }

    [Fact]
    public async Task The_call_says_who_where_what_is_asked_and_what_stands_against_it()
    {
        await ReadyAsync(Well with { Pale = true });
        await LogAsync(1, new Payload.PositionNoted(61.5, 6.25));
        var ask = Show<AskScreen>();
        var said = ask.Find("article.spoken").TextContent;
        Assert.Contains("This is Ane, with one casualty", said, StringComparison.Ordinal);
        Assert.Contains($"we are at {Mgrs.Format(new(61.5, 6.25))}", said, StringComparison.Ordinal);
        Assert.Contains("although this stands: The lips or the inside of the lower eyelid are pale.", said, StringComparison.Ordinal);
        Choose(ask, "The call as", "Short message");
        Assert.StartsWith("ASK convert TQ left leg with soft sign?", ask.Find("pre").TextContent, StringComparison.Ordinal);
        Choose(ask, "What do you ask?", "A drug");
        Write(ask, "Which drug?", "paracetamol");
        Assert.StartsWith("ASK May we give paracetamol?", ask.Find("pre").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whom_the_local_protocol_names_is_called_on_its_number_and_its_offices_are_offered_for_the_answer()
    {
        const string local = """
            {"local":"vesterdal","version":"3","title":"Vesterdal rescue","over":"farhold-base",
            "contacts":[{"name":"Base doctor","role":"duty physician","ways":[{"by":"satellite","number":"+881 22-33"}]}],
            "emergency":[{"name":"Rescue centre","number":"0112"}],
            "mayAllow":[{"role":"duty physician","allows":["attempt"]}],"words":{"terms":{"litter":"sledge"} } }
            """;
        await new InventedRescue().GiveAsync(
            local,
            Services.GetRequiredService<TrustedIssuers>(),
            Services.GetRequiredService<LocalProtocolKeeper>()
        );
        await TightAsync(150);
        var ask = Show<AskScreen>();
        var whom = ask.Find("[aria-label='Whom to call']");
        Assert.Contains("satellite phone +881 22-33; at any hour; their yes counts for this", whom.TextContent, StringComparison.Ordinal);
        Assert.Contains("\"sledge\" is litter", whom.TextContent, StringComparison.Ordinal);
        Assert.Equal(["tel:+8812233", "tel:0112"], whom.QuerySelectorAll("a").Select(a => a.GetAttribute("href")));
        Tap(ask, "We call Base doctor");
        Tap(ask, "They answer");
        Assert.Equal(new(true, "Base doctor, duty physician", "Phone"), Last<Payload.ContactTried>());
        Choose(ask, "In what office? By the local protocol these may allow something.", "Duty physician");
        Fill(ask, "Yes");
        Tap(ask, "Read it back");
        Assert.Contains(", duty physician.", ask.Find("article.spoken").TextContent, StringComparison.Ordinal);
        Tap(ask, "They agreed");
        Assert.Equal("duty physician", Last<Payload.AdviceReceived>().Authority);
    }

    [Fact]
    public async Task Nobody_reached_is_an_entry_with_whom_and_how()
    {
        await TightAsync();
        var ask = Show<AskScreen>();
        Write(ask, "Whom do you call?", "valley clinic");
        Choose(ask, "How do you try?", "Radio");
        Tap(ask, "Nobody reached");
        Assert.Equal(new(false, "valley clinic", "Radio"), Last<Payload.ContactTried>());
        Assert.Empty(State.Of(Kind.QuestionAsked));
    }

    [Fact]
    public async Task The_answer_is_written_down_read_back_and_bound_to_its_question()
    {
        await TightAsync(150);
        var ask = Show<AskScreen>();
        Tap(ask, "Reached, waiting for the answer");
        Assert.True(Last<Payload.ContactTried>().Reached);
        var question = State.Of(Kind.QuestionAsked).Single();
        Assert.Contains("2 h 30 min after it was first tightened?", question.As<Payload.QuestionAsked>().Text, StringComparison.Ordinal);
        ask = Show<AskScreen>();
        Assert.Contains("not answered yet", ask.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Tap(ask, "They answer");
        Tap(ask, "Read it back");
        Assert.NotEmpty(ask.FindAll("[role=alert]"));
        Fill(ask, "Yes");
        Write(ask, "In what office? (duty doctor, medical director)", "duty doctor");
        Tap(ask, "Read it back");
        var aloud = ask.Find("article.spoken").TextContent;
        Assert.Contains("You are Dr Lund, duty doctor.", aloud, StringComparison.Ordinal);
        Assert.Contains("No end was said: we take 2 h 00 min", aloud, StringComparison.Ordinal);
        Assert.Empty(State.Of(Kind.AdviceReceived));
        Tap(ask, "They agreed");
        var advice = Last<Payload.AdviceReceived>();
        Assert.Equal(
            ("Dr Lund", "go ahead", question.Id, true, "duty doctor"),
            (advice.From, advice.Text, advice.Answers, advice.ReadBack, advice.Authority)
        );
        Assert.Equal([Payload.AdviceReceived.AllowsAttempt], advice.Allows);
        Assert.Null(advice.Until);
    }

    [Fact]
    public async Task An_adviser_says_that_they_are_on_it_and_sends_an_answer_that_nobody_has_read_back_yet()
    {
        HubLine.Answer = new SmallHub { Role = "adviser" }.Answer;
        await TightAsync(150);
        var hub = Services.GetRequiredService<HubDesk>();
        await hub.StartAsync();
        Assert.Equal("", await hub.JoinAsync("abcd", "Ane"));
        await LogAsync(1, new Payload.QuestionAsked("duty doctor", "Ours: may we try?"));
        var own = Show<AskScreen>();
        Assert.DoesNotContain(own.FindAll("button"), b => Text(b) == "I am on it"); // a question of this very phone is asked by voice
        var at = WrittenInstant.Write(Now);
        var line = System.Text.Encoding.UTF8.GetBytes(
            $"{{\"id\":\"n95q2x-1\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Tor\",\"kind\":\"question.asked\",\"to\":\"doctor\",\"text\":\"May we try?\"}}"
        );
        await Session.MergeAsync(Session.Open!, [new IncomingLine(new EntryId("n95q2x", 1), line)], "hub");
        var ask = Show<AskScreen>();
        Tap(ask, "I am on it");
        Assert.Equal(State.Of(Kind.QuestionAsked)[^1].Id, Last<Payload.QuestionTaken>().Answers);
        ask = Show<AskScreen>();
        Assert.DoesNotContain(ask.FindAll("button"), b => Text(b) == "I am on it");
        Tap(ask, "They answer");
        Fill(ask, "No");
        Tap(ask, "What their phone will say");
        Assert.Empty(State.Of(Kind.AdviceReceived));
        Tap(ask, "Send this answer");
        var advice = Last<Payload.AdviceReceived>();
        Assert.Null(advice.ReadBack);
        Assert.Equal([], advice.Allows);
        Assert.Equal(State.Of(Kind.QuestionAsked)[^1].Id, advice.Answers);
    }

    [Fact]
    public async Task What_they_correct_is_entered_again_with_what_was_said()
    {
        await TightAsync();
        var ask = Show<AskScreen>();
        Tap(ask, "They answer");
        Fill(ask, "Yes");
        Tap(ask, "Read it back");
        Tap(ask, "They corrected it");
        Choose(ask, "Do they allow an attempt?", "No");
        Tap(ask, "Read it back");
        Assert.Contains("You said: go ahead", ask.Find("article.spoken").TextContent, StringComparison.Ordinal);
        Tap(ask, "They agreed");
        Assert.True(Last<Payload.AdviceReceived>().Allows.IsEmpty);
        Assert.Single(State.Of(Kind.AdviceReceived));
    }

    [Fact]
    public async Task What_was_not_read_back_is_kept_and_said_plainly()
    {
        await TightAsync();
        var ask = Show<AskScreen>();
        Tap(ask, "They answer");
        Fill(ask, "Neither yes nor no");
        Tap(ask, "Read it back");
        Tap(ask, "It could not be read back");
        Assert.False(Last<Payload.AdviceReceived>().ReadBack);
        Assert.True(Last<Payload.AdviceReceived>().Allows.IsDefault);
        Assert.Contains("was not read back: Dr Lund", Show<AskScreen>().Find(".notice.danger").TextContent, StringComparison.Ordinal);
    }

    private static void Fill(IRenderedComponent<Frame> ask, string allows)
    {
        Write(ask, "Who answers?", "Dr Lund");
        Write(ask, "What they said, word by word", "go ahead");
        Choose(ask, "Do they allow an attempt?", allows);
    }
}
