namespace Farhold.Tests.Verdicts;

/// <summary>Every criterion of the shipped protocol, driven to each of its states by a record, and at its thresholds.</summary>
public class CriteriaTests
{
    /// <summary>Met, not met, unknown; null where the state can't be (what is known always).</summary>
    private static readonly Dictionary<string, (Case? Met, Case? NotMet, Case? Unknown)> Reached = new()
    {
        ["limit.time"] = (Case.Well.TightFor("06:00"), Case.Well, null),
        ["wound.amputation"] = (
            Case.Well.With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.PartialAmputation)), Case.Well, Case.Well.With("wound", null)),
        ["shock.heart-rate"] = (Case.Well.Signs(s => s with { HeartRate = 121 }), Case.Well, Case.Well.Signs(s => s with { HeartRate = null })),
        ["shock.breath-rate"] = (Case.Well.Signs(s => s with { BreathRate = 31 }), Case.Well, Case.Well.Signs(s => s with { BreathRate = null })),
        ["shock.mental"] = (Case.Well.Signs(s => s with { Mental = Mental.Voice }), Case.Well, Case.Well.Signs(s => s with { Mental = null })),
        ["shock.dizzy"] = (Case.Well.Signs(s => s with { Dizzy = true }), Case.Well, Case.Well.Signs(s => s with { Dizzy = null })),
        ["shock.pale"] = (Case.Well.Signs(s => s with { Pale = true }), Case.Well, Case.Well.Signs(s => s with { Pale = null })),
        ["shock.cool"] = (Case.Well.Signs(s => s with { Cool = true }), Case.Well, Case.Well.Signs(s => s with { Cool = null })),
        ["shock.clammy"] = (Case.Well.Signs(s => s with { Clammy = true }), Case.Well, Case.Well.Signs(s => s with { Clammy = null })),
        ["shock.radial-pulse"] = (Case.Well.Signs(s => s with { RadialPulse = RadialPulse.Weak }), Case.Well, Case.Well.Signs(s => s with { RadialPulse = null })),
        ["shock.systolic"] = (Case.Well.Signs(s => s with { Systolic = 99 }), Case.Well, Case.Well.Signs(s => s with { Systolic = null })),
        ["bleeding.active"] = (Case.Well.With("bleeding", new Payload.BleedingChecked("w1", Bleeding.Active)), Case.Well, Case.Well.With("bleeding", null)),
        ["attempt.bled"] = (Case.Well.Tried("00:30", "00:20", AttemptOutcome.Bled), Case.Well, null),
        ["attempt.never-again"] = (
            Case.Well.Tried("00:35", "00:30", AttemptOutcome.Bled).Tried("00:25", "00:20", AttemptOutcome.Bled).Advised(), Case.Well, null),
        ["watch.able"] = (Case.Well, Case.Well.With("watch", new Payload.WatchStated(false)), Case.Well.With("watch", null)),
        ["materials.packing"] = (Case.Well,
            Case.Well.With("gauze", new Payload.SuppliesStated("plain-gauze", 0))
                .And("00:04", new Payload.SuppliesStated("cloth", 0)).And("00:04", new Payload.SuppliesStated("haemostatic-gauze", 0)),
            Case.Well.With("gauze", new Payload.SuppliesStated("plain-gauze", 0))),
        ["materials.dressing"] = (Case.Well, Case.Well.With("dressing", new Payload.SuppliesStated("pressure-dressing", 0)), Case.Well.With("dressing", null)),
        ["late.oversight"] = (Case.Well.TightFor("02:00").Advised(),
            Case.Well.TightFor("02:00").And("00:05", new Payload.AdviceReceived("duty doctor", "wait", [])), Case.Well.TightFor("02:00")),
        ["record.whole"] = (Case.Well, null, null),
        ["help.soon"] = (Case.Well.HelpIn("02:00"), Case.Well.HelpIn("02:01"), Case.Well.With("help", null)),
    };

    public static TheoryData<string> Ids => [.. ShippedProtocol.Protocol.Criteria.Select(c => c.Id)];

    [Theory, MemberData(nameof(Ids))]
    public void A_record_brings_every_criterion_to_each_of_its_states(string id)
    {
        var (met, notMet, unknown) = Reached[id];
        if (met is not null)
            Assert.Equal(Truth.Met, met.State(id));
        if (notMet is not null)
            Assert.Equal(Truth.NotMet, notMet.State(id));
        if (unknown is not null)
            Assert.Equal(Truth.Unknown, unknown.State(id));
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_criterion_that_is_unknown_asks_for_what_it_needs(string id)
    {
        if (Reached[id].Unknown is not { } unknown)
            return;
        Assert.Equal(Verdict.CheckFirst, unknown.Verdict);
        var asked = ShippedProtocol.Protocol.Criteria.Single(c => c.Id == id).Condition.Inputs;
        Assert.NotEmpty(unknown.Limb.CheckFirst.Intersect(asked));
    }

    /// <summary>Freshness of the shipped protocol: fifteen minutes for signs, half an hour for the wound, an hour for the watch,
    /// four for the time of help (design).</summary>
    [Theory]
    [InlineData("signs", "shock.heart-rate", "00:15", "00:16")]
    [InlineData("bleeding", "bleeding.active", "00:30", "00:31")]
    [InlineData("watch", "watch.able", "01:00", "01:01")]
    [InlineData("help", "help.soon", "04:00", "04:01")]
    public void What_was_seen_too_long_ago_is_unknown(string part, string id, string fresh, string stale)
    {
        Payload what = part switch
        {
            "signs" => Some.GoodSigns,
            "bleeding" => new Payload.BleedingChecked("w1", Bleeding.None),
            "watch" => new Payload.WatchStated(true),
            _ => new Payload.HelpExpected(Case.Now, null, Case.Now + Duration.FromHours(10)),
        };
        Assert.NotEqual(Truth.Unknown, Case.Well.With(part, what, fresh).State(id));
        Assert.Equal(Truth.Unknown, Case.Well.With(part, what, stale).State(id));
    }

    /// <summary>Adults: common practice (over 120 a minute, over 30 a minute); systolic below 100 JTS 2019, from 65 years below 110
    /// ACS field triage 2021 (both from memory, S3). Children: PALS card 2015/2020 (read, section 2.7), the upper ends of the
    /// normal awake ranges and 70 + 2 × age; infants of a month and more.</summary>
    [Theory]
    [InlineData("heartRate", 34, 120, 121)]
    [InlineData("breathRate", 34, 30, 31)]
    [InlineData("systolic", 34, 100, 99)]
    [InlineData("systolic", 64, 100, 99)]
    [InlineData("systolic", 65, 110, 109)]
    [InlineData("heartRate", 0.5, 180, 181)]
    [InlineData("heartRate", 1, 140, 141)]
    [InlineData("heartRate", 2.9, 140, 141)]
    [InlineData("heartRate", 3, 120, 121)]
    [InlineData("heartRate", 6, 118, 119)]
    [InlineData("heartRate", 11.9, 118, 119)]
    [InlineData("heartRate", 12, 100, 101)]
    [InlineData("heartRate", 16, 120, 121)]
    [InlineData("breathRate", 0.5, 53, 54)]
    [InlineData("breathRate", 1, 37, 38)]
    [InlineData("breathRate", 3, 28, 29)]
    [InlineData("breathRate", 6, 25, 26)]
    [InlineData("breathRate", 12, 20, 21)]
    [InlineData("breathRate", 16, 30, 31)]
    [InlineData("systolic", 0.5, 70, 69)]
    [InlineData("systolic", 1, 72, 71)]
    [InlineData("systolic", 2, 74, 73)]
    [InlineData("systolic", 3, 76, 75)]
    [InlineData("systolic", 5, 80, 79)]
    [InlineData("systolic", 7, 84, 83)]
    [InlineData("systolic", 9, 88, 87)]
    [InlineData("systolic", 10, 90, 89)]
    [InlineData("systolic", 15.9, 90, 89)]
    [InlineData("systolic", 16, 100, 99)]
    public void The_last_value_without_shock_and_the_first_with_it(string sign, double age, double without, double with)
    {
        Truth At(double value) => Case.Well.With("person", new Payload.CasualtyOpened("Runa", AgeYears: age))
            .Signs(s => sign switch
            {
                "heartRate" => s with { HeartRate = value },
                "breathRate" => s with { BreathRate = value },
                _ => s with { Systolic = value },
            }).State(sign switch { "heartRate" => "shock.heart-rate", "breathRate" => "shock.breath-rate", _ => "shock.systolic" });
        Assert.Equal((Truth.NotMet, Truth.Met), (At(without), At(with)));
    }

    /// <summary>85 beats a minute are normal for everyone; 150 are too many but for an infant; 110 depend on the age.</summary>
    [Theory]
    [InlineData(85, Truth.NotMet)]
    [InlineData(110, Truth.Unknown)]
    [InlineData(150, Truth.Unknown)]
    [InlineData(181, Truth.Met)]
    public void Where_the_age_is_unknown_a_sign_decides_only_if_it_does_at_every_age(double rate, Truth expected)
    {
        var ageless = Case.Well.With("person", null).Signs(s => s with { HeartRate = rate, Systolic = 140, BreathRate = 15 });
        Assert.Equal(expected, ageless.State("shock.heart-rate"));
        if (expected == Truth.Unknown)
            Assert.Contains(Input.AgeYears, ageless.Limb.CheckFirst);
    }

    [Fact]
    public void No_cuff_is_a_known_answer_until_a_pressure_is_recorded()
    {
        var none = Case.Well.Signs(s => s with { Systolic = null, NoPressureCuff = true });
        Assert.Equal(Truth.NotMet, none.State("shock.systolic"));
        Assert.Equal(Verdict.Attempt, none.Verdict);
        Assert.Equal(Truth.Met, none.And("00:04", new Payload.SignsTaken { Systolic = 80 }).State("shock.systolic"));
        Assert.Equal(Truth.Unknown, Case.Well.Signs(s => s with { Systolic = null })
            .And("03:00", new Payload.SignsTaken { NoPressureCuff = true }).And("02:00", new Payload.SignsTaken { Systolic = 120 }).State("shock.systolic"));
    }
}
