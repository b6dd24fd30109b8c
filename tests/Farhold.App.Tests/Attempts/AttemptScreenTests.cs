namespace Farhold.App.Tests.Attempts;

public class AttemptScreenTests : LimbTest
{
    public static TheoryData<StepId> Steps => [.. Enum.GetValues<StepId>()];

    [Fact]
    public async Task An_attempt_that_the_verdict_offers_starts_with_one_press()
    {
        await ReadyAsync();
        var screen = AttemptShown();
        Button(screen, Texts.Start).Click();
        Assert.Equal(new Payload.AttemptStarted("w1", "t1"), Last<Payload.AttemptStarted>());
        Assert.Contains(Texts.StepOf(1, 5), screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_attempt_that_the_verdict_does_not_offer_starts_only_after_the_reasons_are_shown()
    {
        await ReadyAsync();
        await TellAsync(Well with { Clammy = true });
        var screen = AttemptShown();
        Assert.False(HasButton(screen, Texts.Start));
        Button(screen, Texts.Insist).Click();
        Assert.Equal(0, Count<Payload.AttemptStarted>());
        Assert.Contains(
            "The skin is clammy",
            screen.Find($"[role=group][aria-label='{Texts.InsistTitle}']").TextContent,
            StringComparison.Ordinal
        );
        Button(screen, Texts.InsistYes).Click();
        Assert.Equal(1, Count<Payload.AttemptStarted>());
    }

    /// <summary>A breathing rate that is well stands beside the heart rate that is not: only that one is why.</summary>
    [Fact]
    public async Task Under_stop_stands_the_bad_value_without_the_good_one_beside_it()
    {
        await ReadyAsync();
        await TellAsync(new Payload.CasualtyOpened("Pia", AgeYears: 6));
        await AtStepAsync(StepId.Watch);
        await TellAsync(Well with { Mental = Mental.Confused, HeartRate = 150, RespiratoryRate = 20 });
        var why = AttemptShown().Find(".against ul.plain").TextContent;
        Assert.Contains("eart rate 150", why, StringComparison.Ordinal);
        Assert.DoesNotContain("reathing rate 20", why, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Steps))]
    public async Task Started_again_in_the_middle_it_goes_on_at_the_same_step(StepId step)
    {
        await ReadyAsync();
        await AtStepAsync(step);
        var screen = AttemptShown();
        Assert.Contains(Texts.StepOf((int)step + 1, 5), screen.Markup, StringComparison.Ordinal);
        Assert.Contains(Care.Protocol.Steps[(int)step].Text, screen.Markup, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Steps))]
    public async Task Bleeding_again_can_be_pressed_at_every_step(StepId step)
    {
        await ReadyAsync();
        await AtStepAsync(step);
        Pass(0.5);
        var screen = AttemptShown();
        Button(screen, Texts.BleedingAgainNow).Click();
        Assert.Equal(Texts.TightenNow, screen.Find("[role=alert] h1").TextContent);
        Assert.Equal(Bleeding.Active, Last<Payload.BleedingChecked>().Bleeding);
        Assert.Equal(1, Count<Payload.TourniquetTightened>());
        Assert.Equal(0, Count<Payload.AttemptEnded>());

        Pass(0.2);
        Button(screen, Texts.TightNow).Click();
        Assert.Equal(
            new Payload.TourniquetTightened("t1", Limb.LeftLeg, "high-thigh", TourniquetMake.Windlass, "w1", TighteningReason.Bleeding),
            Last<Payload.TourniquetTightened>()
        );
        Assert.Equal(AttemptOutcome.Bled, Last<Payload.AttemptEnded>().Outcome);
        Assert.Equal(Now, State.Of(Kind.TourniquetTightened)[^1].When.Latest);
        Assert.Equal(Verdict.LeaveOn, Assert.Single(Care.Picture!.Limbs).Verdict);
    }

    [Theory, MemberData(nameof(Steps))]
    public async Task Started_again_while_it_bleeds_it_still_says_tighten(StepId step)
    {
        await ReadyAsync();
        await AtStepAsync(step);
        Pass(0.5);
        await TellAsync(new Payload.BleedingChecked("w1", Bleeding.Active));
        Assert.Equal(Texts.TightenNow, AttemptShown().Find("[role=alert] h1").TextContent);
    }

    [Fact]
    public async Task The_instruction_stands_even_if_nothing_can_be_stored()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        var screen = AttemptShown();
        Store.Full = true;
        Button(screen, Texts.BleedingAgainNow).Click();
        Assert.Equal(Texts.TightenNow, screen.Find("[role=alert] h1").TextContent);
        Assert.Single(Session.NotStored);
    }

    [Fact]
    public async Task Still_bleeding_after_tightening_the_instruction_comes_back()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        Pass(1);
        var screen = AttemptShown();
        Button(screen, Texts.BleedingAgainNow).Click();
        Pass(0.2);
        Button(screen, Texts.TightNow).Click();
        Pass(0.5);
        Button(screen, Texts.BleedingAgainNow).Click();
        Assert.Contains("tighten further, or add a second tourniquet", screen.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_false_alarm_is_answered_with_what_is_seen()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        Pass(1);
        var screen = AttemptShown();
        Button(screen, Texts.BleedingAgainNow).Click();
        Pass(0.1);
        Button(screen, Texts.NotBleeding).Click();
        Button(screen, Texts.SeenNone).Click();
        Assert.Contains(Texts.StepOf(5, 5), screen.Markup, StringComparison.Ordinal);
        Assert.Equal(0, Count<Payload.AttemptEnded>());
    }

    [Theory, MemberData(nameof(Steps))]
    public async Task Signs_of_shock_during_an_attempt_are_said_loudly(StepId step)
    {
        await ReadyAsync();
        await AtStepAsync(step);
        Pass(0.1);
        await TellAsync(Well with { RadialPulse = RadialPulse.Weak });
        var screen = AttemptShown();
        // What stays in sight stands outside of what scrolls.
        var stop = screen.Find(".stop-line");
        Assert.Equal(step == StepId.Watch ? Texts.ShockWhileWatching : Texts.LeaveOnTurned, stop.TextContent.Trim());
        Assert.Null(stop.Closest(".view"));
        Assert.Contains("The pulse at the wrist is weak", screen.Find("main section[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Steps))]
    public async Task The_alarm_stands_outside_of_what_scrolls(StepId step)
    {
        await ReadyAsync();
        await AtStepAsync(step);
        Assert.Null(Button(AttemptShown(), Texts.BleedingAgainNow).Closest(".view"));
    }

    [Fact]
    public async Task Whatever_comes_next_is_scrolled_to_and_a_hasty_second_tap_is_kept_from_it()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Pack);
        var screen = AttemptShown();
        Assert.Equal(["attempt"], Phone.BroughtUp);
        Assert.Equal(0, Phone.Replacements);
        Button(screen, Texts.PackedWith("haemostatic gauze")).Click();
        Assert.Equal(["attempt", "attempt"], Phone.BroughtUp);
        Assert.Equal(1, Phone.Replacements);
        Button(screen, Texts.BleedingAgainNow).Click();
        Assert.Equal(["attempt", "attempt", "attempt"], Phone.BroughtUp);
        Assert.Equal(2, Phone.Replacements);
    }

    [Fact]
    public async Task A_step_that_is_not_stored_brings_up_that_it_is_not()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Pack);
        var screen = AttemptShown();
        Store.Full = true;
        Button(screen, Texts.PackedWith("cloth")).Click();
        Assert.Equal(StatusStrip.NotStored, Phone.BroughtUp[^1]);
        Assert.Contains("NOT SAFELY STORED", screen.Find("#" + StatusStrip.NotStored).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Abandoned_with_the_tourniquet_slack_it_asks_whether_it_is_tight_again()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        Pass(2);
        var screen = AttemptShown();
        Button(screen, Texts.Abandon).Click();
        Button(screen, Texts.AbandonYes).Click();
        Assert.Equal(0, Count<Payload.AttemptEnded>());
        screen.Find("textarea").Input("storm, have to move");
        screen.FindAll("input[type=radio]")[0].Change("on");
        Button(screen, Texts.AbandonYes).Click();
        Assert.Equal(
            (AttemptOutcome.Abandoned, "storm, have to move"),
            (Last<Payload.AttemptEnded>().Outcome, Last<Payload.AttemptEnded>().Note)
        );
        Assert.Equal(AttemptResult.Abandoned, Assert.Single(Attempt.On(Limb.LeftLeg, State, Now)).Result);
        Assert.Equal(Truth.Met, LimbClock.Of(Limb.LeftLeg, State, Now)!.Tight);
        Assert.Equal(TighteningReason.Precaution, Last<Payload.TourniquetTightened>().Why);
    }

    [Fact]
    public async Task What_comes_before_a_step_is_read_with_it()
    {
        await ReadyAsync();
        var before = Care.Protocol.Steps[0].Before.Select(b => b.Text).ToArray();
        Assert.Equal(3, before.Length);
        Assert.All(before, b => Assert.Contains(b, AttemptShown().Markup, StringComparison.Ordinal));
        await AtStepAsync(StepId.Pack);
        Assert.Equal(before, AttemptShown().FindAll(".before li").Select(l => l.TextContent));
    }

    [Fact]
    public async Task Nothing_is_slackened_after_two_hours_before_the_list_is_ticked_off()
    {
        await ReadyAsync(minutesOn: 150);
        await TellAsync(4, new Payload.ContactTried(false));
        await AtStepAsync(StepId.Slacken);
        Pass(0.5);
        await TellAsync(new Payload.BleedingChecked("w1", Bleeding.None));
        var screen = AttemptShown();
        Assert.Contains("do not loosen until: fluid is going in", screen.Markup, StringComparison.Ordinal);
        Assert.False(HasButton(screen, Texts.SlackenFromNone));
        Pass(2);
        Assert.False(HasButton(AttemptShown(), Texts.SlackenLog));
        Button(AttemptShown(), Texts.GateDone).Click();
        Assert.Equal("before-release.left-leg", Last<Payload.TaskDone>().Task);

        // What was seen before the list was gone through does not start the pace.
        Button(AttemptShown(), Texts.SlackenFromNone).Click();
        Assert.Equal("1:00", Timer(AttemptShown()));
    }

    [Fact]
    public async Task Within_two_hours_no_list_stands_before_slackening()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Slacken);
        Assert.True(HasButton(AttemptShown(), Texts.SlackenFromNone));
    }

    [Fact]
    public async Task Tight_again_it_asks_whether_it_has_stopped()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        Pass(1);
        var screen = AttemptShown();
        Button(screen, Texts.BleedingAgainNow).Click();
        Pass(0.2);
        Button(screen, Texts.TightNow).Click();
        Assert.Contains("feel for a pulse below the tourniquet", screen.Find(".effect").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_screen_is_kept_awake_while_it_is_shown_and_no_longer()
    {
        await ReadyAsync();
        AttemptShown();
        Assert.True(Alerts.Awake);
        await DisposeComponentsAsync();
        Assert.False(Alerts.Awake);
    }
}
