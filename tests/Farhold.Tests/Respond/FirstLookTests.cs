using CsCheck;

namespace Farhold.Tests.Respond;

/// <summary>The first look over the whole casualty: its order, what it writes, and that what nobody looked at stays unknown.</summary>
public class FirstLookTests
{
    private static PlayedLook Begun => new(Some.At("10:00"));

    [Fact]
    public void What_kills_soonest_comes_first() // massive bleeding, airway, respiration, circulation, hypothermia, head: TCCC, as MARCH
    {
        var look = Begun;
        var asked = new List<LookStep>();
        while (look.Question is { } question)
        {
            if (asked.LastOrDefault((LookStep)(-1)) != question.Step)
                asked.Add(question.Step);
            look.Give(question, question.Answers[0]);
        }

        Assert.Equal(Enum.GetValues<LookStep>(), asked);
        Assert.Empty(look.Look.Unknown);
    }

    [Fact]
    public void With_one_finding_it_takes_no_more_than_fourteen_taps() // one to open it, one for when it happened
    {
        var look = OneLegBleeds();
        Assert.Null(look.Question);
        Assert.Equal(14, look.Taps + 2);
        Assert.True(look.Now - Some.At("10:00") < Duration.FromMinutes(2));
    }

    [Fact]
    public void All_clear_is_known_and_nothing_else_is_asked_of_the_rest_of_the_casualty()
    {
        var look = OneLegBleeds();
        var limb = Judge.At(look.Record, ShippedRules.Book, look.Now).Limbs.Single();
        foreach (var rest in (string[])["rest.bleeding", "rest.trunk", "rest.cold", "rest.blood-thinner"]) // breaths have to be counted
            Assert.Equal(Truth.NotMet, limb.Findings.Single(f => f.Criterion.Id == rest).State);
    }

    [Fact]
    public void A_finding_stops_it_says_what_to_do_and_starts_the_limbs_clock()
    {
        var look = Begun.Tap("An arm or a leg bleeds", "Left leg");
        var due = Judge.At(look.Record, ShippedRules.Book, look.Now).Due[0];
        Assert.True(due is { AtOnce: true, Task: "bleeding.w1" });
        var leg = look.Question!.Answers.Single(a => a.Text == "An arm or a leg bleeds").Choices.Single(c => c.Text == "Left leg");
        Assert.Equal(
            "Left leg: press hard; if that does not stop it, a tourniquet on the skin 5 to 7 cm above the wound, not over a joint.",
            leg.Act!.Text
        );
        Assert.Equal(LookStep.Bleeding, look.Look.Next); // the step stands until the rest has been looked at

        look = Begun.Tap("An arm or a leg bleeds", "Left leg", "Tourniquet on; it stopped");
        var judged = Judge.At(look.Record, ShippedRules.Book, look.Now);
        Assert.DoesNotContain(judged.Due, d => d.AtOnce);
        Assert.Equal(Limb.LeftLeg, judged.Limbs.Single().Limb);
        Assert.Contains(look.Question!.Answers, a => a.Text == "Nothing else bleeds");
    }

    [Fact]
    public void An_airway_that_is_not_free_is_at_once_until_it_is()
    {
        var look = Begun.Tap("Looked: nothing bleeds").Tap("Noisy or blocked");
        Assert.True(Judge.At(look.Record, ShippedRules.Book, look.Now).Due[0] is { AtOnce: true, Task: "airway" });
        Assert.Equal(LookStep.Breathing, look.Look.Next);

        var freed = Begun.Tap("Looked: nothing bleeds").Tap("Noisy or blocked", "Free now");
        Assert.DoesNotContain(Judge.At(freed.Record, ShippedRules.Book, freed.Now).Due, d => d.AtOnce);
    }

    [Fact]
    public void A_step_that_nobody_could_look_at_is_unknown_and_the_look_goes_on()
    {
        var look = Begun.Tap("Can't look now");
        Assert.Equal(LookStep.Airway, look.Look.Next);
        Assert.Equal(Truth.Unknown, look.Look[LookStep.Bleeding].Found);
        Assert.Equal(Enum.GetValues<LookStep>(), look.Look.Unknown);
    }

    [Fact]
    public void The_trunk_is_clear_only_where_all_of_it_was_looked_at()
    {
        var skipped = Begun
            .Tap("Looked: nothing bleeds")
            .Tap("Airway is free")
            .Tap("Can't look now")
            .Tap("Strong; skin warm, dry and pink");
        skipped.Tap("Dry and warm").Tap("Awake and clear, nothing on the head").Tap("Looked: nothing, not pregnant");
        Assert.DoesNotContain(skipped.Written, w => w.What is Payload.CasualtyLookedOver { TrunkWound: not null });
    }

    [Fact]
    public void Of_two_answers_that_may_each_be_the_newest_the_graver_counts()
    {
        var record = new CareRecord(
            [
                EntryWriting.Write(
                    new("a", 1),
                    new(Some.At("10:00"), Some.At("10:20")),
                    Some.At("10:30"),
                    "Ane",
                    new Payload.StepLooked(LookStep.Head, StepFound.Something)
                ),
                EntryWriting.Write(
                    new("b", 1),
                    Happened.At(Some.At("10:10")),
                    Some.At("10:30"),
                    "Tor",
                    new Payload.StepLooked(LookStep.Head, StepFound.Nothing)
                ),
            ],
            []
        );
        Assert.Equal(Truth.Met, FirstLook.At(record.Readings[0], Some.At("10:30"))[LookStep.Head].Found);
    }

    [Theory]
    [InlineData(Sex.Male, 34.0, false)]
    [InlineData(Sex.Female, 8.0, false)]
    [InlineData(Sex.Female, 34.0, true)]
    [InlineData(null, null, true)]
    public void Pregnancy_is_asked_where_it_can_be(Sex? sex, double? age, bool asked)
    {
        var look = new PlayedLook(Some.At("10:00"), new("Runa", sex, age));
        while (look.Question is { Step: not LookStep.Belly } question)
            look.Give(question, question.Answers[0]);
        Assert.Equal(asked, look.Question!.Answers.Any(a => a.Text == "Pregnant"));
    }

    /// <summary>Rule 1 of the design: what is left out is unknown, and unknown is never good news.</summary>
    [Fact]
    public void A_step_left_out_never_makes_the_verdict_milder() =>
        Gen.Select(Gen.Int[0, 99].Array[24], Gen.Int[0, 255])
            .Sample(
                (choices, left) =>
                {
                    var look = new PlayedLook(Case.Ago("00:09"));
                    var found = new HashSet<LookStep>();
                    for (var i = 0; look.Question is { } question && i < choices.Length; i++)
                    {
                        // Mostly clear, or nothing would ever be left that a step could spoil.
                        var answer = question.Answers[choices[i] < 80 ? 0 : choices[i] % question.Answers.Length];
                        if (answer != question.Answers[0])
                            found.Add(question.Step);
                        look.Give(question, answer);
                        if (!answer.Choices.IsEmpty)
                            look.Give(question, answer.Choices[choices[i] % answer.Choices.Length]);
                    }

                    var base0 = Case.Well.With("over", null).With("earlier", null).With("signs", null).ClearLooks("00:30", "00:12");
                    Verdict Of(Func<(LookStep Step, Payload What), bool> keep) =>
                        look.Written.Where(keep).Aggregate(base0, (c, w) => c.And("00:05", w.What)).Verdict;
                    var whole = Of(_ => true);
                    // A finding that is left out is not known: only steps that were clear are dropped.
                    var without = Of(w => (left >> (int)w.Step & 1) == 0 || found.Contains(w.Step));
                    if (whole != Verdict.Attempt)
                        Assert.NotEqual(Verdict.Attempt, without);
                },
                iter: Gens.Cases(400)
            );

    private static PlayedLook OneLegBleeds() =>
        Begun
            .Tap("An arm or a leg bleeds", "Left leg", "Tourniquet on; it stopped")
            .Tap("Nothing else bleeds")
            .Tap("Airway is free")
            .Tap("Looked: nothing, breathing is easy")
            .Tap("Strong; skin warm, dry and pink")
            .Tap("Dry and warm")
            .Tap("Awake and clear, nothing on the head")
            .Tap("Looked: nothing, not pregnant")
            .Tap("Asked: none of these")
            .Tap("Fall");
}
