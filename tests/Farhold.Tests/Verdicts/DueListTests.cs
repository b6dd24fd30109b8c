using System.Collections.Immutable;
using static Farhold.Tests.Story;

namespace Farhold.Tests.Verdicts;

/// <summary>What is due when, by the shipped protocol's intervals; all read at 12:00.</summary>
public class DueListTests
{
    private static readonly Payload Pale = Some.GoodSigns with { Pale = true };

    private static readonly Payload Pulseless = Some.GoodSigns with
    {
        DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Absent),
    };

    private static readonly Payload Pulse = Some.GoodSigns with
    {
        DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(Limb.LeftLeg, DistalPulse.Present),
    };

    private static readonly (string, Payload)[] Calm =
    [
        ("11:00", new Payload.CasualtyOpened("Runa")),
        ("11:00", Wound("w1", Limb.LeftLeg)),
        ("11:00", Tight("t1", wound: "w1")),
        ("11:30", Some.GoodSigns),
        ("11:40", Looked(Bleeding.None)),
        ("11:50", new Payload.HelpExpected(Some.At("20:00"), Some.At("19:00"), Some.At("21:00"))),
    ];

    /// <summary>A doubt, and a watch without a break, come before what is overdue, and that before what is not.</summary>
    [Fact]
    public void What_is_doubted_or_watched_without_a_break_comes_before_what_is_overdue()
    {
        DueTask overdue = new(Some.At("09:00"), "signs", null, "", [], true);
        DueTask watch = new(Some.At("12:00"), "watch.left-leg", Limb.LeftLeg, "", [], false) { Until = Some.At("12:15") };
        DueTask doubt = new(Some.At("12:01"), "line-4", null, "", [], false) { IsDoubt = true };
        DueTask nursing = new(Some.At("09:00"), "drink", null, "", [], true) { Group = TaskGroup.Nursing };
        DueTask later = new(Some.At("08:00"), "help", null, "", [], false);
        Assert.Equal([watch, doubt, overdue, nursing, later], DueList.InOrder([later, nursing, overdue, doubt, watch]));
    }

    [Theory]
    [InlineData("signs", "12:30")]
    [InlineData("tourniquet.left-leg", "12:40")]
    [InlineData("decide.left-leg", "12:00")]
    [InlineData("help", "15:50")]
    public void A_task_is_due_an_interval_after_it_was_last_done(string task, string at)
    {
        var due = Due(task, Calm)!;
        Assert.Equal((Some.At(at), false), (due.At, due.Overdue));
    }

    /// <summary>Where two are on the limb already, nobody is told to put a second beside the first.</summary>
    [Fact]
    public void Under_several_tourniquets_one_more_is_asked_for()
    {
        var bleeds = ("11:55", Looked(Bleeding.Active));
        Assert.EndsWith(
            "or add a second tourniquet beside the first",
            Due("tighten.left-leg", [.. Calm, bleeds])!.Text,
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "or add one more beside them",
            Due("tighten.left-leg", [.. Calm, ("11:50", Tight("t2", wound: "w1")), bleeds])!.Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void One_never_done_is_due_since_the_limb_was_tightened()
    {
        var due = Due("pulse-beyond.left-leg", Calm)!;
        Assert.Equal((Some.At("11:00"), true, Limb.LeftLeg), (due.At, due.Overdue, due.Limb));
        Assert.Equal(Some.At("12:45"), Due("pulse-beyond.left-leg", [.. Calm, ("11:45", Pulseless)])!.At);
        Assert.Equal(Some.At("11:00"), Due("signs", [Calm[0], ("11:30", Calm[2].Item2)])!.At);
    }

    [Fact]
    public void Due_this_very_moment_is_not_overdue_yet()
    {
        Assert.False(Due("signs", [.. Calm[..3], ("11:00", Some.GoodSigns), .. Calm[4..]])!.Overdue);
        Assert.True(Due("signs", [.. Calm[..3], ("10:59", Some.GoodSigns), .. Calm[4..]])!.Overdue);
    }

    [Fact]
    public void Within_a_minute_of_its_time_it_is_called_due_now_not_overdue()
    {
        var due = Due("signs", [.. Calm[..3], ("10:59", Some.GoodSigns), .. Calm[4..]])!;
        Assert.StartsWith("now: ", VerdictWords.Of(due, due.At + Duration.FromSeconds(59)), StringComparison.Ordinal);
        Assert.StartsWith("OVERDUE by 1 min", VerdictWords.Of(due, due.At + Duration.FromMinutes(1)), StringComparison.Ordinal);
    }

    [Fact]
    public void Ticked_off_it_counts_as_done()
    {
        Assert.Equal(Some.At("12:58"), Due("signs", [.. Calm, ("11:58", new Payload.TaskDone("signs"))])!.At);
        Assert.Equal(Some.At("12:30"), Due("signs", [.. Calm, ("11:58", new Payload.TaskDone("help"))])!.At);
        Assert.Equal(Some.At("12:30"), Due("signs", [.. Calm, ("12:01", new Payload.TaskDone("signs"))])!.At); // not yet
        // as early as it can have been
        Assert.Equal(Some.At("12:50"), Due("signs", [.. Calm, ("11:50-12:00", new Payload.TaskDone("signs"))])!.At);
        Assert.Equal(Some.At("12:30"), Due("signs", [.. Calm, ("11:50-12:01", new Payload.TaskDone("signs"))])!.At); // perhaps not yet
    }

    [Fact]
    public void Only_a_look_at_this_limbs_wound_checks_its_tourniquet()
    {
        Assert.Equal(
            Some.At("12:40"),
            Due("tourniquet.left-leg", [.. Calm, ("11:55", new Payload.BleedingChecked("w2", Bleeding.None))])!.At
        );
        Assert.Equal(Some.At("12:55"), Due("tourniquet.left-leg", [.. Calm, ("11:55", Tight("t2"))])!.At);
        Assert.Equal(Some.At("12:40"), Due("tourniquet.left-leg", [.. Calm, ("11:55", Tight("t3", Limb.RightLeg))])!.At);
    }

    /// <summary>Asked at 30, 60 and 90 minutes: 11:30, 12:00 and 12:30.</summary>
    [Fact]
    public void The_decision_is_asked_for_anew_and_an_answer_counts_until_the_next_time()
    {
        Instant? Decide(params (string, Payload)[] more) => Due("decide.left-leg", [.. Calm, .. more])?.At;
        Assert.Equal(Some.At("12:00"), Decide());
        Assert.Equal(Some.At("12:30"), Decide(("11:55", Begun())));
        Assert.Equal(Some.At("12:30"), Decide(("11:55", new Payload.TaskDone("decide.left-leg"))));
        Assert.Equal(Some.At("12:00"), Decide(("11:10", new Payload.TaskDone("decide.left-leg"))));
        Assert.Equal(Some.At("12:00"), Decide(("11:55", Begun("w2", "t2"))));
    }

    [Fact]
    public void In_shock_or_when_that_is_not_known_checks_come_closer()
    {
        Assert.Equal(Some.At("12:10"), Due("signs", [.. Calm, ("11:55", Pale)])!.At);
        Assert.Equal(Some.At("12:10"), Due("signs", [Calm[0], Calm[1], Calm[2], ("11:55", new Payload.SignsTaken { HeartRate = 80 })])!.At);
    }

    [Fact]
    public void Signs_that_are_due_again_do_not_make_a_casualty_unstable() =>
        Assert.Equal(Some.At("12:05"), Due("signs", [.. Calm[..3], ("11:05", Some.GoodSigns), .. Calm[4..]])!.At);

    [Fact]
    public void During_an_attempt_on_any_limb_checks_come_closer()
    {
        Assert.Equal(Some.At("11:45"), Due("signs", [.. Calm, ("11:55", Begun())])!.At);
        Assert.Equal(Some.At("11:45"), Due("signs", [.. Calm, ("11:30", Tight("t2", Limb.RightLeg)), ("11:55", Begun())])!.At);
        Assert.Equal(Some.At("12:30"), Due("signs", [.. Calm, ("11:50", Begun()), ("11:55", Ended(AttemptOutcome.Abandoned))])!.At);
    }

    [Theory]
    [InlineData("10:01", "11:45")]
    [InlineData("10:00", "12:30")] // two hours on
    [InlineData("09:00-10:01", "11:45")] // perhaps not two hours
    public void In_the_first_two_hours_after_slackening_checks_come_closer(string slackened, string signs) =>
        Assert.Equal(Some.At(signs), Due("signs", [("08:00", Tight("t1", wound: "w1")), (slackened, Slack("t1")), .. Calm[3..]])!.At);

    [Fact]
    public void One_limb_slackened_lately_beside_one_long_ago_is_enough() =>
        Assert.Equal(
            Some.At("11:45"),
            Due(
                "signs",
                [
                    ("07:00", Tight("t1", wound: "w1")),
                    ("08:00", Slack("t1")),
                    ("09:00", Tight("t2", Limb.RightLeg)),
                    ("11:00", Slack("t2")),
                    .. Calm[3..],
                ]
            )!.At
        );

    [Theory]
    [InlineData("11:55", true)]
    [InlineData("12:00", true)]
    [InlineData("12:01", false)]
    public void Once_care_has_ended_nothing_is_due(string ended, bool none) =>
        Assert.Equal(none, All([.. Calm, (ended, new Payload.CareEnded(CareEnd.HandedOver))]).IsEmpty);

    [Theory]
    [InlineData("11:58", Bleeding.Active, true)]
    [InlineData("11:00", Bleeding.Active, true)] // as it was tightened
    [InlineData("10:59", Bleeding.Active, false)]
    [InlineData("12:01", Bleeding.Active, false)]
    [InlineData("12:00", Bleeding.Active, true)]
    [InlineData("11:58", Bleeding.Oozing, false)]
    public void A_tight_tourniquet_over_a_wound_that_bleeds_is_tightened_at_once(string when, Bleeding seen, bool tighten)
    {
        var due = Due("tighten.left-leg", [.. Calm[..4], (when, Looked(seen))]);
        Assert.Equal(tighten, due is not null);
        Assert.True(
            due is null
                || (due.AtOnce && due.Overdue && due.At == Some.At(when) && due.Text.StartsWith("still bleeding", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Tightened_since_it_need_not_be_again()
    {
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("11:50", Looked(Bleeding.Active)), ("11:55", Tight("t1", wound: "w1"))]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("11:50", Looked(Bleeding.Active)), ("11:55", Looked(Bleeding.None))]));
        Assert.NotNull(Due("tighten.left-leg", [.. Calm, ("11:50", Looked(Bleeding.Active)), ("11:55", Tight("t2", Limb.RightLeg))]));
        Assert.NotNull(Due("tighten.left-leg", [.. Calm, ("11:50", Looked(Bleeding.Active)), ("12:01", Tight("t1"))]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("11:50", new Payload.BleedingChecked("w2", Bleeding.Active))]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("11:50", Looked(Bleeding.Active)), ("12:00", Tight("t1", wound: "w1"))]));
    }

    [Fact]
    public void A_pulse_beyond_a_tight_tourniquet_has_it_tightened_at_once()
    {
        var due = Due("tighten.left-leg", [.. Calm, ("11:58", Pulse)])!;
        Assert.True(due.AtOnce);
        Assert.StartsWith("a pulse below", due.Text, StringComparison.Ordinal);
        Assert.NotNull(Due("tighten.left-leg", [.. Calm, ("12:00", Pulse)]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("12:01", Pulse)]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("10:58", Pulse)]));
        Assert.Null(Due("tighten.left-leg", [.. Calm, ("11:50", Pulse), ("11:55", Pulseless)]));
        Assert.Null(Due("tighten.right-leg", [.. Calm, ("11:00", Tight("t2", Limb.RightLeg)), ("11:58", Pulse)]));
    }

    [Fact]
    public void What_must_be_done_at_once_comes_first_then_by_time_then_by_name()
    {
        DueTask Of(string at, string task, bool atOnce = false) => new(Some.At(at), task, null, task, [], false) { AtOnce = atOnce };
        Assert.Equal(
            ["z", "a", "b", "c"],
            DueList.InOrder([Of("11:00", "b"), Of("11:30", "c"), Of("11:00", "a"), Of("12:00", "z", true)]).Select(d => d.Task)
        );
    }

    [Fact]
    public void Watching_and_tightening_are_done_by_what_was_seen_and_a_tick_does_not_count()
    {
        (string, Payload)[] loose = [("09:00", Tight("t1", wound: "w1")), ("11:30", Slack("t1"))];
        var watch = Due("watch.left-leg", loose)!;
        Assert.True(watch.BySeeing);
        Assert.Equal(watch, Due("watch.left-leg", [.. loose, ("11:55", new Payload.TaskDone("watch.left-leg"))]));
        Assert.True(Due("tighten.left-leg", [.. Calm, ("11:58", Looked(Bleeding.Active))])!.BySeeing);
        Assert.False(Due("signs", Calm)!.BySeeing);
    }

    [Fact]
    public void What_the_decision_asks_for_next_comes_before_what_is_overdue()
    {
        var due = All(Calm);
        Assert.Equal("next.left-leg", due[0].Task);
        Assert.Equal(Judge.At(Written(Calm), ShippedRules.Book, Case.Now).Limbs.Single().Act.Text, due[0].Text);
        Assert.Contains(due, d => d.Overdue);
    }

    [Fact]
    public void A_wound_nobody_has_looked_at_since_it_was_found_is_asked_about_first()
    {
        var found = new Payload.WoundFound("w5", null, BodyRegion.Neck, WoundNature.Bleeding);
        var asked = All([.. Calm, ("11:50", found)])[0];
        Assert.Equal(("bleeding.w5", false), (asked.Task, asked.AtOnce));
        Assert.StartsWith("Does it bleed now, the neck?", asked.Text, StringComparison.Ordinal);
        Assert.Null(Due("bleeding.w5", [.. Calm, ("11:50", found), ("11:55", new Payload.BleedingChecked("w5", Bleeding.None))]));
        var bleeds = All([.. Calm, ("11:50", found), ("11:55", new Payload.BleedingChecked("w5", Bleeding.Active))])[0];
        Assert.Equal(("bleeding.w5", true), (bleeds.Task, bleeds.AtOnce));
        Assert.Contains("put nothing round the neck", bleeds.Text, StringComparison.Ordinal);
    }

    private static Payload.BleedingChecked Looked(Bleeding bleeding) => new("w1", bleeding);

    private static DueTask? Due(string task, (string, Payload)[] said) => All(said).SingleOrDefault(d => d.Task == task);

    private static ImmutableArray<DueTask> All((string, Payload)[] said) => Judge.At(Written(said), ShippedRules.Book, Case.Now).Due;
}
