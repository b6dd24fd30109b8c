using System.Text;
using CsCheck;

namespace Farhold.Tests.Drugs;

/// <summary>Doses: published ones, and what must never happen.</summary>
/// <remarks>The ordering authority is invented; no dose is shown without one.</remarks>
public class DosingTests
{
    private static readonly Gen<Case> Given = Gen.Select(
            Gen.OneOf(ShippedFormulary.Formulary.Drugs.Select(d => d.Id).ToArray()),
            Gen.Double[1, 2500],
            Gen.Int[1, 30 * 60],
            Gen.Int[0, 90]
        )
        .Array[0, 6]
        .Select(given =>
            given.Aggregate(
                Casualty(30, 70),
                (c, g) =>
                    c.And(
                        new Happened(
                            Case.Now - Duration.FromMinutes(g.Item3),
                            Case.Now - Duration.FromMinutes(Math.Max(0, g.Item3 - g.Item4))
                        ),
                        new Payload.DrugGiven(g.Item1, Math.Round(g.Item2, 1), "mg", "mouth")
                    )
            )
        );

    [Fact]
    public void Without_a_named_authority_that_orders_it_no_drug_has_a_dose() =>
        Assert.All(
            ShippedFormulary.Formulary.Drugs,
            d => Assert.IsType<DoseAnswer.AskForAdvice>(Dosing.Of(d, Casualty(30, 70).Record, ShippedRules.Book, Case.Now))
        );

    [Theory]
    [InlineData("paracetamol", 30, 70, 1000)] // TCCC 2021: 2 × 500 mg
    [InlineData("paracetamol", 6, 20, 300)] // 15 mg/kg, 20 kg: 300 mg (derived)
    [InlineData("paracetamol", 15, 80, 1000)] // 1,200 mg capped to 1,000 (derived)
    [InlineData("meloxicam", 30, 70, 15)] // TCCC 2021
    [InlineData("tranexamic-acid", 30, 70, 2000)] // TCCC 2020: 2 g
    [InlineData("tranexamic-acid", 6, 20, 300)] // UK Transfusion Handbook 10.4: 15 mg/kg
    [InlineData("tranexamic-acid", 15, 80, 1000)] // the same: at most 1 g
    [InlineData("cefazolin", 4, 15, 375)] // 25 mg/kg (from memory), the lower end first
    [InlineData("ketamine-vein", 30, 50, 10)] // JTS analgesia module, TCCC 2021: 20 to 30 mg or 0.2 to 0.3 mg/kg; 50 kg: 10 mg (derived)
    [InlineData("ketamine-vein", 30, 110, 20)] // the same: never above 20 to 30 mg
    [InlineData("ketamine-muscle", 30, 42, 21)] // the same: 50 to 100 mg or 0.5 to 1 mg/kg
    [InlineData("paracetamol", 30, 40, 600)] // under 50 kg reduced (JRCALC 2016), to 15 mg/kg (from memory)
    [InlineData("paracetamol", 30, 50, 1000)] // from 50 kg on TCCC 2021
    [InlineData("tranexamic-acid", 30, 45, 1800)] // at most 40 mg/kg (design)
    public void A_dose_is_the_published_one(string drug, double age, double mass, double mg) =>
        Assert.Equal(mg, Assert.IsType<DoseAnswer.Give>(Of(drug, Casualty(age, mass))).Mg.Low, 9);

    [Theory]
    [InlineData("ketamine-vein", 70, 21)] // 0.3 mg/kg, 70 kg: 21 mg (derived)
    [InlineData("ketamine-vein", 42, 12.6)] // review A10c: 42 kg got 20 to 30 mg, 0.48 mg/kg and more
    [InlineData("ketamine-vein", 110, 30)] // 33 mg by mass, over the 30 mg of TCCC 2021
    [InlineData("ketamine-muscle", 70, 70)] // 1 mg/kg, 70 kg: 70 mg (derived)
    [InlineData("ketamine-muscle", 42, 42)] // review A10c: 1.2 mg/kg
    public void A_dose_by_the_piece_is_capped_by_mass(string drug, double mass, double mg) =>
        Assert.Equal(mg, Assert.IsType<DoseAnswer.Give>(Of(drug, Casualty(30, mass))).Mg.High, 9);

    [Theory]
    [InlineData(6, 20, 40.0)] // RCPCH: then 2 mg/kg/h; 20 kg: 40 mg/h (derived)
    [InlineData(30, 70, null)] // TCCC 2020: 2 g once, and nothing after it
    public void Tranexamic_acid_goes_on_in_a_child(double age, double mass, double? mgPerHour) =>
        Assert.Equal(mgPerHour, Assert.IsType<DoseAnswer.Give>(Of("tranexamic-acid", Casualty(age, mass))).ThenMgPerHour);

    [Fact]
    public void Tranexamic_acid_is_given_once_only()
    {
        var give = Assert.IsType<DoseAnswer.Give>(Of("tranexamic-acid", Casualty(30, 70)));
        Assert.Contains(
            "  once only: never again",
            DoseWords.Of(ShippedFormulary.Formulary.Named("txa")!, give, ShippedFormulary.Formulary)
        );
        foreach (var ago in new[] { "00:20", "30:00" })
            Assert.Equal(
                "it is given once only, and was given",
                Assert.Single(
                    Assert
                        .IsType<DoseAnswer.Not>(
                            Of("tranexamic-acid", Casualty(30, 70).And(ago, new Payload.DrugGiven("TXA", 2, "g", "vein")))
                        )
                        .Because
                )
            );
    }

    [Fact]
    public void A_dose_is_told_in_what_can_be_counted_or_drawn_up()
    {
        var child = Assert.IsType<DoseAnswer.Give>(Of("paracetamol", Casualty(6, 20)));
        Assert.Equal(0.5, child.Portions[0].Pieces); // 300 mg by half tablets of 500 mg: 250 mg, never more
        Assert.Equal(12.5, child.Portions[1].Millilitres!.Value, 9); // 300 mg at 24 mg/mL (derived)
        var adult = Assert.IsType<DoseAnswer.Give>(Of("paracetamol", Casualty(30, 70)));
        Assert.Equal(2, adult.Portions[0].Pieces);
        // 2 g at 100 mg/mL
        Assert.Equal(20, Assert.IsType<DoseAnswer.Give>(Of("tranexamic-acid", Casualty(30, 70))).Portions[0].Millilitres!.Value, 9);
    }

    [Theory]
    [InlineData(50, "50 kg (110 lb)")] // 50 / 0.45359237 = 110.2
    [InlineData(68.5, "68.5 kg (151 lb)")] // 151.02
    [InlineData(3.5, "3.5 kg (7.7 lb)")] // 7.716
    public void A_mass_is_told_in_both_units(double mass, string text) => Assert.Equal(text, BodyMass.InBothUnits(mass));

    [Fact]
    public void A_dose_that_hangs_on_the_mass_names_it_and_asks_for_the_unit() =>
        Assert.All(
            ShippedFormulary.Formulary.Drugs,
            drug =>
            {
                foreach (var (age, mass) in new[] { (30.0, 50.0), (6, 20) })
                {
                    if (Of(drug.Id, Casualty(age, mass)) is not DoseAnswer.Give give)
                        continue;
                    var asked = DoseWords
                        .Of(drug, give, ShippedFormulary.Formulary)
                        .Count(l => l == $"  for a mass of {BodyMass.InBothUnits(mass)}: is that right, and in the right unit?");
                    Assert.Equal(give.Regimen.ByMass ? 1 : 0, asked);
                }
            }
        );

    [Theory]
    [InlineData("02:59", true)] // common practice and CRASH-2: harm from three hours on
    [InlineData("03:00", false)]
    [InlineData("03:01", false)]
    public void Tranexamic_acid_ends_three_hours_after_the_injury(string ago, bool given) =>
        Assert.Equal(given, Of("tranexamic-acid", Casualty(30, 70).TightFor(ago)) is DoseAnswer.Give);

    [Fact]
    public void Injury_is_taken_as_the_earliest_it_can_have_been()
    {
        var range = Casualty(30, 70)
            .With("tourniquet", null)
            .And(new Happened(Case.Ago("03:00"), Case.Ago("00:40")), new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
        Assert.IsType<DoseAnswer.Not>(Of("tranexamic-acid", range));
    }

    [Theory]
    [InlineData("meloxicam", "long tourniquet")]
    [InlineData("meloxicam", "shock")]
    [InlineData("fentanyl-lozenge", "shock")]
    [InlineData("fentanyl-lozenge", "slow breathing")]
    [InlineData("meloxicam", "head")]
    [InlineData("meloxicam", "pregnant")]
    [InlineData("moxifloxacin", "child")]
    [InlineData("cefazolin", "penicillin allergy")]
    [InlineData("clindamycin", "another antibiotic")]
    public void What_the_record_speaks_against_is_not_given(string drug, string state)
    {
        var casualty = state switch
        {
            "long tourniquet" => Casualty(30, 70).TightFor("02:00"),
            "shock" => Casualty(30, 70).Signs(s => s with { HeartRate = 130 }),
            "slow breathing" => Casualty(30, 70).Signs(s => s with { RespiratoryRate = 8 }),
            "head" => Casualty(30, 70).And("00:10", new Payload.WoundFound("w9", null, BodyRegion.Head, WoundNature.Bleeding)),
            "pregnant" => Casualty(30, 70, sex: Sex.Female, history: "pregnant, 20 weeks; otherwise healthy"),
            "child" => Casualty(12, 40),
            "penicillin allergy" => Casualty(30, 70, allergies: ["Penicillin: rash"]),
            _ => Casualty(30, 70).And("05:00", new Payload.DrugGiven("ertapenem", 1, "g", "muscle")),
        };
        Assert.IsType<DoseAnswer.Not>(Of(drug, casualty));
        Assert.IsType<DoseAnswer.Give>(Of(drug, Casualty(30, 70, medicines: drug == "fentanyl-lozenge" ? ["morphine daily"] : [])));
    }

    [Theory]
    [InlineData("mass")]
    [InlineData("age")]
    [InlineData("allergies")]
    [InlineData("signs")]
    [InlineData("a unit")]
    public void What_is_not_known_never_makes_a_dose(string unknown)
    {
        var casualty = unknown switch
        {
            "mass" => Casualty(30, null),
            "age" => Casualty(null, 70),
            "allergies" => Case.Well.With("person", new Payload.CasualtyOpened("Runa", Sex.Male, 30, 70)),
            "signs" => Casualty(30, 70).With("signs", null),
            _ => Casualty(30, 70).And("09:00", new Payload.DrugGiven("meloxicam", 1, "tablet", "mouth")),
        };
        Assert.NotEmpty(Assert.IsType<DoseAnswer.LookFirst>(Of("meloxicam", casualty)).What);
    }

    [Fact]
    public void Whether_a_woman_is_pregnant_has_to_be_known()
    {
        Assert.IsType<DoseAnswer.LookFirst>(Of("meloxicam", Casualty(30, 70, sex: Sex.Female)));
        Assert.IsType<DoseAnswer.Give>(Of("meloxicam", Casualty(30, 70, sex: Sex.Female, history: "not pregnant, otherwise healthy")));
    }

    [Theory]
    [InlineData(1, "g", 1000.0)]
    [InlineData(500, "mg", 500.0)]
    [InlineData(800, "µg", 0.8)]
    [InlineData(800, "mcg", 0.8)]
    [InlineData(2, "mL", null)]
    public void Amounts_are_added_in_milligrams(double amount, string unit, double? mg) =>
        Assert.Equal(mg, DrugUnit.Milligrams(amount, unit));

    /// <summary>Paracetamol 1 g given 7 h ago: 8 h between doses (TCCC 2021).</summary>
    [Theory]
    [InlineData("07:00", "07:00", "01:00")]
    [InlineData("07:00", "06:00", "02:00")] // between 7 and 6 h ago: the later counts
    public void The_interval_counts_from_the_latest_the_last_dose_can_have_been(string earliest, string latest, string wait)
    {
        var casualty = Casualty(30, 70)
            .And(new Happened(Case.Ago(earliest), Case.Ago(latest)), new Payload.DrugGiven("Acetaminophen", 1, "g", "mouth"));
        Assert.Equal(Case.Now + (Case.Now - Case.Ago(wait)), Assert.IsType<DoseAnswer.Wait>(Of("paracetamol", casualty)).Until);
    }

    [Fact]
    public void A_back_dated_or_amended_dose_moves_the_interval()
    {
        var record = Casualty(30, 70).And("09:00", new Payload.DrugGiven("paracetamol", 1, "g", "mouth")).Record;
        Assert.IsType<DoseAnswer.Give>(Dose("paracetamol", record));
        var dose = record.Entries.Single(e => e.Payload is Payload.DrugGiven);
        var later = $$"""{"happened":"{{NodaTime.Text.InstantPattern.ExtendedIso.Format(Case.Ago("02:00"))}}"}""";
        record.Add(
            EntryWriting.Write(
                record.NextId("a"),
                Happened.At(Case.Now),
                Case.Now,
                "Ane",
                new Payload.EntryAmended(dose.Id, JsonText.Of(later))
            )
        );
        Assert.Equal(Case.Now + Duration.FromHours(6), Assert.IsType<DoseAnswer.Wait>(Dose("paracetamol", record)).Until);
    }

    [Fact]
    public void No_history_lets_a_dose_pass_the_most_at_once_or_in_a_day() =>
        Given.Sample(
            casualty =>
            {
                foreach (var drug in ShippedFormulary.Formulary.Drugs)
                {
                    if (Of(drug.Id, casualty) is not DoseAnswer.Give give)
                        continue;
                    Assert.True(give.Mg.High <= give.Regimen.MostMg);
                    Assert.True(give.GivenDayMg + give.Mg.High <= give.Regimen.MostDayMg * (1 + 1e-9));
                    Assert.All(give.Portions, p => Assert.True(p.Mg <= give.Mg.High * (1 + 1e-9)));
                    var last = casualty
                        .Record.Readings[0]
                        .Of(Kind.DrugGiven)
                        .Where(d => drug.Goes(d.As<Payload.DrugGiven>().Drug))
                        .Select(d => d.When.Latest);
                    Assert.All(last, at => Assert.True(at + give.Regimen.Every <= Case.Now));
                }
            },
            iter: Gens.Cases(400)
        );

    [Fact]
    public void More_mass_never_means_less_up_to_the_most() =>
        Gen.Select(Gen.Double[2, 150], Gen.Double[0, 40], Gen.Double[1, 17])
            .Sample(
                (mass, more, age) =>
                {
                    foreach (var drug in ShippedFormulary.Formulary.Drugs)
                        if (
                            Of(drug.Id, Casualty(age, mass)) is DoseAnswer.Give light
                            && Of(drug.Id, Casualty(age, mass + more)) is DoseAnswer.Give heavy
                        )
                        {
                            Assert.True(heavy.Mg.Low >= light.Mg.Low && heavy.Mg.High >= light.Mg.High);
                            Assert.True(
                                heavy.Portions.Max(p => p.Mg)
                                    >= light.Portions.Max(p => p.Mg) - heavy.Portions.Max(p => p.Form.StepMg(p.Mg))
                            );
                        }
                },
                iter: Gens.Cases(100)
            );

    [Theory]
    [InlineData(0, 78.0)]
    [InlineData(8, 160.0)] // 73 kg told in pounds
    [InlineData(34, 12.0)]
    public void An_age_and_a_mass_that_can_not_both_be_give_no_dose_until_one_is_settled(double age, double mass)
    {
        var doubtful = Casualty(age, mass);
        Assert.All(ShippedFormulary.Formulary.Drugs, drug => Assert.IsNotType<DoseAnswer.Give>(Of(drug.Id, doubtful)));
        var first = Assert.IsType<DoseAnswer.LookFirst>(Of("paracetamol", doubtful));
        Assert.Contains(first.What, w => w.Contains("can't both be right", StringComparison.Ordinal));

        var opened = doubtful.Record.Entries.Single(e => e.Payload is Payload.CasualtyOpened).Id;
        var said = doubtful.And("00:01", new Payload.TaskDone(Question.TaskOf(opened, "massKg")));
        Assert.Contains("age", Assert.Single(Assert.IsType<DoseAnswer.LookFirst>(Of("paracetamol", said)).What), StringComparison.Ordinal);
        var right = said.Record;
        right.Add(
            EntryWriting.Write(
                right.NextId("a"),
                Happened.At(Case.Now),
                Case.Now,
                "Ane",
                new Payload.EntryAmended(opened, JsonText.Of("""{"ageYears":30,"massKg":70}"""))
            )
        );
        Assert.IsType<DoseAnswer.Give>(Dose("paracetamol", right));
    }

    [Fact]
    public void A_doubtful_record_gives_no_dose()
    {
        var record = Casualty(30, 70).Record;
        record.Add(
            EntryWriting.Write(new("b", 2), Happened.At(Case.Now), Case.Now, "Tor", new Payload.NoteWritten("the first is missing"))
        );
        Assert.IsType<DoseAnswer.LookFirst>(Dose("paracetamol", record));
    }

    private static DoseAnswer Of(string drug, Case casualty) => Ordered.Dose(drug, casualty);

    private static DoseAnswer Dose(string drug, CareRecord record) => Ordered.Dose(drug, record);

    private static Case Casualty(
        double? age,
        double? mass,
        Sex? sex = Sex.Male,
        string? history = "otherwise healthy",
        string[]? allergies = null,
        string[]? medicines = null
    ) => Ordered.Casualty(age, mass, sex, history, allergies, medicines);
}
