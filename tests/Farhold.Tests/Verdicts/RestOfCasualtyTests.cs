namespace Farhold.Tests.Verdicts;

/// <summary>The rest of the casualty: somebody looked, or entries say the same; what is found asks for advice first.</summary>
public class RestOfCasualtyTests
{
    [Fact]
    public void Not_looked_over_is_unknown_and_one_look_is_asked_for()
    {
        var limb = Case.Well.With("over", null).Limb;
        Assert.Equal(Verdict.CheckFirst, limb.Verdict);
        Assert.StartsWith("Look over the whole casualty once", limb.Act.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wound_elsewhere_that_bleeds_comes_before_every_verdict()
    {
        var groin = Groin.And("00:04", new Payload.BleedingChecked("w7", Bleeding.Active));
        Assert.Equal(Verdict.CheckFirst, groin.Verdict);
        Assert.True(groin.Judgement.Due[0] is { AtOnce: true, Task: "bleeding.w7" });
        Assert.Equal(Verdict.CheckFirst, groin.Advised("00:03").Verdict);
        Assert.Equal(Verdict.CheckFirst, groin.Unreached().Verdict);
        Assert.Equal(Verdict.Attempt, groin.And("00:02", new Payload.BleedingChecked("w7", Bleeding.None)).Verdict);
    }

    [Fact]
    public void A_wound_elsewhere_not_looked_at_since_it_was_found_counts_as_bleeding()
    {
        Assert.Equal(Truth.Met, Case.Well.And("00:05", Found(BodyRegion.Groin)).State("rest.bleeding")); // looked over a minute before
        Assert.Equal(Truth.NotMet, Case.Well.And("00:07", Found(BodyRegion.Groin)).State("rest.bleeding"));
        Assert.Equal(Truth.NotMet, Groin.And("00:04", new Payload.BleedingChecked("w7", Bleeding.Oozing)).State("rest.bleeding"));
    }

    [Fact]
    public void Region_by_region_is_a_look_over_the_casualty_as_well()
    {
        Payload[] regions =
        [
            .. Enum.GetValues<BodyRegion>().Select(r => new Payload.RegionLooked(null, r, LookFound.Nothing)),
            .. new[] { Limb.LeftArm, Limb.RightArm, Limb.RightLeg }.Select(l => new Payload.RegionLooked(l, null, LookFound.Nothing)),
        ];
        var looked = Case.Well.With("over", null).And("00:06", regions);
        Assert.Equal((Truth.NotMet, Truth.NotMet), (looked.State("rest.bleeding"), looked.State("rest.trunk")));
        var skipped = Case.Well.With("over", null).And("00:06", regions[1..]);
        Assert.Equal((Truth.Unknown, Truth.NotMet), (skipped.State("rest.bleeding"), skipped.State("rest.trunk")));
        Assert.Equal(Truth.Unknown, Case.Well.With("over", null).And("00:31", regions).State("rest.bleeding"));
    }

    [Theory]
    [InlineData(BodyRegion.Chest, WoundNature.Bleeding, Truth.Met)]
    [InlineData(BodyRegion.Abdomen, WoundNature.Bleeding, Truth.Met)]
    [InlineData(BodyRegion.Back, WoundNature.Fracture, Truth.Met)]
    [InlineData(BodyRegion.Pelvis, WoundNature.Fracture, Truth.Met)]
    [InlineData(BodyRegion.Chest, WoundNature.Burn, Truth.NotMet)]
    [InlineData(BodyRegion.Groin, WoundNature.Bleeding, Truth.NotMet)]
    [InlineData(BodyRegion.Head, WoundNature.Bleeding, Truth.NotMet)]
    public void A_deep_wound_of_the_trunk(BodyRegion region, WoundNature nature, Truth trunk) =>
        Assert.Equal(
            trunk,
            Case.Well.And("00:05", Found(region, nature)).And("00:04", new Payload.BleedingChecked("w7", Bleeding.None)).State("rest.trunk")
        );

    [Theory]
    [InlineData("00:07", Truth.NotMet)] // whoever looked over the casualty since says that it is no more
    [InlineData("00:05", Truth.Met)]
    public void A_graze_of_the_trunk_is_none_once_somebody_looked(string found, Truth trunk) =>
        Assert.Equal(
            trunk,
            Case.Well.And(found, Found(BodyRegion.Back, WoundNature.Other))
                .And("00:04", new Payload.BleedingChecked("w7", Bleeding.None))
                .State("rest.trunk")
        );

    /// <summary>Field triage 2021 (seen in a restatement): under 10 or over 29 a minute, from 12 years.</summary>
    [Theory]
    [InlineData(34, 10, 9)]
    [InlineData(34, 29, 30)]
    [InlineData(12, 10, 9)]
    [InlineData(12, 29, 30)]
    public void Breathing_too_slow_or_too_fast(double age, double without, double with)
    {
        Truth At(double rate) => Case.Well.Aged(age).NewSigns(s => s with { RespiratoryRate = rate }).State("rest.breathing");
        Assert.Equal((Truth.NotMet, Truth.Met), (At(without), At(with)));
    }

    [Theory]
    [InlineData(9)]
    [InlineData(30)]
    public void Under_twelve_years_the_rate_alone_does_not_say_so(double rate) =>
        Assert.Equal(Truth.NotMet, Case.Well.Aged(11.9).NewSigns(s => s with { RespiratoryRate = rate }).State("rest.breathing"));

    /// <summary>Under 90 %; above 2,500 m not alone (Luks and Swenson 2011).</summary>
    [Theory]
    [InlineData(90, null, Truth.NotMet)]
    [InlineData(89, null, Truth.Met)]
    [InlineData(89, 2500.0, Truth.Met)]
    [InlineData(89, 2501.0, Truth.NotMet)]
    public void A_low_saturation(double spo2, double? altitude, Truth breathing)
    {
        var casualty = Case.Well.NewSigns(s => s with { Spo2 = spo2 });
        if (altitude is { } metres)
            casualty = casualty.And("00:30", new Payload.PositionNoted(30, 80, AltitudeM: metres));
        Assert.Equal(breathing, casualty.State("rest.breathing"));
        Assert.Equal(Truth.Met, casualty.LookedOver(o => o with { BreathingHard = true }).State("rest.breathing"));
    }

    /// <summary>Clotting fails below 34 °C (Watts 1998, from memory).</summary>
    [Theory]
    [InlineData(34.0, Truth.NotMet)]
    [InlineData(33.9, Truth.Met)]
    public void A_cold_core(double temperature, Truth cold) =>
        Assert.Equal(cold, Case.Well.NewSigns(s => s with { TemperatureC = temperature }).State("rest.cold"));

    [Theory]
    [InlineData(Truth.Met, "warfarin")]
    [InlineData(Truth.Met, "Rivaroxaban 20 mg")]
    [InlineData(Truth.Met, "clopidogrel", "aspirin")]
    [InlineData(Truth.NotMet, "aspirin")]
    [InlineData(Truth.NotMet, "clopidogrel")]
    [InlineData(Truth.NotMet, "no anticoagulant")]
    public void Blood_thinners(Truth thinned, params string[] medicines) =>
        Assert.Equal(thinned, Case.Well.Taking(medicines).State("rest.blood-thinner"));

    [Fact]
    public void A_clotting_disease_counts_as_a_blood_thinner() =>
        Assert.Equal(
            Truth.Met,
            Case.Well.With("person", new Payload.CasualtyOpened("Runa", AgeYears: 34, History: "haemophilia A"), "00:39")
                .State("rest.blood-thinner")
        );

    [Theory]
    [InlineData("trunk")]
    [InlineData("breathing")]
    [InlineData("cold")]
    [InlineData("thinner")]
    public void Advice_given_since_lifts_what_was_found(string what)
    {
        Assert.Equal(Verdict.CheckFirst, Found(what).Verdict);
        Assert.Equal(Verdict.Attempt, Found(what).Advised("00:04").Verdict);
        Assert.Equal(Verdict.CheckFirst, Found(what).Advised("00:50").Verdict); // before anybody knew
    }

    [Theory]
    [InlineData("trunk", true)]
    [InlineData("thinner", true)]
    [InlineData("breathing", false)]
    [InlineData("cold", false)]
    [InlineData("bleeding", false)]
    public void Where_nobody_can_be_reached_trunk_and_thinner_give_way_after_two_looks_half_an_hour_apart(string what, bool givesWay)
    {
        var verdict = givesWay ? Verdict.Attempt : Verdict.CheckFirst;
        Assert.Equal(verdict, Found(what).ClearLooks("00:35", "00:20", "00:05").Unreached().Verdict);
        Assert.Equal(Verdict.CheckFirst, Found(what).ClearLooks("00:34:59", "00:20", "00:05").Unreached().Verdict);
        Assert.Equal(Verdict.CheckFirst, Found(what).ClearLooks("00:35", "00:20", "00:05").Verdict);
    }

    [Fact]
    public void With_a_blood_thinner_pressure_is_held_twice_as_long()
    {
        Duration Held(Case casualty) =>
            casualty
                .And("00:01", new Payload.AttemptStarted("w1", "t1"))
                .And("00:00", new Payload.WoundPacked("w1", PackingMaterial.PlainGauze))
                .Limb.Attempt!.Steps.Single(s => s.Step.Id == StepId.Hold)
                .NotBefore!.Value - Case.Now;
        Assert.Equal(Duration.FromMinutes(10), Held(Case.Well));
        Assert.Equal(Duration.FromMinutes(20), Held(Case.Well.Taking("apixaban").Advised("00:04")));
        Assert.Contains(
            "hold pressure twice as long",
            string.Concat(Case.Well.Taking("apixaban").Advised("00:04").Limb.Act.Cautions),
            StringComparison.Ordinal
        );
    }

    private static Case Groin => Case.Well.And("00:07", Found(BodyRegion.Groin));

    private static Payload.WoundFound Found(BodyRegion region, WoundNature nature = WoundNature.Bleeding) =>
        new("w7", null, region, nature);

    private static Case Found(string what) =>
        Case.Well.LookedOver(o =>
            what switch
            {
                "trunk" => o with { TrunkWound = true },
                "breathing" => o with { BreathingHard = true },
                "cold" => o with { VeryCold = true },
                "bleeding" => o with { BleedingElsewhere = true },
                _ => o with { BloodThinner = true },
            }
        );
}
