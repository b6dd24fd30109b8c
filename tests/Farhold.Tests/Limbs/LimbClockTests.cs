using static Farhold.Tests.Story;

namespace Farhold.Tests.Limbs;

/// <summary>Clocks worked out by hand; all are read at 12:00.</summary>
public class LimbClockTests
{
    [Fact]
    public void A_limb_without_a_tourniquet_has_no_clock()
    {
        Assert.Null(At(("10:00", Tight("t1", Limb.RightLeg))));
        Assert.Null(At(("12:01", Tight("t1"))));
    }

    [Fact]
    public void One_tightened_this_very_moment_has()
    {
        var clock = At(("12:00", Tight("t1")))!;
        Assert.Equal(("0:00 0:00", Truth.Met), (Told(clock.SinceFirstTightened), clock.Tight));
    }

    [Fact]
    public void Slackened_and_tightened_again_it_counts_from_the_first_and_adds_what_was_without_flow()
    {
        var clock = At(("08:00", Tight("t1")), ("09:00", Slack("t1")), ("11:30", Tight("t1")))!;
        Assert.Equal("4:00 4:00", Told(clock.SinceFirstTightened));
        Assert.Equal("1:30 1:30", Told(clock.Occluded));
        Assert.Equal("0:30 0:30", Told(clock.CurrentStretch));
        Assert.Equal([new(Some.At("08:00"), Some.At("09:00"), Truth.Met), new(Some.At("11:30"), Case.Now, Truth.Met)], clock.Stretches);
    }

    [Fact]
    public void Two_side_by_side_count_once_and_the_second_begins_no_new_stretch()
    {
        var clock = At(("08:00", Tight("t1")), ("09:00", Tight("t2")), ("10:00", Slack("t1")))!;
        Assert.Equal("4:00 4:00", Told(clock.Occluded));
        Assert.Equal("4:00 4:00", Told(clock.CurrentStretch));
        Assert.Equal(["t2"], clock.Tourniquets);
        Assert.Equal([new(Some.At("08:00"), Case.Now, Truth.Met)], clock.Stretches);
    }

    [Fact]
    public void While_one_is_tight_only_the_tight_ones_are_named_and_then_those_that_lie_there()
    {
        Assert.Equal(["t1", "t2"], At(("08:00", Tight("t1")), ("09:00", Tight("t2")))!.Tourniquets);
        Assert.Equal(["t1"], At(("08:00", Tight("t1")), ("09:00", Tight("t2")), ("10:00", Off("t2")))!.Tourniquets);
        var loose = At(("08:00", Tight("t1")), ("09:00", Tight("t2")), ("10:00", Off("t2")), ("10:30", Slack("t1")))!;
        Assert.Equal(["t1"], loose.Tourniquets);
        Assert.Equal((Truth.NotMet, "0:00 0:00", "2:30 2:30"), (loose.Tight, Told(loose.CurrentStretch), Told(loose.Occluded)));
    }

    [Fact]
    public void Tightened_between_two_times_it_is_surely_so_from_the_later()
    {
        var clock = At(("08:00-09:00", Tight("t1")))!;
        Assert.Equal("3:00 4:00", Told(clock.SinceFirstTightened));
        Assert.Equal("3:00 4:00", Told(clock.Occluded));
        Assert.Equal("3:00 4:00", Told(clock.CurrentStretch));
        Assert.Equal([new(Some.At("08:00"), Some.At("09:00"), Truth.Unknown), new(Some.At("09:00"), Case.Now, Truth.Met)], clock.Stretches);
    }

    [Fact]
    public void Of_two_tightened_between_times_the_first_counts_from_whichever_may_be_earliest()
    {
        var clock = At(("08:00-11:00", Tight("t1")), ("09:00-09:30", Tight("t2")))!;
        Assert.Equal(When("08:00-09:30"), clock.FirstTightened);
        Assert.Equal("2:30 4:00", Told(clock.Occluded));
    }

    [Fact]
    public void Slackened_between_two_times_it_may_be_tight_in_between()
    {
        var clock = At(("08:00", Tight("t1")), ("11:00-12:30", Slack("t1")))!;
        Assert.Equal((Truth.Unknown, "3:00 4:00", "0:00 4:00"), (clock.Tight, Told(clock.Occluded), Told(clock.CurrentStretch)));
    }

    [Fact]
    public void Which_came_first_of_two_things_at_one_instant_is_not_known()
    {
        var clock = At(("08:00", Tight("t1")), ("10:00", Slack("t1")), ("10:00", Tight("t1")))!;
        Assert.Equal((Truth.Unknown, "2:00 4:00"), (clock.Tight, Told(clock.Occluded)));
    }

    [Fact]
    public void A_slackening_that_surely_lies_between_two_tightenings_leaves_it_tight()
    {
        var clock = At(("08:00", Tight("t1")), ("09:00-09:30", Slack("t1")), ("10:00-10:30", Tight("t1")))!;
        Assert.Equal(Truth.Met, clock.Tight);
        Assert.Equal("2:30 3:30", Told(clock.Occluded));
        Assert.Equal("1:30 2:00", Told(clock.CurrentStretch));
    }

    [Fact]
    public void What_is_said_of_later_than_now_changes_nothing()
    {
        var clock = At(("08:00", Tight("t1")), ("12:01", Slack("t1")), ("12:02", Tight("t2")))!;
        Assert.Equal((Truth.Met, "4:00 4:00"), (clock.Tight, Told(clock.Occluded)));
        Assert.Equal(["t1"], clock.Tourniquets);
    }

    [Fact]
    public void Removed_and_tightened_again_it_lies_on_the_limb_once_it_is_slackened()
    {
        var clock = At(("08:00", Tight("t1")), ("09:00", Off("t1")), ("10:00", Tight("t1")), ("11:00", Slack("t1")))!;
        Assert.Equal((Truth.NotMet, "2:00 2:00"), (clock.Tight, Told(clock.Occluded)));
        Assert.Equal(["t1"], clock.Tourniquets);
    }

    [Theory]
    [InlineData("10:45", "1:30")] // the other leg's: never slackened here
    [InlineData("11:00", "1:30")] // at the same instant: this leg's clock goes on, the worse side
    [InlineData("11:10", "0:30")] // this leg's
    [InlineData("10:45-11:30", "1:30")] // either's
    public void A_loosening_is_of_the_limb_it_surely_was_on(string moved, string occluded)
    {
        var clock = At(("10:30", Tight("t1")), ("11:00", Slack("t1")), (moved, Tight("t1", Limb.RightLeg)))!;
        Assert.Equal($"{occluded} {occluded}", Told(clock.Occluded));
    }

    [Fact]
    public void Back_on_the_first_limb_the_next_loosening_is_there_again()
    {
        var clock = At(
            ("08:00", Tight("t1")),
            ("08:30", Slack("t1")),
            ("09:00", Tight("t1", Limb.RightLeg)),
            ("09:30", Slack("t1")),
            ("10:00", Tight("t1")),
            ("11:00", Slack("t1"))
        )!;
        Assert.Equal((Truth.NotMet, "1:30 1:30"), (clock.Tight, Told(clock.Occluded)));
    }

    private static LimbClock? At(params (string, Payload)[] said) => LimbClock.Of(Limb.LeftLeg, Of(said), Case.Now);

    private static string Told(Elapsed length) => $"{Short(length.Min)} {Short(length.Max)}";
}
