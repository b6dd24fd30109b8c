using System.Text.Json;

namespace Farhold.App.Tests.Now;

public class TwoTapTests : CareTest
{
    [Fact]
    public async Task Help_can_be_said_with_its_earliest_and_latest_and_only_what_lies_between_is_offered()
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Surgery or clinic: when");
        Choose(now, "At the earliest in", "2 h");
        Choose(now, "Most likely in", "12 h");
        Assert.Equal(["Clinic within 12 h", "Clinic within 24 h", "Clinic within 48 h"], Options(now, "Clinic"));
        Tap(now, "Clinic within 24 h", "Clinic");
        now.WaitForAssertion(() =>
            Assert.Equal(
                new(Now + Duration.FromHours(12), Now + Duration.FromHours(2), Now + Duration.FromHours(24), Care: HelpCare.Clinic),
                Last<Payload.HelpExpected>()
            )
        );
    }

    [Theory]
    [InlineData("Surgery or clinic: when", "Surgery", HelpCare.Surgery)]
    [InlineData("Surgery or clinic: when", "Clinic", HelpCare.Clinic)]
    [InlineData("Hands here: when", "More helpers", HelpCare.Hands)]
    public async Task Help_is_said_by_kind_and_one_tap_says_when_it_is_here_at_the_latest(string quick, string kind, HelpCare care)
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, quick);
        Tap(now, $"{kind} within 8 h", kind);
        var help = Now + Duration.FromHours(8);
        now.WaitForAssertion(() => Assert.Equal(new(help, Latest: help, Care: care), Last<Payload.HelpExpected>()));
    }

    [Fact]
    public async Task One_tap_says_that_nothing_else_is_wrong_with_the_casualty()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Rest of the casualty");
        Tap(now, "None of these");
        now.WaitForAssertion(() => Assert.Equal(new(false, false, false, false, false), Last<Payload.CasualtyLookedOver>()));
    }

    [Fact]
    public async Task What_was_found_wrong_is_not_taken_back_by_one_tap_for_all_the_rest()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Rest of the casualty");
        Tap(now, "Yes", "Very cold");
        Assert.Equal(new(VeryCold: true), Last<Payload.CasualtyLookedOver>());
        Tap(now, "Rest of the casualty");
        Tap(now, "Nothing but: Very cold");
        Assert.Equal(new(false, false, false, VeryCold: null, false), Last<Payload.CasualtyLookedOver>());
        Assert.Contains(Assert.Single(Desk.Picture!.Limbs).Findings, f => f is { Criterion.Id: "rest.cold", State: Truth.Met });
        Tap(now, "Rest of the casualty");
        Tap(now, "No", "Very cold");
        Tap(now, "Rest of the casualty");
        Assert.Contains("None of these", now.FindAll("[role=dialog] button").Select(Text));
    }

    [Fact]
    public async Task That_nobody_could_be_reached_is_logged_with_how_it_was_tried()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Try to reach advice");
        Tap(now, "Not reached by radio");
        Assert.Equal(new(false, How: "Radio"), Last<Payload.ContactTried>());
        Assert.Contains(Assert.Single(Desk.Picture!.Limbs).Findings, f => f is { Criterion.Id: "late.oversight", Against: Truth.NotMet });
    }

    /// <summary>
    /// The heading of its group may be scrolled away: "Radio" alone was pressed by whoever had reached somebody by radio.
    /// </summary>
    [Fact]
    public async Task Every_answer_to_whether_advice_was_reached_is_clear_by_itself()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Try to reach advice");
        Assert.Equal(
            [
                "Reached by phone",
                "Reached by radio",
                "Reached by satellite message",
                "Not reached by phone",
                "Not reached by radio",
                "Not reached by satellite message",
                "No signal",
            ],
            now.FindAll("[role=dialog] .options button").Select(Text)
        );
        Tap(now, "Reached by radio");
        Assert.Equal(new(true, How: "Radio"), Last<Payload.ContactTried>());
    }

    [Fact]
    public async Task The_watch_names_who_watches()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Who can watch");
        Tap(now, "Only the casualty can watch");
        Assert.Equal(new(true, Watcher.Casualty), Last<Payload.WatchStated>());
        Tap(now, "Who can watch");
        Tap(now, "You or another can watch closely");
        Assert.Equal(new(true, Watcher.Other), Last<Payload.WatchStated>());
    }

    [Theory]
    [InlineData(6, false)]
    [InlineData(40, true)]
    public async Task A_child_is_not_asked_to_watch_its_own_wound(int years, bool asked)
    {
        await TightAsync();
        await LogAsync(0, new Payload.CasualtyOpened("Tor", AgeYears: years));
        var now = Show<NowScreen>();
        Tap(now, "Who can watch");
        Assert.Equal(asked, now.FindAll("[role=dialog] button").Any(b => Text(b) == Texts.WatchCasualty));
    }

    [Fact]
    public async Task A_loosened_tourniquet_is_tightened_again_for_a_reason()
    {
        await TightAsync();
        await LogAsync(5, new Payload.TourniquetTightened("t1", Limb.LeftLeg, "high-thigh", Wound: "w1", Why: TighteningReason.ReSited));
        await LogAsync(3, new Payload.TourniquetSlackened("t1"));
        var now = Show<NowScreen>();
        Tap(now, "Tourniquet tightened");
        Assert.Equal(
            ["t1 again: it bled", "t1 again: as a precaution", "t1 again: placed better", "Another one (t2)"],
            Options(now, "Left leg")
        );
        Tap(now, "t1 again: it bled", "Left leg");
        Assert.Equal(
            new("t1", Limb.LeftLeg, "high-thigh", Wound: "w1", Why: TighteningReason.Bleeding),
            Last<Payload.TourniquetTightened>()
        );
    }

    [Fact]
    public async Task Tightened_further_it_says_nothing_of_why()
    {
        await TightAsync();
        await LogAsync(5, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.ReSited));
        var now = Show<NowScreen>();
        Tap(now, "Tourniquet tightened");
        Tap(now, "t1 tightened again", "Left leg");
        Assert.Null(Last<Payload.TourniquetTightened>().Why);
    }

    [Fact]
    public async Task The_choice_is_a_dialog_that_Escape_closes()
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Surgery or clinic: when");
        var dialog = now.Find("[role=dialog]");
        Assert.Equal("true", dialog.GetAttribute("aria-modal"));
        dialog.KeyDown("Escape");
        now.WaitForAssertion(() => Assert.Empty(now.FindAll("[role=dialog]")));
        Assert.Single(Session.Lines);
    }

    [Theory]
    [InlineData("Escape")]
    [InlineData("cancel")]
    [InlineData("answer")]
    public async Task Whichever_way_the_choice_closes_the_focus_goes_back_once(string way)
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Surgery or clinic: when");
        Assert.Equal((1, 0), Phone.Focus);
        if (way == "Escape")
            now.Find("[role=dialog]").KeyDown("Escape");
        else
            Tap(now, way == "cancel" ? Texts.CloseChoice : "Surgery within 4 h");
        now.WaitForAssertion(() => Assert.Equal((1, 1), Phone.Focus));
        Assert.Empty(now.FindAll("[role=dialog]"));
    }

    [Fact]
    public async Task A_choice_that_leads_to_another_keeps_the_first_opener()
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Bleeding now?");
        now.Find("[role=dialog] .act").Click();
        Assert.Equal("Wound found", Text(now.Find("[role=dialog] h2")));
        now.Find("[role=dialog]").KeyDown("Escape");
        Assert.Equal((1, 1), Phone.Focus);
    }

    [Fact]
    public async Task The_next_step_waits_unseen_behind_the_choice_it_opened()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Assert.False(now.Find(".dock").HasAttribute("hidden"));
        Tap(now, "Surgery or clinic: when");
        Assert.True(now.Find(".dock").HasAttribute("hidden"));
    }

    [Theory]
    [InlineData("Tourniquet tightened", "Tightened (t2)", "Right arm", typeof(Payload.TourniquetTightened))]
    [InlineData("Wound found", "Right arm", "Bleeding", typeof(Payload.WoundFound))]
    [InlineData("Bleeding now?", "Oozing", "w1, left leg", typeof(Payload.BleedingChecked))]
    [InlineData("Signs seen", "Confused", "Mental state", typeof(Payload.SignsTaken))]
    [InlineData("Tourniquet slackened", "t1", "Left leg", typeof(Payload.TourniquetSlackened))]
    [InlineData("Start an attempt", "Start against this advice (t1)", "Left leg", typeof(Payload.AttemptStarted))]
    [InlineData("Surgery or clinic: when", "Surgery within 4 h", "Surgery", typeof(Payload.HelpExpected))]
    [InlineData("Hands here: when", "More helpers within 4 h", "More helpers", typeof(Payload.HelpExpected))]
    [InlineData("Rest of the casualty", "None of these", "", typeof(Payload.CasualtyLookedOver))]
    [InlineData("Try to reach advice", "No signal", "Nobody reached", typeof(Payload.ContactTried))]
    [InlineData("About to move, or moved", "Carried", "Moved", typeof(Payload.CasualtyMoved))]
    [InlineData("Who can watch", "Nobody can watch", "", typeof(Payload.WatchStated))]
    [InlineData("Supplies left", "2", "Plain gauze", typeof(Payload.SuppliesStated))]
    [InlineData("Note", "Called for help", "", typeof(Payload.NoteWritten))]
    public async Task Two_taps_from_Now_log_it_at_this_moment(string first, string second, string group, Type says)
    {
        await TightAsync();
        var now = Show<NowScreen>();
        var before = Desk.Record!.Count;
        Tap(now, first);
        Tap(now, second, group);
        Assert.Equal(before + 1, Desk.Record.Count);
        var entry = Desk.Record.Entries.MaxBy(e => e.Id)!;
        Assert.IsType(says, entry.Payload);
        Assert.Equal(Happened.At(Now), entry.Happened);
        Assert.Empty(now.FindAll("[role=dialog]"));
    }

    [Fact]
    public void No_button_of_the_first_minutes_stands_twice() =>
        Assert.Equal(QuickSheets.FirstMinutes.Length, QuickSheets.FirstMinutes.Distinct().Count());

    [Fact]
    public async Task Undo_writes_a_withdrawal_and_takes_nothing_away()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Who can watch");
        Tap(now, "You or another can watch closely");
        Tap(now, "Undo");
        var last = JsonDocument.Parse(Session.Lines[^1].Text).RootElement;
        Assert.Equal("entry.withdrawn", last.GetProperty("kind").GetString());
        Assert.Equal("7k3f-4", last.GetProperty("target").GetString());
        Assert.Equal(5, Session.Lines.Length);
        Assert.Empty(State.Of(Kind.WatchStated));
    }

    [Fact]
    public async Task A_new_tourniquet_gets_the_next_name_and_the_wound_of_its_limb()
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Wound found");
        Tap(now, "Left leg", "Bleeding");
        Tap(now, "Tourniquet tightened");
        Tap(now, "Tightened (t1)", "Left leg");
        Assert.Equal(new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"), Last<Payload.TourniquetTightened>());
        Tap(now, "Tourniquet tightened");
        Tap(now, "Another one (t2)", "Left leg");
        Assert.Equal("t2", Last<Payload.TourniquetTightened>().Tourniquet);
    }

    [Fact]
    public async Task What_happened_earlier_is_logged_so_and_the_button_says_when()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Bleeding now?");
        Choose(now, "When", "10 min ago");
        Tap(now, "None at 13:50", "w1, left leg");
        Assert.Equal(Happened.At(Now - Duration.FromMinutes(10)), State.Of(Kind.BleedingChecked).Single().When);
        Assert.EndsWith(": no bleeding, 13:50", Toasts.Shown!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clock_time_is_complete_only_once_it_is_gone_on_with_and_then_stands()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Tourniquet slackened");
        Choose(now, "When", "Clock time");
        foreach (var key in "1355")
            Tap(now, key.ToString());
        Assert.Empty(now.FindAll("[role=dialog] .options button"));
        Tap(now, "Go on: it happened at 13:55");
        Time.Advance(TimeSpan.FromMinutes(3));
        Tap(now, "t1 at 13:55", "Left leg");
        Assert.Equal(Happened.At(Now - Duration.FromMinutes(8)), State.Of(Kind.TourniquetSlackened).Single().When);
    }

    [Fact]
    public async Task Now_chosen_again_logs_the_moment_of_the_tap()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Bleeding now?");
        Choose(now, "When", "10 min ago");
        Choose(now, "When", "Now");
        Tap(now, "None", "w1, left leg");
        Assert.Equal(Happened.At(Now), State.Of(Kind.BleedingChecked).Single().When);
        Assert.EndsWith(": no bleeding", Toasts.Shown!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task As_a_choice_opens_and_closes_a_hasty_second_tap_is_kept_from_what_is_there()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Bleeding now?");
        Assert.Equal(1, Phone.Replacements);
        Tap(now, "None", "w1, left leg");
        Assert.Equal(2, Phone.Replacements);
    }

    [Fact]
    public async Task Without_a_wound_the_choice_says_what_is_missing_and_leads_there()
    {
        await StartAsync();
        var now = Show<NowScreen>();
        Tap(now, "Bleeding now?");
        Assert.Contains("Enter the wound first", now.Markup, StringComparison.Ordinal);
        Tap(now, "Wound found", "Bleeding now?");
        Tap(now, "Left leg", "Bleeding");
        Assert.Single(State.Of(Kind.WoundFound));
    }

    [Fact]
    public async Task An_attempt_against_the_verdict_is_warned_of()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Tap(now, "Start an attempt");
        Assert.Contains("Check first", now.Find("[role=dialog] .warning").TextContent, StringComparison.Ordinal);
        Assert.Equal("Start against this advice (t1)", Text(now.Find("[role=dialog] .options button")));
    }

    [Fact]
    public async Task Nothing_is_said_to_be_logged_when_the_phone_is_full()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Store.Full = true;
        Tap(now, "Who can watch");
        Tap(now, "Nobody can watch");
        Assert.Null(Toasts.Shown);
        Assert.Contains("NOT SAFELY STORED", now.Markup, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Options(IRenderedComponent<Frame> now, string group) =>
        now.FindAll("[role=dialog] [role=group]")
            .Single(g => g.GetAttribute("aria-label") == group)
            .QuerySelectorAll("button")
            .Select(Text);
}
