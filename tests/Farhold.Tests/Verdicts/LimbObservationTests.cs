using static Farhold.Tests.Story;

namespace Farhold.Tests.Verdicts;

/// <summary>
/// The watch over a slackened limb: 15 min without a break, every 2 min to one hour, every 15 min to two, then hourly; 5 min without a
/// break after every move (design).
/// </summary>
public class WatchingTests
{
    [Theory]
    [InlineData("11:50", "12:05")]
    [InlineData("11:46", "12:01")]
    [InlineData("11:40-11:50", "12:05")] // unbroken from when it surely was loose
    public void At_first_the_wound_is_watched_without_a_break(string slackened, string until)
    {
        var due = Due(slackened)!;
        Assert.Equal((Case.Now, Some.At(until), false), (due.At, due.Until, due.Overdue));
        Assert.StartsWith("watch the wound without a break", due.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("11:45", "11:59", "12:01")] // a quarter of an hour on: every 2 min
    [InlineData("11:01", "11:59", "12:01")]
    [InlineData("11:00", "11:56", "12:11")] // one hour: every 15
    [InlineData("10:01", "11:56", "12:11")]
    [InlineData("10:00", "11:56", "12:56")] // two hours: every hour
    [InlineData("11:30", "11:00", "11:32")] // not looked since: from the slackening
    [InlineData("10:50-11:10", "11:51", "11:53")] // perhaps only fifty minutes on
    [InlineData("11:30", "12:00", "12:02")]
    [InlineData("11:30", "12:01", "11:32")] // a look to come
    public void Then_every_so_often_after_the_last_look(string slackened, string looked, string next)
    {
        var due = Due(slackened, (looked, new Payload.BleedingChecked("w1", Bleeding.None)))!;
        Assert.Equal((Some.At(next), Some.At(next) < Case.Now), (due.At, due.Overdue));
        Assert.Null(due.Until);
        Assert.Equal(ShippedProtocol.Protocol.Watch.Text, due.Text);
    }

    [Theory]
    [InlineData("11:57", "12:02")]
    [InlineData("11:56", "12:01")]
    [InlineData("11:55", null)]
    [InlineData("11:50-11:57", "12:02")] // perhaps only three minutes ago
    [InlineData("10:59", null)] // before it was loosened
    [InlineData("12:01", null)] // not moved yet
    public void After_every_move_it_is_watched_without_a_break_for_five_minutes(string moved, string? until) =>
        Assert.Equal(
            until is null ? null : Some.At(until),
            Due("11:00", (moved, new Payload.CasualtyMoved(Movement.Turned, MovePhase.Moved)))!.Until
        );

    [Fact]
    public void A_move_ahead_is_no_move_yet() =>
        Assert.Null(Due("11:00", ("11:58", new Payload.CasualtyMoved(Movement.Turned, MovePhase.AboutTo)))!.Until);

    [Fact]
    public void Due_this_very_moment_is_not_overdue() =>
        Assert.False(Due("11:00", ("11:45", new Payload.BleedingChecked("w1", Bleeding.None)))!.Overdue);

    [Fact]
    public void Looks_at_another_limbs_wound_do_not_count() =>
        Assert.Equal(Some.At("11:32"), Due("11:30", ("11:55", new Payload.BleedingChecked("w2", Bleeding.None)))!.At);

    [Theory]
    [InlineData("11:40", Bleeding.None, Truth.NotMet)]
    [InlineData("11:40", Bleeding.Oozing, Truth.NotMet)]
    [InlineData("11:40", Bleeding.Active, Truth.Met)]
    [InlineData("11:30", Bleeding.Active, Truth.Met)] // as it was slackened
    [InlineData("12:00", Bleeding.Active, Truth.Met)]
    [InlineData("11:29", Bleeding.Active, Truth.Unknown)] // before; nobody has looked since
    [InlineData("12:01", Bleeding.Active, Truth.Unknown)]
    public void Whether_it_bleeds_is_told_by_the_last_look_since(string looked, Bleeding seen, Truth bleeding)
    {
        var limb = Observed("11:30", (looked, new Payload.BleedingChecked("w1", seen)));
        Assert.Equal(bleeding, limb.Bleeding);
        Assert.Equal(bleeding == Truth.Met ? When(looked) : null, limb.BledAgain);
    }

    [Fact]
    public void Of_several_looks_at_a_wound_the_last_counts_and_of_several_wounds_the_worst()
    {
        Assert.Equal(
            Truth.NotMet,
            Observed(
                "11:30",
                ("11:40", new Payload.BleedingChecked("w1", Bleeding.Active)),
                ("11:50", new Payload.BleedingChecked("w1", Bleeding.None))
            ).Bleeding
        );
        var two = Observed(
            "11:30",
            ("10:10", Tight("t2", wound: "w2")),
            ("11:00", Slack("t2")),
            ("11:40", new Payload.BleedingChecked("w2", Bleeding.Active)),
            ("11:50", new Payload.BleedingChecked("w1", Bleeding.None))
        );
        Assert.Equal((Truth.Met, When("11:40")), (two.Bleeding, two.BledAgain!.Value));
    }

    [Fact]
    public void Bleeding_again_is_tightened_at_once()
    {
        var due = Judged("11:30", ("11:40", new Payload.BleedingChecked("w1", Bleeding.Active))).Due[0];
        Assert.Equal(("tighten.left-leg", Some.At("11:40"), true), (due.Task, due.At, due.AtOnce));
        Assert.StartsWith("bleeding again", due.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_several_tourniquets_the_watch_counts_from_the_last_to_give_way() =>
        Assert.Equal(When("11:30"), Observed("11:30", ("10:10", Tight("t2", wound: "w1")), ("11:00", Slack("t2"))).Loosened);

    private static DueTask? Due(string slackened, params (string, Payload)[] more) =>
        Judged(slackened, more).Due.SingleOrDefault(d => d.Task == "watch.left-leg");

    private static ObservedLimb Observed(string slackened, params (string, Payload)[] more) => Judged(slackened, more).Observed.Single();

    private static Judgement Judged(string slackened, params (string, Payload)[] more) =>
        Judge.At(Written([("09:00", Tight("t1", wound: "w1")), (slackened, Slack("t1")), .. more]), ShippedRules.Book, Case.Now);
}
