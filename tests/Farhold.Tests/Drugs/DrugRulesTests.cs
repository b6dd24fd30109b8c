namespace Farhold.Tests.Drugs;

/// <summary>What speaks for and against each drug, its source beside it. Every drug is ordered, by an invented authority.</summary>
public class DrugRulesTests
{
    [Theory]
    // US label of meloxicam, read
    [InlineData("meloxicam", "apixaban 5 mg", "blood thinner")]
    [InlineData("meloxicam", "Warfarin", "blood thinner")]
    [InlineData("meloxicam", "aspirin 75", "platelets")]
    [InlineData("meloxicam", "ibuprofen", "another anti-inflammatory")]
    [InlineData("meloxicam", "prednisolone", "steroid")]
    [InlineData("meloxicam", "ramipril", "kidney risk")]
    [InlineData("meloxicam", "lithium", "kidney risk")]
    // US label of the fentanyl lozenge, read
    [InlineData("fentanyl-lozenge", "diazepam", "sedative")]
    [InlineData("fentanyl-lozenge", "moclobemide", "MAO")]
    [InlineData("fentanyl-lozenge", "clarithromycin", "strengthens fentanyl")]
    // labels, from memory
    [InlineData("ondansetron", "amiodarone", "heart rhythm")]
    [InlineData("moxifloxacin", "sotalol", "heart rhythm")]
    [InlineData("ertapenem", "sodium valproate", "valproate")]
    public void A_medicine_that_is_taken_rules_it_out(string drug, string medicine, string reason)
    {
        var not = Assert.IsType<DoseAnswer.Not>(Ordered.Dose(drug, Ordered.Casualty(medicines: [medicine])));
        Assert.Contains(not.Because, b => b.Contains(reason, StringComparison.Ordinal));
    }

    [Theory]
    // US label of meloxicam, read
    [InlineData("meloxicam", "kidney disease")]
    [InlineData("meloxicam", "stomach ulcer 2019")]
    [InlineData("meloxicam", "heart attack")]
    [InlineData("meloxicam", "asthma")]
    [InlineData("meloxicam", "haemophilia")]
    [InlineData("meloxicam", "liver cirrhosis")]
    [InlineData("paracetamol", "hepatitis")] // JRCALC 2016: where the liver is at risk
    [InlineData("ketamine-vein", "schizophrenia")] // JTS analgesia module, read
    [InlineData("ketamine-muscle", "a psychosis once")] // the same
    [InlineData("fentanyl-lozenge", "sleep apnoea")] // US label, read
    [InlineData("ondansetron", "long QT")] // label, from memory
    [InlineData("moxifloxacin", "myasthenia gravis")] // label, from memory
    [InlineData("moxifloxacin", "tendon rupture")] // label, from memory
    [InlineData("clindamycin", "ulcerative colitis")] // label, from memory
    public void An_illness_rules_it_out(string drug, string history) =>
        Assert.IsType<DoseAnswer.Not>(Ordered.Dose(drug, Ordered.Casualty(history: $"{history}. Nothing else")));

    [Theory]
    [InlineData("tranexamic-acid", "epilepsy", null)] // US label, read
    [InlineData("tranexamic-acid", "deep vein thrombosis", null)] // the same
    [InlineData("tranexamic-acid", "kidney disease", null)] // the same: the dose is reduced
    [InlineData("tranexamic-acid", null, "contraceptive")] // the same
    [InlineData("paracetamol", "much alcohol", null)] // JRCALC 2016
    [InlineData("paracetamol", null, "co-codamol")] // label, from memory
    [InlineData("ketamine-vein", "angina", null)] // label, from memory
    [InlineData("ketamine-vein", "high blood pressure", null)] // label, from memory
    [InlineData("cefazolin", "kidney disease", null)] // label, from memory
    [InlineData("meloxicam", null, "sertraline")] // US label of meloxicam, read
    [InlineData("moxifloxacin", null, "warfarin")] // label, from memory
    public void An_order_is_not_enough_where_the_record_asks_for_advice(string drug, string? history, string? medicine) =>
        Assert.IsType<DoseAnswer.AskForAdvice>(
            Ordered.Dose(
                drug,
                Ordered.Casualty(history: $"{history ?? "healthy"}. Nothing else", medicines: medicine is null ? [] : [medicine])
            )
        );

    /// <summary>US label: not for acute pain, nor for whoever takes no opioid daily. TCCC gives it all the same: the safer side.</summary>
    [Fact]
    public void A_fentanyl_lozenge_takes_advice_for_this_casualty_unless_an_opioid_is_taken_daily()
    {
        Assert.Contains(
            "label",
            Assert.IsType<DoseAnswer.AskForAdvice>(Ordered.Dose("fentanyl-lozenge", Ordered.Casualty())).Why,
            StringComparison.Ordinal
        );
        Assert.IsType<DoseAnswer.Give>(Ordered.Dose("fentanyl-lozenge", Daily()));
    }

    [Theory]
    [InlineData("a soft sign")] // TCCC 2021: not at significant risk of shock; which risks is design
    [InlineData("a wound that bleeds")]
    [InlineData("a wound of the belly")]
    [InlineData("an amputation")]
    [InlineData("no naloxone")] // TCCC 2021, JTS pain guideline: naloxone at hand
    [InlineData("nobody watches")] // TCCC 2021: watch for respiratory depression
    [InlineData("ketamine lately")] // JTS analgesia module: stronger together; the hour is design
    [InlineData("confused")] // TCCC 2021
    [InlineData("hard breathing")] // TCCC 2021
    public void A_fentanyl_lozenge_is_not_given(string state)
    {
        var casualty = state switch
        {
            "a soft sign" => Daily().Signs(s => s with { Pain = 6, Pale = true }),
            "a wound that bleeds" => Bleeding(Daily()),
            "a wound of the belly" => Belly(Daily()),
            "an amputation" => Daily().And("00:30", new Payload.WoundFound("w8", Limb.RightArm, null, WoundNature.Amputation)),
            "no naloxone" => Daily().And("00:02", new Payload.SuppliesStated("naloxone", 0)),
            "nobody watches" => Daily().With("watch", new Payload.WatchStated(false)),
            "ketamine lately" => Daily().And("00:30", new Payload.DrugGiven("ketamine-muscle", 50, "mg", "muscle")),
            "confused" => Daily().Signs(s => s with { Pain = 6, Mental = Mental.Confused }),
            _ => Daily().LookedOver(o => o with { BreathingHard = true }),
        };
        Assert.IsType<DoseAnswer.Not>(Ordered.Dose("fentanyl-lozenge", casualty));
    }

    [Theory]
    [InlineData("bleeds")] // US label of meloxicam: bleeding
    [InlineData("belly")] // the same, and design
    [InlineData("looked over")] // review A10b: apixaban known only as a blood thinner
    public void Meloxicam_is_not_given_to_whoever_bleeds(string state) =>
        Assert.IsType<DoseAnswer.Not>(
            Ordered.Dose(
                "meloxicam",
                state switch
                {
                    "bleeds" => Bleeding(Ordered.Casualty()),
                    "belly" => Belly(Ordered.Casualty()),
                    _ => Ordered.Casualty().LookedOver(o => o with { BloodThinner = true }),
                }
            )
        );

    /// <summary>TCCC 2020: shock, amputation, penetrating wound of the trunk, or severe bleeding.</summary>
    [Theory]
    [InlineData("precaution", false)]
    [InlineData("bleeding", true)]
    [InlineData("shock", true)]
    [InlineData("amputation", true)]
    [InlineData("trunk", true)]
    public void Tranexamic_acid_needs_a_reason(string state, bool given)
    {
        var light = Ordered
            .Casualty()
            .With(
                "tourniquet",
                new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.Precaution),
                "00:40"
            );
        var answer = Ordered.Dose(
            "tranexamic-acid",
            state switch
            {
                "bleeding" => Ordered.Casualty(),
                "shock" => light.Signs(s => s with { HeartRate = 135 }),
                "amputation" => light.And("00:30", new Payload.WoundFound("w8", Limb.RightArm, null, WoundNature.Amputation)),
                "trunk" => light.LookedOver(o => o with { TrunkWound = true }),
                _ => light,
            }
        );
        Assert.Equal(given, answer is DoseAnswer.Give);
        if (!given)
            Assert.Contains("nothing in the record calls for it", Ordered.Reasons(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ketamine-vein", 2.9, true)] // JTS analgesia module: never under 3 years
    [InlineData("ketamine-vein", 3, false)] // a child: on advice (design)
    [InlineData("moxifloxacin", 17.9, true)] // label, from memory: not under 18 years
    public void Under_an_age_a_drug_is_never_given(string drug, double age, bool never) =>
        Assert.Equal(never, Ordered.Dose(drug, Ordered.Casualty(age, 14 + (2.5 * age))) is DoseAnswer.Not);

    /// <summary>Warning rule <c>head</c>: no sedating drugs. Review A10c.</summary>
    [Theory]
    [InlineData("ketamine-vein")]
    [InlineData("ketamine-muscle")]
    [InlineData("fentanyl-lozenge")]
    public void What_a_warning_sign_forbids_is_not_given(string drug)
    {
        var head = Ordered
            .Casualty()
            .Signs(s => s with { Pain = 6, Mental = Mental.Voice })
            .And("00:30", new Payload.WoundFound("w9", null, BodyRegion.Head, WoundNature.Other));
        Assert.Contains(
            "warning sign: A head injury that is getting worse",
            Assert.IsType<DoseAnswer.Not>(Ordered.Dose(drug, head)).Because
        );
    }

    [Fact]
    public void What_warning_signs_forbid_is_known_to_the_formulary() =>
        Assert.All(
            ShippedWarningSigns.Rules.Rules.SelectMany(r => r.Forbids),
            word => Assert.Contains(Ordered.Formulary.Drugs, d => d.Is(word))
        );

    /// <summary>Handbook p. 271: nothing by mouth with a wound of the belly; shock, vomiting, not alert: common practice.</summary>
    [Theory]
    [InlineData("paracetamol")]
    [InlineData("meloxicam")]
    [InlineData("cefadroxil")]
    [InlineData("clindamycin")]
    public void Nothing_goes_by_mouth_where_nothing_may(string drug)
    {
        Assert.Contains("nothing by mouth", Ordered.Reasons(Ordered.Dose(drug, Belly(Ordered.Casualty()))), StringComparison.Ordinal);
        Assert.Contains(
            "nothing by mouth",
            Ordered.Reasons(Ordered.Dose(drug, Ordered.Casualty().And("01:00", new Payload.NoteWritten("vomited twice")))),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("paracetamol", 0, "nothing in the record calls for it")] // TCCC 2021: for pain
    [InlineData("ketamine-vein", 3, "nothing in the record calls for it")] // TCCC 2021: moderate to severe
    [InlineData("ketamine-vein", null, "how strong the pain is")]
    public void What_is_for_pain_needs_pain(string drug, int? pain, string reason) =>
        Assert.Contains(
            reason,
            Ordered.Reasons(Ordered.Dose(drug, Ordered.Casualty().Signs(s => s with { Pain = pain }))),
            StringComparison.Ordinal
        );

    /// <summary>TCCC and PCC: antibiotics for open wounds.</summary>
    [Theory]
    [InlineData(WoundNature.Fracture, "closed", "nothing in the record calls for it")]
    [InlineData(WoundNature.Fracture, null, "open or closed")]
    [InlineData(WoundNature.Burn, null, "nothing in the record calls for it")]
    [InlineData(WoundNature.Fracture, "open", "")]
    public void An_antibiotic_needs_an_open_wound(WoundNature nature, string? note, string reason)
    {
        var casualty = Ordered.Casualty().With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, nature, note), "00:39");
        var answer = Ordered.Dose("ertapenem", casualty);
        Assert.Equal(reason.Length == 0, answer is DoseAnswer.Give);
        Assert.Contains(reason, Ordered.Reasons(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("medicines", "ask about medicines")]
    [InlineData("history", "ask about stomach ulcer")]
    [InlineData("a history of something else", "write what there is into the history")]
    [InlineData("a strange medicine", "find out what Xyzal-Q is")]
    [InlineData("a strange drug given", "find out what blue pill in entry")]
    [InlineData("unknown allergies", "ask about allergies")]
    [InlineData("a list after a no", "write what there is into the history")]
    public void What_nobody_asked_is_a_question_and_never_clear(string unknown, string question)
    {
        var casualty = unknown switch
        {
            "medicines" => Case
                .Well.With("person", new Payload.CasualtyOpened("Runa", Sex.Male, 30, 70, [], History: "healthy"))
                .Signs(s => s with { Pain = 6 }),
            "history" => Ordered.Casualty(history: null),
            "a history of something else" => Ordered.Casualty(history: "appendix out at ten"),
            "a strange medicine" => Ordered.Casualty(medicines: ["Xyzal-Q"]),
            "a strange drug given" => Ordered.Casualty().And("02:00", new Payload.DrugGiven("blue pill", 1, "piece", "mouth")),
            "unknown allergies" => Ordered.Casualty(allergies: ["not known"]),
            _ => Ordered.Casualty(history: "no ulcer, kidney or heart disease"),
        };
        var look = Assert.IsType<DoseAnswer.LookFirst>(Ordered.Dose("meloxicam", casualty));
        Assert.Contains(
            look.What,
            w => w.Contains(question.Replace("stomach ulcer", "", StringComparison.Ordinal).Trim(), StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("ketamine", "ketamine-vein", "Amend the entry")]
    [InlineData("paracetamol syrup", "paracetamol", "under another name")]
    [InlineData("TXA iv", "tranexamic-acid", "given already")]
    public void A_name_that_may_be_the_drug_is_never_passed_over(string name, string drug, string reason) =>
        Assert.Contains(
            reason,
            Ordered.Reasons(Ordered.Dose(drug, Ordered.Casualty().And("00:10", new Payload.DrugGiven(name, 50, "mg", "vein")))),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("morphine", "fentanyl-lozenge")] // a day between drugs of one group (design)
    [InlineData("ibuprofen", "meloxicam")]
    [InlineData("amoxicillin", "cefazolin")]
    [InlineData("Ketamine IM", "ketamine-vein")]
    public void Another_of_its_group_that_was_given_rules_it_out(string given, string drug) =>
        Assert.IsType<DoseAnswer.Not>(Ordered.Dose(drug, Daily().And("05:00", new Payload.DrugGiven(given, 10, "mg", "vein"))));

    /// <summary>JTS analgesia module: safe after a narcotic, and stronger.</summary>
    [Fact]
    public void Ketamine_after_an_opioid_is_given_with_a_caution() =>
        Assert.Contains(
            Assert
                .IsType<DoseAnswer.Give>(
                    Ordered.Dose("ketamine-vein", Ordered.Casualty().And("02:00", new Payload.DrugGiven("morphine", 5, "mg", "vein")))
                )
                .Cautions,
            c => c.Contains("stronger after an opioid", StringComparison.Ordinal)
        );

    [Fact]
    public void A_dose_says_what_it_is_for_and_what_to_mind()
    {
        var drug = Ordered.Formulary.Named("ketamine-vein")!;
        var lines = DoseWords.Of(drug, Ordered.Dose(drug.Id, Ordered.Casualty()), Ordered.Formulary).ToArray();
        Assert.Contains("  for: pain of 4 of 10 or more, in shock or breathing trouble too", lines);
        Assert.Contains(lines, l => l.StartsWith("  caution: no knives", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_shipped_drug_says_what_it_is_for() => Assert.All(Ordered.Formulary.Drugs, d => Assert.NotEmpty(d.Indications));

    [Fact]
    public void Every_rule_cites_its_source() =>
        Assert.All(
            Ordered.Formulary.Drugs.SelectMany(d => d.Rules),
            r => Assert.All(r.Sources, s => Assert.Contains(s, Ordered.Formulary.Sources.Keys))
        );

    private static Case Daily() => Ordered.Casualty(medicines: ["morphine, daily"]);

    private static Case Bleeding(Case casualty) =>
        casualty
            .And("00:30", new Payload.WoundFound("w7", Limb.RightArm, null, WoundNature.Bleeding))
            .And("00:04", new Payload.BleedingChecked("w7", Farhold.Records.Bleeding.Active));

    private static Case Belly(Case casualty) =>
        casualty
            .And("00:30", new Payload.WoundFound("w7", null, BodyRegion.Abdomen, WoundNature.Bleeding))
            .And("00:04", new Payload.BleedingChecked("w7", Farhold.Records.Bleeding.None));
}
