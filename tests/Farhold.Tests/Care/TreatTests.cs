using System.Text.RegularExpressions;
using CsCheck;
using Farhold.Tests.Drugs;

namespace Farhold.Tests.Care;

/// <summary>Prompts for treatment: each once, in its time, for its reason, never against the record, and without a dose.</summary>
public partial class TreatTests
{
    private static readonly CareTask[] Prompts = [.. ShippedProtocol.Protocol.Tasks.Where(t => t.Group == TaskGroup.Treat)];

    [Fact]
    public void There_is_a_prompt_for_each_treatment_and_each_comes_once() =>
        Assert.Equal(
            ["antibiotics", "eye", "pain-relief", "splint", "tetanus", "tilt", "tranexamic-acid"],
            Prompts.Where(t => t is { Once: not null, Every: null }).Select(t => t.Id).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Each_asks_for_advice_and_holds_no_dose() =>
        Assert.All(
            Prompts,
            t =>
            {
                Assert.Contains("for advice about", t.Text, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotMatch(Dose(), $"{t.Text} {t.Reason} {t.Instead}");
            }
        );

    /// <summary>TCCC 2020: as soon as possible; CRASH-2: harm from 3 h after the injury on.</summary>
    [Theory]
    [InlineData("00:40", true, false)]
    [InlineData("02:59", true, false)]
    [InlineData("03:00", false, true)]
    [InlineData("05:00", false, true)]
    [InlineData("09:00", false, false)] // said for some hours only (design)
    public void Tranexamic_acid_is_prompted_within_three_hours_and_then_said_to_be_too_late(string ago, bool prompted, bool late)
    {
        var judged = Bled(ago).Judgement;
        Assert.Equal(prompted, Has(judged, "tranexamic-acid"));
        Assert.Equal(late, judged.Withheld.Any(w => w.Text.StartsWith("Too late for tranexamic acid", StringComparison.Ordinal)));
    }

    [Fact]
    public void An_injury_that_may_be_three_hours_ago_counts_as_three_hours() =>
        Assert.False(
            Has(
                Bled("00:40").And(new Happened(Case.Ago("03:10"), Case.Ago("00:50")), new Payload.InjuryStated(Mechanism.Fall)),
                "tranexamic-acid"
            )
        );

    /// <summary>TCCC 2020: shock, amputation, wound of the trunk, or severe bleeding.</summary>
    [Theory]
    [InlineData("nothing", false)]
    [InlineData("shock", true)]
    [InlineData("amputation", true)]
    [InlineData("trunk", true)]
    public void Tranexamic_acid_is_prompted_for_a_reason(string reason, bool prompted)
    {
        var light = Ordered
            .Casualty()
            .With(
                "tourniquet",
                new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1", Why: TighteningReason.Precaution),
                "00:40"
            );
        var casualty = reason switch
        {
            "shock" => light.Signs(s => s with { HeartRate = 135 }),
            "amputation" => light.And("00:30", new Payload.WoundFound("w8", Limb.RightArm, null, WoundNature.Amputation)),
            "trunk" => light.LookedOver(o => o with { TrunkWound = true }),
            _ => light,
        };
        Assert.Equal(prompted, Has(casualty, "tranexamic-acid"));
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)] // moderate pain: common practice
    [InlineData(8, true)]
    public void Pain_relief_is_prompted_for_a_tied_limb_that_hurts(int pain, bool prompted) =>
        Assert.Equal(prompted, Has(Ordered.Casualty().Signs(s => s with { Pain = pain }), "pain-relief.left-leg"));

    [Fact]
    public void Pain_that_nobody_asked_about_is_asked_about_first()
    {
        var due = Case.Well.Judgement.Due.Single(d => d.Task == "pain-relief.left-leg");
        Assert.StartsWith("First ask how strong the pain is", due.Text, StringComparison.Ordinal);
    }

    /// <summary>Antibiotics at the latest after 3 h (from memory); where surgery is there by then, it gives them.</summary>
    [Theory]
    [InlineData("02:30", false)]
    [InlineData("09:00", true)]
    public void Antibiotics_are_prompted_where_surgery_is_far(string help, bool prompted) =>
        Assert.Equal(prompted, Has(Ordered.Casualty().HelpIn(help), "antibiotics"));

    [Theory]
    [InlineData(WoundNature.Bleeding, null, true)]
    [InlineData(WoundNature.Fracture, "closed", false)]
    [InlineData(WoundNature.Burn, null, false)]
    public void Antibiotics_are_for_open_wounds(WoundNature nature, string? note, bool prompted) =>
        Assert.Equal(
            prompted,
            Has(Ordered.Casualty().With("wound", new Payload.WoundFound("w1", Limb.LeftLeg, null, nature, note), "00:39"), "antibiotics")
        );

    [Theory]
    [InlineData("tetanus", "an open wound for two hours", true)]
    [InlineData("tetanus", "an open wound", false)] // later: two hours after the injury (design)
    [InlineData("splint", "a fracture", true)]
    [InlineData("splint", "an open wound", false)]
    [InlineData("eye", "an eye", true)]
    [InlineData("eye", "an eyebrow", false)]
    [InlineData("tilt", "pregnant", true)]
    [InlineData("tilt", "not pregnant", false)]
    [InlineData("tilt", "an open wound", false)]
    public void Other_treatment_is_prompted_where_the_record_calls_for_it(string task, string state, bool prompted)
    {
        var well = Ordered.Casualty();
        Payload.CasualtyOpened Woman(bool pregnant) => new("Runa", Sex.Female, 30, 70, Pregnant: pregnant);
        Assert.Equal(
            prompted,
            Has(
                state switch
                {
                    "an open wound for two hours" => well.TightFor("02:10"),
                    "a fracture" => well.And("00:30", new Payload.WoundFound("w5", Limb.RightLeg, null, WoundNature.Fracture)),
                    "an eye" => well.And("00:30", new Payload.WoundFound("w5", null, BodyRegion.Head, WoundNature.Other, "left eye")),
                    "an eyebrow" => well.And(
                        "00:30",
                        new Payload.WoundFound("w5", null, BodyRegion.Head, WoundNature.Other, "eyebrow cut")
                    ),
                    "pregnant" or "not pregnant" => well.With("person", Woman(state == "pregnant"), "00:39"),
                    _ => well,
                },
                task
            )
        );
    }

    [Fact]
    public void A_tick_or_a_drug_given_does_it_for_good()
    {
        var casualty = Bled("02:10");
        foreach (var prompt in new[] { "tranexamic-acid", "pain-relief.left-leg", "antibiotics", "tetanus" })
            Assert.False(Has(casualty.And("00:10", new Payload.TaskDone(prompt)), prompt), prompt);
        foreach (
            var (prompt, drug) in new[]
            {
                ("tranexamic-acid", "TXA"),
                ("pain-relief.left-leg", "morphine"),
                ("antibiotics", "amoxicillin"),
                ("tetanus", "Tetanus vaccine"),
            }
        )
        {
            Assert.True(Has(casualty.And("00:10", new Payload.DrugGiven("ondansetron", 4, "mg", "mouth")), prompt), prompt);
            Assert.False(Has(casualty.And("00:10", new Payload.DrugGiven(drug, 1, "mg", "vein")), prompt), prompt);
        }
    }

    [Fact]
    public void What_was_given_before_the_record_began_is_not_prompted_again() =>
        Assert.False(Has(Bled("00:40").And("00:50", new Payload.DrugGiven("TXA", 2, "g", "vein")), "tranexamic-acid"));

    [Fact]
    public void With_an_order_it_names_what_is_ordered_and_still_no_dose()
    {
        var due = Ordered.Judged(Ordered.Casualty()).Due;
        var pain = due.Single(d => d.Task == "pain-relief.left-leg");
        Assert.Equal(
            "Ordered by Dr Vigdis Holm (invented): paracetamol, or meloxicam, or ketamine vein, or ketamine muscle. Go by the drug list.",
            pain.Text
        );
        Assert.True(pain.ByDrugList);
        Assert.All(due.Where(d => d.ByDrugList), d => Assert.DoesNotMatch(Dose(), d.Text));
        var shock = Ordered.Judged(Ordered.Casualty().Signs(s => s with { Pain = 6, RadialPulse = RadialPulse.Absent }));
        Assert.Equal(
            "Ordered by Dr Vigdis Holm (invented): ketamine vein, or ketamine muscle. Go by the drug list.",
            shock.Due.Single(d => d.Task == "pain-relief.left-leg").Text
        );
    }

    [Fact]
    public void Where_the_record_speaks_against_every_drug_of_it_nothing_is_prompted()
    {
        Assert.False(Has(Bled("00:40").And("00:10", new Payload.DrugGiven("tranexamic", 1, "g", "vein")), "tranexamic-acid"));
        var allergic = new Payload.CasualtyOpened("Runa", AgeYears: 34, Allergies: ["every antibiotic"]);
        Assert.False(Has(Ordered.Casualty().With("person", allergic, "00:39"), "antibiotics"));
    }

    [Fact]
    public void No_prompt_names_drugs_as_ordered_of_which_none_may_be_given() =>
        Gens.StrangeRecord.Sample(
            written =>
            {
                var judged = written.Judged(Ordered.Protocol);
                var answers = Ordered.Doses(written.Record, written.Now);
                foreach (var prompt in Prompts)
                {
                    var about = answers.Where(a => prompt.Drugs.Any(a.Drug.Is)).ToArray();
                    if (about.Length > 0 && about.All(a => a.Answer is DoseAnswer.Not) && Settled(written, judged))
                        Assert.DoesNotContain(judged.Due, d => CareTask.Is(prompt.Id, d.Task) && d.ByDrugList);
                }
            },
            iter: Gens.LongCases(4000)
        );

    [Fact]
    public void No_verdict_hangs_on_a_prompt() =>
        Gens.Record.Sample(
            written =>
            {
                var without = ShippedProtocol.Protocol with
                {
                    Tasks = [.. ShippedProtocol.Protocol.Tasks.Where(t => t.Group != TaskGroup.Treat)],
                };
                var (with, less) = (written.Judged(), written.Judged(without));
                Assert.Equal(less.Limbs.Select(l => (l.Limb, l.Verdict)), with.Limbs.Select(l => (l.Limb, l.Verdict)));
                Assert.Equal(
                    less.Due.Select(d => d.Task),
                    with.Due.Select(d => d.Task).Where(d => Prompts.All(p => !CareTask.Is(p.Id, d)))
                );
                Assert.DoesNotContain(with.Due.Take(1), d => d.Group == TaskGroup.Treat && with.Limbs.Length > 0);
            },
            iter: Gens.LongCases(2000)
        );

    [Fact]
    public void A_prompt_that_was_ticked_never_comes_back() =>
        Gens.Record.Sample(
            written =>
            {
                foreach (var due in written.Judged().Due.Where(d => d.Group == TaskGroup.Treat))
                {
                    var record = written.Record;
                    record.Add(
                        EntryWriting.Write(
                            record.NextId("tick"),
                            Happened.At(written.Now),
                            written.Now,
                            "Ane",
                            new Payload.TaskDone(due.Task)
                        )
                    );
                    Assert.DoesNotContain(Judge.At(record, ShippedRules.Book, written.Now).Due, d => d.Task == due.Task);
                }
            },
            iter: Gens.LongCases(400)
        );

    private static bool Settled(Written written, Judgement judged) =>
        written.Record.Readings.All(state => Doubt.Unsettled(judged.Doubts, state, written.Now).IsEmpty);

    private static Case Bled(string ago) => Ordered.Casualty().TightFor(ago);

    private static bool Has(Case casualty, string task) => Has(casualty.Judgement, task);

    private static bool Has(Judgement judged, string task) => judged.Due.Any(d => d.Task == task && d.At <= Case.Now);

    /// <summary>A number with a unit of mass or volume.</summary>
    [GeneratedRegex(@"\d\s*(mg|g|µg|mcg|ml|millilit|gram)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Dose();
}
