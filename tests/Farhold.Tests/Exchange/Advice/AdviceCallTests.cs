using System.Collections.Immutable;
using CsCheck;
using Farhold.Exchange.Advice;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;

namespace Farhold.Tests.Exchange.Advice;

public class AdviceCallTests
{
    [Fact]
    public void Whatever_blocks_the_verdict_is_in_the_call_whatever_is_asked() =>
        Gen.OneOf(Gens.Record, Gens.StrangeRecord)
            .Sample(
                written =>
                {
                    var facts = CareFacts.Of(written.Record, ShippedRules.Book, written.Now);
                    foreach (var question in AdviceQuestion.Offered(facts))
                    {
                        var call = new AdviceCall(facts, question, DateTimeZone.Utc);
                        var (text, spoken) = (call.Form.Text(), call.Spoken.Text());
                        foreach (var limb in facts.Limbs.Where(l => question.Limb is null || l.Limb == question.Limb))
                        foreach (var finding in limb.Verdict?.Findings.Where(f => f.Against != Truth.NotMet) ?? [])
                        {
                            Assert.Contains(Plain.Line(VerdictWords.Of(finding)), text, StringComparison.Ordinal);
                            Assert.Contains(SpokenText.Of(Plain.Line(finding.Criterion.Text)), spoken, StringComparison.Ordinal);
                        }

                        foreach (var caution in facts.Cautions)
                            Assert.Contains(caution, text, StringComparison.Ordinal);
                        Assert.InRange(Gsm7.Septets(call.Short) ?? int.MaxValue, 1, Gsm7.MessageSeptets);
                    }
                },
                iter: Gens.Cases(300)
            );

    [Theory]
    [InlineData("well", AskFor.Attempt)]
    [InlineData("late", AskFor.Late)]
    [InlineData("bled", AskFor.Further)]
    [InlineData("pale", AskFor.SoftSign)]
    [InlineData("shocked", AskFor.Guide)]
    public void The_first_question_is_what_the_verdict_asks_for(string which, AskFor asks)
    {
        var question = AdviceQuestion.Offered(Facts(Scene(which)))[0];
        Assert.Equal((asks, Limb.LeftLeg), (question.For, question.Limb));
        Assert.EndsWith(asks is AskFor.SoftSign or AskFor.Guide ? "." : "?", question.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_late_question_says_since_when_as_a_range()
    {
        var late = Case.Well.With("tourniquet", null).And(new Happened(Case.Ago("03:00"), Case.Ago("02:30")), Tightened);
        var call = Call(late, AskFor.Late);
        Assert.Contains("2 h 30 min to 3 h 00 min after it was first tightened?", call.Question.Text, StringComparison.Ordinal);
        Assert.StartsWith(
            "ASK convert TQ left leg late?; on since 09:00Z-09:30Z; against late.oversight?",
            call.Short,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "where nobody can be reached the hours alone no longer stand against it",
            call.Form.Text(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_no_yes_lifts_is_marked()
    {
        var shocked = Call(Case.Well.NewSigns(s => s with { HeartRate = 130 }), AskFor.Attempt).Form.Text();
        Assert.Contains("The heart rate is over 120 a minute. (heart rate 130 /min", shocked, StringComparison.Ordinal);
        Assert.Contains("[no yes lifts this]", shocked, StringComparison.Ordinal);
        Assert.DoesNotContain("[no yes lifts this]", Call(Scene("pale"), AskFor.SoftSign).Form.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_known_is_said_and_what_was_tried_too()
    {
        var text = Call(Case.Well.Tried("00:35", "00:25", AttemptOutcome.Bled), AskFor.Further).Form.Text();
        foreach (
            var said in (string[])
                [
                    "Say your name; with one casualty",
                    "position not noted: say where you are",
                    "attempt 1 to convert t1",
                    "advice not asked for and not received so far",
                    "not counted: haemostatic gauze, cloth, elastic bandage",
                    "allergies: not recorded",
                    "without an answer by 12:30 UTC we count you as not reached",
                    "left leg, until we hear from you: Leave it on and ask for advice",
                ]
        )
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_caller_and_the_place_are_said_first()
    {
        var facts = Facts(Case.Well.And("00:03", new Payload.PositionNoted(61.5, 6.25)));
        var form = new AdviceCall(facts, AdviceQuestion.Offered(facts)[0], DateTimeZone.Utc, new("Ane", "32V LP 12345 67890")).Form;
        Assert.Equal(
            [
                "This is Ane, with one casualty",
                "Runa, sex not known, 34 years, mass not known",
                "we are at 32V LP 12345 67890",
                "position 61.5 degrees north, 6.25 degrees east, noted 11:57 UTC",
            ],
            form.Parts[0].Lines
        );
    }

    [Theory]
    [InlineData(AskFor.Drug, "paracetamol", "May we give paracetamol? How much, by which way, how often?")]
    [InlineData(AskFor.Drug, null, "May we give a drug? How much, by which way, how often?")]
    [InlineData(AskFor.Other, "Shall we move?", "Shall we move?")]
    [InlineData(AskFor.Other, " ", "What do you advise?")]
    public void Own_words_are_asked_as_they_stand(AskFor kind, string? text, string asked) =>
        Assert.Equal(asked, AdviceQuestion.Named(Facts(Case.Well), kind, null, text)!.Text);

    [Fact]
    public void A_question_that_no_limb_has_is_not_offered() =>
        Assert.Null(AdviceQuestion.Named(Facts(Case.Well), AskFor.Further, null, null));

    [Fact]
    public void A_spoken_call_has_no_digits() =>
        Assert.DoesNotContain(
            string.Join('\n', Call(Scene("late"), AskFor.Late).Spoken.Parts.SelectMany(p => p.Lines)),
            c => char.IsAsciiDigit(c)
        );

    [Fact]
    public void A_drug_with_strange_letters_still_fits_a_short_message()
    {
        var call = Call(Case.Well, AskFor.Drug, "łącznie " + new string('x', 200));
        Assert.InRange(Gsm7.Septets(call.Short)!.Value, 1, 160);
    }

    [Fact]
    public void What_was_advised_is_read_back_with_its_question_its_limits_and_its_office()
    {
        var advice = new Payload.AdviceReceived("Dr Lund", "go ahead, slowly", ["attempt"], Authority: "duty doctor");
        Assert.Equal(
            [
                "I read back.",
                "You are Dr Lund, duty doctor.",
                "We asked: May we?",
                "You said: go ahead, slowly",
                "You allow an attempt. No end was said: we take 2 h 00 min, until 14:00 UTC.",
                "Is that right?",
            ],
            ReadBack.Of(advice, "May we?", ShippedRules.Book.Protocol, Case.Now, DateTimeZone.Utc)
        );
    }

    [Theory]
    [InlineData(null, false, "Of an attempt you said neither yes nor no: we take it for no yes.")]
    [InlineData(false, false, "You allow no attempt, until there is newer advice.")]
    [InlineData(false, true, "You allow no attempt until 13:00 UTC.")]
    [InlineData(true, true, "You allow an attempt until 13:00 UTC.")]
    public void What_is_allowed_is_read_back_as_it_was_said(bool? allows, bool ends, string said) =>
        Assert.Contains(
            said,
            ReadBack.Of(
                new(
                    "Dr Lund",
                    "words",
                    allows switch
                    {
                        true => ["attempt"],
                        false => [],
                        null => default(ImmutableArray<string>),
                    },
                    Until: ends ? Case.In("01:00") : null
                ),
                null,
                ShippedRules.Book.Protocol,
                Case.Now,
                DateTimeZone.Utc
            )
        );

    private static readonly Payload.TourniquetTightened Tightened = new("t1", Limb.LeftLeg, Wound: "w1");

    private static Case Scene(string which) =>
        which switch
        {
            "late" => Case.Well.TightFor("02:30"),
            "bled" => Case.Well.Tried("00:35", "00:25", AttemptOutcome.Bled),
            "shocked" => Case.Well.NewSigns(s => s with { HeartRate = 130, Pale = true }),
            "pale" => Case.Well.NewSigns(s => s with { Pale = true }),
            _ => Case.Well,
        };

    private static CareFacts Facts(Case said) => CareFacts.Of(said.Record, ShippedRules.Book, Case.Now);

    private static AdviceCall Call(Case said, AskFor kind, string? text = null)
    {
        var facts = Facts(said);
        return new(facts, AdviceQuestion.Named(facts, kind, null, text)!, DateTimeZone.Utc);
    }
}
