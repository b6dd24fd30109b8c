using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Now;

public class NowScreenTests : CareTest
{
    [Fact]
    public async Task A_long_list_of_what_is_due_shows_its_first_three_and_how_many_more()
    {
        await TightAsync(minutesAgo: 150);
        var all = Desk.Picture!.Due.Count(d => !d.AtOnce && !d.IsNextAct && !(d.IsEffect && d.Leads));
        Assert.True(all > 3);
        var now = Show<NowScreen>();
        Assert.Equal(3, now.FindAll("li.due").Count);
        Tap(now, $"Show {all - 3} more that are due");
        Assert.Equal(all, now.FindAll("li.due").Count);
    }

    [Fact]
    public async Task With_no_tourniquet_on_the_first_action_is_the_tourniquet()
    {
        await StartAsync();
        Assert.Equal("Tourniquet tightened", Next(Show<NowScreen>()));
    }

    [Fact]
    public async Task Leave_on_says_so_with_the_reasons_that_decide_and_the_values_they_used()
    {
        await ReadyAsync(Well with { RadialPulse = RadialPulse.Weak });
        var limb = Limb(Show<NowScreen>());
        Assert.StartsWith("LEFT leg: Leave it on 40 min tight since 13:20 ", limb, StringComparison.Ordinal);
        Assert.Contains(
            "The pulse at the wrist is weak or can't be felt.Pulse at the wrist weak, 1 min old",
            limb,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Await_help_says_so_with_its_reason()
    {
        await ReadyAsync(Well, Now + Duration.FromMinutes(90));
        var limb = Limb(Show<NowScreen>());
        Assert.Contains("Wait for help", limb, StringComparison.Ordinal);
        Assert.Contains("Surgery is reached within two hours", limb, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Attempt_says_so_and_is_the_next_action()
    {
        await ReadyAsync(Well);
        var now = Show<NowScreen>();
        Assert.Contains("Try to convert the tourniquet", Limb(now), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_first_lists_what_to_look_at_in_the_order_of_the_verdict()
    {
        await TightAsync();
        var now = Show<NowScreen>();
        Assert.Contains("Check first", Limb(now), StringComparison.Ordinal);
        Tap(
            now,
            now.FindAll("button")
                .Select(Text)
                .Single(t => t.StartsWith("Show ", StringComparison.Ordinal) && t.EndsWith(" more", StringComparison.Ordinal))
        );
        var verdict = Assert.Single(Desk.Picture!.Limbs);
        Assert.Equal(
            verdict.CheckFirst.Select(i => i.Look),
            now.FindAll(".check-rows button")
                .Select(b => Text(b))
                .Select(t => char.ToLowerInvariant(t[0]) + t[1..t.LastIndexOf(" (", StringComparison.Ordinal)])
        );
    }

    [Fact]
    public async Task What_is_too_old_to_decide_by_is_told_in_words()
    {
        await ReadyAsync(Well);
        Time.Advance(TimeSpan.FromMinutes(16));
        var now = Show<NowScreen>();
        Assert.Contains("too old to decide by", Limb(now), StringComparison.Ordinal);
        Assert.Contains("17 min old", Limb(now), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_clock_counts_from_absolute_times_up_by_the_minute_and_down_by_the_second()
    {
        await TightAsync(40);
        var now = Show<NowScreen>();
        Assert.Equal("40 min", Text(now.Find(".clock .counting")));
        Assert.Contains("1 h 20 min 00 s", Limb(now), StringComparison.Ordinal);
        Time.Advance(TimeSpan.FromSeconds(2));
        now.WaitForAssertion(() => Assert.Contains("1 h 19 min 58 s", Limb(now), StringComparison.Ordinal));
        Time.Advance(TimeSpan.FromSeconds(58));
        now.WaitForAssertion(() => Assert.Equal("41 min", Text(now.Find(".clock .counting"))));
    }

    [Fact]
    public async Task A_passed_limit_is_told_with_how_long_ago()
    {
        await TightAsync(365);
        Assert.Contains("The time limit of 6 h 00 min has passed 5 min 00 s ago", Limb(Show<NowScreen>()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bleeding_again_comes_before_all_and_one_tap_logs_the_tightening()
    {
        await TightAsync();
        await LogAsync(20, new Payload.TourniquetSlackened("t1"));
        await LogAsync(2, new Payload.BleedingChecked("w1", Bleeding.Active));
        var now = Show<NowScreen>();
        Assert.Contains("Bleeding again: tighten at once", Text(now.Find("[role=alert]")), StringComparison.Ordinal);
        Assert.Equal("Tighten now, then press here: left leg tightened (t1)", Next(now));
        Tap(now, Next(now));
        Assert.Equal(2, State.Of(Kind.TourniquetTightened).Length);
        Assert.Equal("w1", Last<Payload.TourniquetTightened>().Wound);
        Assert.Empty(now.FindAll("[role=alert]"));
    }

    /// <summary>The button stands below the card of another limb.</summary>
    [Fact]
    public async Task With_two_limbs_the_first_action_names_the_limb()
    {
        await ReadyAsync(Well);
        Assert.Equal("Start an attempt", Next(Show<NowScreen>()));
        await LogAsync(39, new Payload.TourniquetTightened("t2", Farhold.Values.Limb.RightArm, Wound: "w2"));
        await LogAsync(39, new Payload.WoundFound("w2", Farhold.Values.Limb.RightArm, null, WoundNature.Bleeding));
        Assert.Equal("Has it stopped? (right arm)", Next(Show<NowScreen>()));
        await LogAsync(0, new Payload.BleedingChecked("w2", Bleeding.None));
        await LogAsync(0, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(0, NothingElse);
        Assert.Equal("Start an attempt (left leg)", Next(Show<NowScreen>()));
    }

    /// <summary>Where something else decides on the limb, its card says nothing of shock.</summary>
    [Fact]
    public async Task Shock_is_said_above_a_limb_on_which_something_else_decides_and_stays_once_the_signs_are_old()
    {
        await TightAsync(minutesAgo: 30, nature: WoundNature.Amputation);
        Assert.Empty(Show<NowScreen>().FindAll($"[aria-label='{Texts.ShockWhileWatching}']"));
        await LogAsync(0, Well with { RadialPulse = RadialPulse.Absent, Mental = Mental.Confused });
        var said = Show<NowScreen>().Find($"[aria-label='{Texts.ShockWhileWatching}']");
        Assert.Contains("Lay flat", said.TextContent, StringComparison.Ordinal);
        Assert.Contains("wrist", said.TextContent, StringComparison.Ordinal);
        Time.Advance(TimeSpan.FromMinutes(45));
        Assert.Contains(
            Texts.ShockNotLookedAtSince,
            Show<NowScreen>().Find($"[aria-label='{Texts.ShockWhileWatching}']").TextContent,
            StringComparison.Ordinal
        );
        await LogAsync(0, Well);
        Assert.Empty(Show<NowScreen>().FindAll($"[aria-label='{Texts.ShockWhileWatching}']"));
    }

    [Fact]
    public async Task Shock_is_said_on_the_card_of_a_limb_that_is_watched()
    {
        await ReadyAsync(Well);
        await LogAsync(0, new Payload.AttemptStarted("w1", "t1"));
        await LogAsync(0, new Payload.TourniquetSlackened("t1"));
        Assert.DoesNotContain(Texts.ShockWhileWatching, Limb(Show<NowScreen>()), StringComparison.Ordinal);
        Time.Advance(TimeSpan.FromMinutes(4));
        await LogAsync(0, new Payload.SignsTaken { Mental = Mental.Confused });
        var limb = Limb(Show<NowScreen>());
        Assert.Contains(Texts.ShockWhileWatching, limb, StringComparison.Ordinal);
        Assert.Contains("Mental state confused, 0 min old", limb, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ended_care_is_said_first_with_what_it_silences()
    {
        await TightAsync();
        Assert.DoesNotContain("Care ended", Show<NowScreen>().Markup, StringComparison.Ordinal);
        await LogAsync(0, new Payload.CareEnded(CareEnd.HandedOver, "Dr Lind"));
        var ended = Text(Show<NowScreen>().Find("main section"));
        Assert.StartsWith("Care ended: handed over to Dr Lind Since", ended, StringComparison.Ordinal);
        Assert.Contains("no alarm sounds", ended, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_adviser_said_is_read_before_the_attempt_it_allows()
    {
        await ReadyAsync(Well);
        await LogAsync(0, new Payload.AdviceReceived("Dr Vann", "only while the pulse is under 100", ["attempt"]));
        Assert.Contains(
            "Dr Vann: only while the pulse is under 100",
            Text(Show<NowScreen>().Find(".act-line [aria-label='Read before an attempt']")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task While_both_hands_press_nobody_is_asked_whether_it_has_stopped()
    {
        await ReadyAsync(Well);
        await LogAsync(
            0,
            new Payload.TourniquetTightened("t1", Farhold.Values.Limb.LeftLeg, Wound: "w1", Why: TighteningReason.Precaution)
        );
        Assert.NotEmpty(Show<NowScreen>().FindAll(".effect"));
        await LogAsync(0, new Payload.AttemptStarted("w1", "t1"));
        await LogAsync(0, new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze));
        Assert.Empty(Show<NowScreen>().FindAll(".effect"));
        Time.Advance(TimeSpan.FromMinutes(4));
        Assert.NotEmpty(Show<NowScreen>().FindAll(".effect"));
    }

    [Fact]
    public async Task What_is_overdue_says_so_and_can_be_ticked_off()
    {
        await ReadyAsync(Well);
        Time.Advance(TimeSpan.FromMinutes(75));
        var now = Show<NowScreen>();
        Assert.Contains(now.FindAll("li.due"), d => Text(d).Contains("OVERDUE by", StringComparison.Ordinal));
        var overdue = Desk.Picture!.Due.First(d => d is { Overdue: true, BySeeing: false, IsNextAct: false });
        Tap(now, $"Done: {overdue.Text}");
        Assert.Equal(overdue.Task, Last<Payload.TaskDone>().Task);
    }

    [Fact]
    public async Task On_a_record_a_second_old_nothing_is_overdue()
    {
        await StartAsync();
        await LogAsync(0, new Payload.TourniquetTightened("t1", Farhold.Values.Limb.LeftLeg));
        Time.Advance(TimeSpan.FromSeconds(2));
        Desk.JudgeAgain();
        var now = Show<NowScreen>();
        Assert.NotEmpty(now.FindAll("li.due"));
        Assert.DoesNotContain("OVERDUE", now.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("OVERDUE", Show<Farhold.App.Sustain.SustainScreen>().Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("OVERDUE", Show<Farhold.App.Reminders.RemindersScreen>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_anything_is_known_it_says_to_press()
    {
        await StartAsync();
        Assert.Contains("Bleeding? Press now", Show<NowScreen>().Find("main .notice").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_doubt_about_the_record_is_told()
    {
        await TightAsync();
        Store.AddElsewhere(
            Casualty,
            new EntryId("9mwq", 2),
            """{"id":"9mwq-2","happened":"2031-05-04T01:50:00Z","recorded":"2031-05-04T01:50:00Z","by":"Jon","kind":"note","text":"here"}"""
        );
        Assert.Contains("Entry 9mwq-1 is missing", Show<NowScreen>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_loosened_limit_is_told_with_who_answers_for_it()
    {
        var loosened = ShippedProtocol.Protocol with
        {
            Local = new(
                "skarvedal",
                "1",
                "Skarvedal rules",
                new("Dr Ilse Vann", "doctor", new LocalDate(2031, 1, 2)),
                ["soft signs count for less"],
                [],
                []
            )
            {
                Standing = Standing.Verified,
            },
        };
        var rules = new FixedRules(Phone);
        Services.AddSingleton<RulesInForce>(rules);
        await TightAsync();
        rules.Fixed = ShippedRules.Book.By(loosened);
        Desk.JudgeAgain();
        var now = Show<NowScreen>();
        Assert.Contains("LOOSENED by the local protocol: soft signs count for less", now.Markup, StringComparison.Ordinal);
        Assert.Contains("authorised by Dr Ilse Vann", now.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_and_local_protocol_come_first_is_always_there()
    {
        await StartAsync();
        Assert.Contains(VerdictWords.Caution, Show<NowScreen>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_look_to_come_is_told_with_its_time_by_this_phones_clock()
    {
        await TightAsync();
        await RestAsync(Well);
        var now = Show<NowScreen>();
        Assert.Contains("Second look: take all the signs of shock again", Limb(now), StringComparison.Ordinal);
        Assert.Contains("Second look due 14:09, in 9 min 00 s", Limb(now), StringComparison.Ordinal);
        Assert.DoesNotContain("UTC", Limb(now), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Why_an_attempt_is_not_offered_stands_with_what_would_change_it_and_when_to_look_again()
    {
        await ReadyAsync(Well with { Clammy = true });
        var limb = Limb(Show<NowScreen>());
        Assert.Contains("Lie flat, keep warm, calm, ease the pain; look again in ten minutes", limb, StringComparison.Ordinal);
        Assert.Contains("A clear look ten minutes later, or advice, would change it.", limb, StringComparison.Ordinal);
        Assert.Contains("Look again by 14:14 at the latest.", limb, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_cautions_of_a_late_hour_stand_on_the_card_before_the_attempt()
    {
        await ReadyAsync(Well, minutesOn: 250);
        await LogAsync(1, new Payload.ContactTried(false));
        var limb = Limb(Show<NowScreen>());
        Assert.Contains("Make an attempt", limb, StringComparison.Ordinal);
        Assert.Contains("Four hours and more: muscle may be dying", limb, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_tightening_is_followed_by_the_question_whether_it_has_stopped()
    {
        await ReadyAsync(Well);
        var now = Show<NowScreen>();
        Assert.Empty(now.FindAll(".effect"));
        await LogAsync(0, new Payload.TourniquetTightened("t1", Farhold.Values.Limb.LeftLeg, Wound: "w1"));
        Assert.Equal("Has it stopped?", Next(now));
        Assert.Contains("Has it stopped? Left leg", Text(now.Find(".effect h2")), StringComparison.Ordinal);
        Tap(now, "None", "Has it stopped? w1, left leg");
        Assert.Equal(Bleeding.None, Last<Payload.BleedingChecked>().Bleeding);
        Assert.Empty(now.FindAll(".effect"));
    }

    [Fact]
    public async Task Bleeding_where_no_tourniquet_can_be_says_how_it_is_stopped()
    {
        await TightAsync();
        await LogAsync(4, new Payload.WoundFound("w2", null, BodyRegion.Groin, WoundNature.Bleeding));
        await LogAsync(2, new Payload.BleedingChecked("w2", Bleeding.Active));
        var now = Show<NowScreen>();
        Assert.Contains(
            "the groin: pack the wound and press with your body weight",
            Text(now.Find("[role=alert]")),
            StringComparison.Ordinal
        );
        Tap(now, Next(now));
        Tap(now, "None", "w2, groin");
        Assert.Empty(now.FindAll("[role=alert]"));
    }

    [Fact]
    public async Task After_the_first_attempt_that_bled_it_can_be_said_that_something_has_improved()
    {
        await ReadyAsync(Well);
        await LogAsync(13, new Payload.AttemptStarted("w1", "t1"));
        await LogAsync(12, new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled));
        var now = Show<NowScreen>();
        Assert.Equal(Verdict.LeaveOn, Assert.Single(Desk.Picture!.Limbs).Verdict);
        Tap(now, "Light, supplies or hands have improved");
        Tap(now, "Better light", "Left leg");
        Assert.Equal(new("improved.left-leg", "Better light"), Last<Payload.TaskDone>());
        Assert.NotEqual(Verdict.LeaveOn, Assert.Single(Desk.Picture!.Limbs).Verdict);
        Assert.DoesNotContain("have improved", now.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_offered_as_improved_after_a_second_attempt_that_bled()
    {
        await ReadyAsync(Well);
        foreach (var minutes in (int[])[30, 20])
        {
            await LogAsync(minutes, new Payload.AttemptStarted("w1", "t1"));
            await LogAsync(minutes - 1, new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled));
        }

        Assert.DoesNotContain(Show<NowScreen>().FindAll("button"), b => Text(b).Contains("have improved", StringComparison.Ordinal));
    }

    private static string Limb(IRenderedComponent<Frame> now) => Text(now.Find(".limb-now:has(.clock)"));

    private static string Next(IRenderedComponent<Frame> now) => Text(now.Find(".dock .act"));

    private sealed class FixedRules(IPhone phone) : RulesInForce(phone, ShippedRules.Book)
    {
        public Rulebook? Fixed { get; set; }

        public override Rulebook Of(string casualty, Instant now) => Fixed ?? base.Of(casualty, now);
    }
}
