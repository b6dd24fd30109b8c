using System.Collections.Immutable;
using static Farhold.Tests.Story;

namespace Farhold.Tests.Limbs;

/// <summary>What the entries of a record say of attempts on a limb; all read at 12:00.</summary>
public class AttemptTests
{
    private static readonly (string, Payload) On = ("08:00", Tight("t1", wound: "w1"));

    [Fact]
    public void Begun_and_not_ended_it_is_under_way() =>
        Assert.Equal([new("w1", "t1", When("09:00"), null, AttemptResult.UnderWay)], Told(On, ("09:00", Begun())));

    [Theory]
    [InlineData(AttemptOutcome.Held, AttemptResult.Held)]
    [InlineData(AttemptOutcome.Bled, AttemptResult.Bled)]
    [InlineData(AttemptOutcome.Abandoned, AttemptResult.Abandoned)]
    public void Ended_it_has_the_outcome_written_down(AttemptOutcome outcome, AttemptResult result) =>
        Assert.Equal([new("w1", "t1", When("09:00"), When("09:30"), result)], Told(On, ("09:00", Begun()), ("09:30", Ended(outcome))));

    [Fact]
    public void Begun_or_ended_this_very_moment_counts()
    {
        Assert.Equal(AttemptResult.UnderWay, Assert.Single(Told(On, ("12:00", Begun()))).Result);
        Assert.Equal(AttemptResult.Held, Assert.Single(Told(On, ("09:00", Begun()), ("12:00", Ended(AttemptOutcome.Held)))).Result);
        Assert.Empty(Told(On, ("12:01", Begun())));
        Assert.Equal(AttemptResult.UnderWay, Assert.Single(Told(On, ("09:00", Begun()), ("12:01", Ended(AttemptOutcome.Held)))).Result);
    }

    [Fact]
    public void Each_end_goes_with_the_beginning_before_it()
    {
        var told = Told(
            On,
            ("09:00", Begun()),
            ("09:30", Ended(AttemptOutcome.Bled)),
            ("10:00", Begun()),
            ("10:30", Ended(AttemptOutcome.Abandoned)),
            ("11:00", Begun())
        );
        Assert.Equal(
            [
                new("w1", "t1", When("09:00"), When("09:30"), AttemptResult.Bled),
                new("w1", "t1", When("10:00"), When("10:30"), AttemptResult.Abandoned),
                new("w1", "t1", When("11:00"), null, AttemptResult.UnderWay),
            ],
            told
        );
    }

    [Fact]
    public void An_end_as_the_next_begins_is_not_the_first_ones()
    {
        var told = Told(On, ("09:00", Begun()), ("10:00", Begun()), ("10:00", Ended(AttemptOutcome.Held)));
        Assert.Equal([AttemptResult.UnderWay, AttemptResult.Held], told.Select(a => a.Result));
    }

    [Fact]
    public void An_end_before_any_beginning_is_an_attempt_of_its_own_and_stands_in_order()
    {
        var told = Told(On, ("08:30", Ended(AttemptOutcome.Bled)), ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Held)));
        Assert.Equal(
            [
                new("w1", "t1", When("08:30"), When("08:30"), AttemptResult.Bled),
                new("w1", "t1", When("09:00"), When("09:30"), AttemptResult.Held),
            ],
            told
        );
    }

    [Fact]
    public void Ended_at_the_instant_it_began_it_is_one_attempt() =>
        Assert.Equal(
            AttemptResult.Abandoned,
            Assert.Single(Told(On, ("09:00", Begun()), ("09:00", Ended(AttemptOutcome.Abandoned)))).Result
        );

    [Fact]
    public void Tightened_again_after_one_that_held_it_bled_from_then()
    {
        var told = Assert.Single(Told(On, ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Held)), ("11:00", Tight("t1"))));
        Assert.Equal((AttemptResult.Bled, When("11:00")), (told.Result, told.Ended!.Value));
    }

    [Fact]
    public void Tightened_again_during_one_that_nobody_ended_it_bled()
    {
        var told = Assert.Single(Told(On, ("09:00", Begun()), ("09:20", Tight("t2"))));
        Assert.Equal((AttemptResult.Bled, When("09:20")), (told.Result, told.Ended!.Value));
    }

    [Fact]
    public void Written_down_as_bled_it_ended_when_that_was_written() =>
        Assert.Equal(
            When("09:30"),
            Assert.Single(Told(On, ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Bled)), ("09:31", Tight("t1")))).Ended
        );

    [Fact]
    public void Given_up_it_did_not_bleed_though_the_limb_was_tightened_again()
    {
        var told = Assert.Single(Told(On, ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Abandoned)), ("09:31", Tight("t1"))));
        Assert.Equal((AttemptResult.Abandoned, When("09:30")), (told.Result, told.Ended!.Value));
    }

    [Fact]
    public void Tightened_at_the_instant_it_began_or_before_says_nothing_of_it()
    {
        Assert.Equal(AttemptResult.UnderWay, Assert.Single(Told(On, ("09:00", Tight("t1")), ("09:00", Begun()))).Result);
        Assert.Equal(
            AttemptResult.Held,
            Assert.Single(Told(On, ("09:00", Tight("t2")), ("10:00", Begun()), ("10:30", Ended(AttemptOutcome.Held)))).Result
        );
    }

    [Fact]
    public void Tightened_once_the_next_attempt_has_begun_says_nothing_of_the_one_before()
    {
        var told = Told(On, ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Held)), ("10:00", Begun()), ("11:00", Tight("t1")));
        Assert.Equal([AttemptResult.Held, AttemptResult.Bled], told.Select(a => a.Result));
        told = Told(On, ("09:00", Begun()), ("09:30", Ended(AttemptOutcome.Held)), ("10:00", Begun()), ("10:00", Tight("t1")));
        Assert.Equal([AttemptResult.Held, AttemptResult.UnderWay], told.Select(a => a.Result));
    }

    [Fact]
    public void A_tightening_later_than_now_says_nothing_yet() =>
        Assert.Equal(AttemptResult.UnderWay, Assert.Single(Told(On, ("09:00", Begun()), ("12:01", Tight("t1")))).Result);

    [Fact]
    public void Tightening_another_limb_says_nothing() =>
        Assert.Equal(AttemptResult.UnderWay, Assert.Single(Told(On, ("09:00", Begun()), ("09:20", Tight("t2", Limb.RightLeg)))).Result);

    [Theory]
    [InlineData("w1", "t1")]
    [InlineData("w1", "other")]
    [InlineData("other", "t1")]
    public void It_is_of_the_limb_by_its_wound_or_by_its_tourniquet(string wound, string tourniquet)
    {
        Assert.Single(Told(On, ("09:00", Begun(wound, tourniquet))));
        Assert.Single(Told(On, ("09:00", Ended(AttemptOutcome.Bled, wound, tourniquet))));
        Assert.Empty(
            Attempt.On(Limb.RightLeg, Of(On, ("08:00", Tight("t9", Limb.RightLeg)), ("09:00", Begun(wound, tourniquet))), Case.Now)
        );
    }

    [Fact]
    public void One_at_another_limbs_wound_and_tourniquet_is_not_of_this_limb() =>
        Assert.Empty(Told(On, ("09:00", Begun("w2", "t2")), ("09:30", Ended(AttemptOutcome.Bled, "w2", "t2"))));

    private static ImmutableArray<Attempt> Told(params (string, Payload)[] said) => Attempt.On(Limb.LeftLeg, Of(said), Case.Now);
}
