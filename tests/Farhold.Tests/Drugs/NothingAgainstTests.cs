using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using CsCheck;

namespace Farhold.Tests.Drugs;

/// <summary>
/// No drug is offered against what is in the record: casualties put together from findings, each with the drugs that published text, or
/// this project, holds against it. The table is written out here by hand and shares nothing with the formulary.
/// </summary>
public class NothingAgainstTests
{
    private const string Opioid = "fentanyl-lozenge";
    private const string Txa = "tranexamic-acid";

    private static readonly string[] Sedating = [Opioid, "ketamine-vein", "ketamine-muscle"];
    private static readonly string[] Ketamine = ["ketamine-vein", "ketamine-muscle"];
    private static readonly string[] Antibiotics =
    [
        "moxifloxacin",
        "ertapenem",
        "cefadroxil",
        "cephalexin",
        "ceftriaxone",
        "cefazolin",
        "clindamycin",
    ];
    private static readonly string[] ByMouth = ["paracetamol", "meloxicam", "moxifloxacin", "cefadroxil", "cephalexin", "clindamycin"];

    private static readonly Finding[] Findings =
    [
        // Taken daily. Labels of meloxicam, the fentanyl lozenge and tranexamic acid, read; of the others, from memory.
        Takes("apixaban", "meloxicam", "moxifloxacin"),
        Takes("Clopidogrel 75 mg", "meloxicam"),
        Takes("aspirin", "meloxicam"),
        Takes("naproxen", "meloxicam"),
        Takes("enalapril", "meloxicam"),
        Takes("furosemide", "meloxicam"),
        Takes("prednisone", "meloxicam", "moxifloxacin"),
        Takes("lorazepam", Opioid),
        Takes("selegiline", Opioid),
        Takes("ketoconazole", Opioid),
        Takes("citalopram", "meloxicam", "ondansetron", "moxifloxacin"),
        Takes("amiodarone", "ondansetron", "moxifloxacin"),
        Takes("valproic acid", "ertapenem"),
        Takes("contraceptive", Txa),
        Takes("acetaminophen", "paracetamol"),
        // Of the history.
        Has("chronic renal failure", [Txa, "meloxicam", Opioid, "ertapenem", "cefadroxil", "cephalexin", "ceftriaxone", "cefazolin"]),
        Has("peptic ulcer", ["meloxicam"]),
        Has("jaundice", ["paracetamol", "meloxicam", Opioid, "ondansetron", "ceftriaxone"]),
        Has("asthma", ["meloxicam", Opioid]),
        Has("heart failure", ["meloxicam", .. Ketamine]),
        Has("hypertension", Ketamine),
        Has("pulmonary embolism", [Txa]),
        Has("a seizure", [Txa, "moxifloxacin", "ertapenem"]),
        Has("schizophrenia", Ketamine), // JTS analgesia module, read
        Has("colitis", ["clindamycin"]),
        Has("haemophilia", ["meloxicam"]),
        Has("pregnant", ["meloxicam", "moxifloxacin", "ondansetron", .. Sedating]),
        // Allergies.
        Allergic("penicillin", "ertapenem", "cefadroxil", "cephalexin", "ceftriaxone", "cefazolin"),
        Allergic("ibuprofen: wheeze", "meloxicam"),
        Allergic("all antibiotics", Antibiotics),
        Allergic("morphine", Opioid),
        Allergic("txa", Txa),
        // State: TCCC 2021 and 2020, handbook p. 271, this project's warning rules.
        Seen(s => s with { RadialPulse = RadialPulse.Absent }, [Opioid, .. ByMouth]),
        Seen(s => s with { RespiratoryRate = 8 }, [Opioid]),
        Seen(s => s with { Mental = Mental.Voice }, [Opioid, .. ByMouth]),
        Seen(s => s with { Pale = true }, [Opioid]),
        Seen(s => s with { Pain = 0 }, ["paracetamol", "meloxicam", .. Sedating]),
        Also(c => c.TightFor("02:30"), ["meloxicam"]),
        Also(c => c.And("03:00", new Payload.WoundFound("w4", Limb.LeftLeg, null, WoundNature.Bleeding)), [Txa]),
        Also(c => c.With("watch", new Payload.WatchStated(false)), Sedating),
        Also(c => c.And("00:02", new Payload.SuppliesStated("naloxone", 0)), [Opioid]),
        Also(c => c.And("01:00", new Payload.NoteWritten("vomiting")), ByMouth),
        // Wounds.
        Also(c => c.And("00:20", new Payload.WoundFound("w5", null, BodyRegion.Abdomen, WoundNature.Bleeding)), [Opioid, .. ByMouth]),
        Also(c => c.And("00:20", new Payload.WoundFound("w6", null, BodyRegion.Head, WoundNature.Other)), ["meloxicam", Opioid]),
        Also(c => c.And("00:20", new Payload.WoundFound("w7", Limb.RightArm, null, WoundNature.Amputation)), [Opioid]),
        Also(
            c =>
                c.And("00:20", new Payload.WoundFound("w8", Limb.LeftArm, null, WoundNature.Bleeding))
                    .And("00:03", new Payload.BleedingChecked("w8", Farhold.Records.Bleeding.Active)),
            ["meloxicam", Opioid]
        ),
        // Given before.
        Given("00:10", "ketamine-vein", 20, [Opioid, .. Ketamine]),
        Given("00:10", "ketamine", 20, [Opioid, .. Ketamine]),
        Given("03:00", "tranexamic-acid", 2000, Txa),
        Given("40:00", "TXA", 1000, Txa),
        Given("03:00", "ibuprofen", 400, "meloxicam"),
        Given("03:00", "tramadol", 50, Opioid),
        Given("03:00", "doxycycline", 100, Antibiotics),
        Given("03:00", "ceftriaxone", 2000, Antibiotics),
        Given("03:00", "paracetamol", 1000, "paracetamol"),
    ];

    private static readonly Gen<(Person Person, ImmutableArray<Finding> Findings)> Casualties = Gen.Select(
        Gen.Select(Gen.OneOf(Sex.Male, Sex.Female), Gen.Int[1, 90], Gen.Int[0, 60], Gen.Bool),
        Gen.Int[0, Findings.Length - 1].Array[0, 4],
        (body, which) =>
        {
            var (sex, age, more, daily) = body;
            var mass = age < 16 ? 8 + (2.5 * age) + (more / 10) : 45 + more;
            return (new Person(sex, age, mass, daily), which.Distinct().Select(i => Findings[i]).ToImmutableArray());
        }
    );

    [Fact]
    public void No_drug_is_offered_against_what_is_in_the_record() =>
        Casualties.Sample(
            one =>
            {
                var against = one.Findings.SelectMany(f => f.Drugs).Concat(one.Person.Against).ToHashSet();
                foreach (var (drug, answer) in Ordered.Doses(Record(one.Person, one.Findings)).Where(a => against.Contains(a.Drug.Id)))
                    Assert.False(
                        answer is DoseAnswer.Give,
                        $"{drug.Id} with {string.Join(" + ", one.Findings.Select(f => f.Text))}, {one.Person}"
                    );
            },
            iter: Gens.Cases(3000)
        );

    /// <summary>What nobody asked or looked at makes no dose that would not be there with the answer.</summary>
    [Fact]
    public void Not_knowing_never_makes_a_dose() =>
        Gen.Select(Casualties, Gen.Int[0, 6])
            .Sample(
                (one, forgotten) =>
                {
                    var known = Ordered.Doses(Record(one.Person, one.Findings));
                    var less = Ordered.Doses(Record(one.Person, one.Findings, forgotten));
                    foreach (var ((drug, with), (_, without)) in known.Zip(less))
                        Assert.True(with is DoseAnswer.Give || without is not DoseAnswer.Give, drug.Id);
                },
                iter: Gens.LongCases(2000)
            );

    [Fact]
    public void Every_finding_can_be_the_only_one_that_speaks_against_a_drug() =>
        Assert.All(
            Findings.SelectMany(f => f.Drugs.Select(d => (Finding: f, Drug: d))),
            x =>
            {
                var well = new Person(Sex.Male, 34, 72, x.Drug == Opioid);
                Assert.IsType<DoseAnswer.Give>(Ordered.Dose(x.Drug, Record(well, [])));
                Assert.IsNotType<DoseAnswer.Give>(Ordered.Dose(x.Drug, Record(well, [x.Finding])));
            }
        );

    [Fact]
    public void Any_record_has_an_answer_and_none_of_it_without_an_order() =>
        Gens.Record.Sample(
            written =>
            {
                var record = written.Record;
                Assert.All(Ordered.Doses(record, written.Now, ShippedRules.Book), a => Assert.IsType<DoseAnswer.AskForAdvice>(a.Answer));
                Assert.Equal(Ordered.Formulary.Drugs.Length, Ordered.Doses(record, written.Now).Length);
            },
            iter: Gens.LongCases(400)
        );

    private static CareRecord Record(Person person, ImmutableArray<Finding> findings, int? forgotten = null)
    {
        var history = string.Join("; ", findings.Select(f => f.History).OfType<string>().Append("nothing else"));
        var medicines = findings.Select(f => f.Medicine).OfType<string>().Concat(person.Daily ? ["morphine"] : []);
        var pregnant = findings.Any(f => f.History == "pregnant");
        var opened = new Payload.CasualtyOpened(
            "Runa",
            pregnant ? Sex.Female : person.Sex,
            forgotten == 0 ? null
                : pregnant ? 30
                : person.Age,
            forgotten == 1 ? null
                : pregnant ? 70
                : person.Mass,
            forgotten == 2 ? default : [.. findings.Select(f => f.Allergy).OfType<string>()],
            forgotten == 3 ? default : [.. medicines],
            forgotten == 4 ? null
                : pregnant ? history
                : $"not pregnant; {history}"
        );
        var casualty = findings
            .Aggregate(Ordered.Casualty(), (c, f) => f.Change(c))
            .Signs(s => findings.Aggregate(s with { Pain = 6 }, (one, f) => f.Signs(one)))
            .With("person", opened);
        return (
            forgotten switch
            {
                5 => casualty.With("watch", null),
                6 => casualty.With("over", null),
                _ => casualty,
            }
        ).Record;
    }

    private static Finding Takes(string medicine, params string[] drugs) => new(medicine, drugs, Medicine: medicine);

    private static Finding Has(string history, string[] drugs) => new(history, drugs, History: history);

    private static Finding Allergic(string allergy, params string[] drugs) => new(allergy, drugs, Allergy: allergy);

    private static Finding Given(string ago, string name, double mg, params string[] drugs) =>
        new($"{name} {ago} ago", drugs) { Change = c => c.And(ago, new Payload.DrugGiven(name, mg, "mg", "vein")) };

    private static Finding Seen(
        Func<Payload.SignsTaken, Payload.SignsTaken> signs,
        string[] drugs,
        [CallerArgumentExpression(nameof(signs))] string text = ""
    ) => new(text, drugs) { Signs = signs };

    private static Finding Also(Func<Case, Case> change, string[] drugs, [CallerArgumentExpression(nameof(change))] string text = "") =>
        new(text, drugs) { Change = change };

    /// <param name="Daily">Takes an opioid daily: without it the lozenge takes advice.</param>
    private sealed record Person(Sex Sex, double Age, double Mass, bool Daily)
    {
        /// <summary>Adults only by label or design; JTS analgesia module: ketamine never under 3 years.</summary>
        public IEnumerable<string> Against =>
            [.. Age < 16 ? ["meloxicam", "moxifloxacin", .. Sedating] : Array.Empty<string>(), .. Daily ? Array.Empty<string>() : [Opioid]];
    }

    /// <summary>Something the record holds, and the drugs that are not given then.</summary>
    private sealed record Finding(string Text, string[] Drugs, string? Medicine = null, string? History = null, string? Allergy = null)
    {
        public Func<Case, Case> Change { get; init; } = c => c;

        public Func<Payload.SignsTaken, Payload.SignsTaken> Signs { get; init; } = s => s;
    }
}
