namespace Farhold.Tests.Verdicts;

/// <summary>What advice allows, for how long, and when nobody counts as reached (design).</summary>
public class AdviceTests
{
    /// <summary>Past its first two hours: nothing but advice, or that nobody can be reached, is missing.</summary>
    private static readonly Case Late = Case.Well.TightFor("04:00");

    [Theory]
    [InlineData("01:00", Verdict.Attempt)]
    [InlineData("01:01", Verdict.CheckFirst)]
    public void A_try_that_reached_nobody_counts_for_an_hour(string ago, Verdict verdict) =>
        Assert.Equal(verdict, Late.Unreached(ago).Verdict);

    [Theory]
    [InlineData("00:29", Verdict.CheckFirst)]
    [InlineData("00:30", Verdict.Attempt)]
    public void Reached_but_without_an_answer_for_half_an_hour_counts_as_not_reached(string ago, Verdict verdict) =>
        Assert.Equal(verdict, Late.And(ago, new Payload.ContactTried(true)).Verdict);

    [Theory]
    [InlineData("00:31", Verdict.Attempt)]
    [InlineData("00:29", Verdict.CheckFirst)]
    [InlineData("01:01", Verdict.CheckFirst)]
    public void Calling_again_does_not_begin_the_wait_for_an_answer_afresh(string first, Verdict verdict)
    {
        var calling = Late.And(first, new Payload.ContactTried(true))
            .And("00:20", new Payload.ContactTried(true))
            .And("00:10", new Payload.ContactTried(true));
        Assert.Equal(verdict, calling.Verdict);
        Assert.Equal(Verdict.CheckFirst, calling.And("00:15", new Payload.AdviceReceived("duty doctor", "wait, I ask somebody")).Verdict);
    }

    [Fact]
    public void Whoever_answered_was_reached()
    {
        var answered = Late.And("00:40", new Payload.ContactTried(true))
            .And("00:35", new Payload.AdviceReceived("duty doctor", "keep warm"));
        Assert.Equal(Verdict.CheckFirst, answered.Verdict);
        Assert.Equal(Verdict.Attempt, answered.Unreached().Verdict); // and lost since
    }

    [Fact]
    public void Reached_at_last_outweighs_the_tries_before() =>
        Assert.Equal(Verdict.CheckFirst, Late.Unreached("00:30").And("00:10", new Payload.ContactTried(true)).Verdict);

    [Theory]
    [InlineData("01:59:59", Verdict.Attempt)]
    [InlineData("02:00:00", Verdict.CheckFirst)]
    public void What_it_allows_it_allows_for_two_hours(string ago, Verdict verdict) => Assert.Equal(verdict, Late.Advised(ago).Verdict);

    [Theory]
    [InlineData("03:00", "12:01", Verdict.Attempt)]
    [InlineData("03:00", "12:00", Verdict.CheckFirst)]
    [InlineData("00:10", "11:59", Verdict.CheckFirst)]
    public void Or_until_the_time_it_names(string ago, string until, Verdict verdict) =>
        Assert.Equal(
            verdict,
            Late.And(ago, new Payload.AdviceReceived("duty doctor", "go ahead", ["attempt"], Until: Some.At(until))).Verdict
        );

    /// <summary>It may set limits that only a person can read.</summary>
    [Fact]
    public void The_newest_words_that_allow_an_attempt_are_read_before_it()
    {
        var limited = Case
            .Well.Advised("00:30")
            .And("00:05", new Payload.AdviceReceived("Dr Vann", "only while the pulse is under 100", ["attempt"]));
        Assert.Equal(["Keep to what the adviser said. Dr Vann: only while the pulse is under 100"], limited.Limb.Act.Cautions);
        Assert.Empty(Case.Well.And("00:05", new Payload.AdviceReceived("Dr Vann", "keep warm")).Limb.Act.Cautions);
    }

    [Fact]
    public void Advice_that_names_no_attempt_allows_none() =>
        Assert.Equal(
            Verdict.CheckFirst,
            Late.And(
                "00:05",
                new Payload.AdviceReceived("duty doctor", "drink", ["fluids"]),
                new Payload.AdviceReceived("duty doctor", "keep warm")
            ).Verdict
        );

    [Fact]
    public void An_express_no_forbids_at_any_time_and_stands()
    {
        Assert.Equal(Verdict.LeaveOn, Case.Well.Refused().Verdict);
        var no = Late.Refused("03:50");
        Assert.Equal(Verdict.LeaveOn, no.Verdict);
        Assert.StartsWith("Leave it on: the no stands", no.Limb.Act.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_no_gives_way_to_newer_advice_or_to_its_end()
    {
        Assert.Equal(Verdict.Attempt, Late.Refused("01:10").Advised("00:10").Verdict);
        Assert.Equal(Verdict.LeaveOn, Late.Advised("01:10").Refused("00:10").Verdict);
        Assert.Equal(Verdict.CheckFirst, Late.Refused("01:10", until: Case.Now).Verdict);
        Assert.Equal(Verdict.LeaveOn, Late.Refused("01:10", until: Some.At("12:01")).Verdict);
    }

    [Fact]
    public void Not_reached_never_outweighs_a_no() => Assert.Equal(Verdict.LeaveOn, Late.Refused("01:10").Unreached("00:05").Verdict);

    [Theory]
    [InlineData("strong sign")]
    [InlineData("amputation")]
    [InlineData("active bleeding")]
    [InlineData("six hours")]
    [InlineData("two soft signs")]
    [InlineData("nobody to watch")]
    public void It_never_lifts(string what)
    {
        var forbidden = what switch
        {
            "strong sign" => Case.Well.Signs(s => s with { RadialPulse = RadialPulse.Weak }),
            "amputation" => Case.Well.With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Amputation), "00:39"),
            "active bleeding" => Case.Well.With("bleeding", new Payload.BleedingChecked("w1", Bleeding.Active)),
            "six hours" => Case.Well.TightFor("06:00"),
            "two soft signs" => Case.Well.Signs(s => s with { Pale = true, Cool = true }),
            _ => Case.Well.With("watch", new Payload.WatchStated(false)),
        };
        Assert.Equal(Verdict.LeaveOn, forbidden.Advised("00:01").Verdict);
    }

    [Fact]
    public void It_never_lifts_a_doubt()
    {
        var record = Case.Well.Advised("00:01").Record;
        record.Add(Gens.Damage(record.Entries.Last()));
        Assert.Equal(Verdict.CheckFirst, Judge.At(record, ShippedRules.Book, Case.Now).Limbs.Single().Verdict);
    }
}
