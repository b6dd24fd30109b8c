using CsCheck;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;

namespace Farhold.Tests.Exchange.HandOver;

public class LooksTests
{
    [Fact]
    public void What_was_found_clear_what_could_not_be_looked_at_and_what_nobody_looked_at_are_told_apart()
    {
        var lines = Words(
            ("10:00", new Payload.StepLooked(LookStep.Airway, StepFound.Nothing)),
            ("10:01", new Payload.StepLooked(LookStep.Belly, StepFound.NotLooked, "clothes frozen")),
            ("10:02", new Payload.StepLooked(LookStep.Head, StepFound.Something, "cut over the eye")),
            ("10:05", new Payload.RegionLooked(null, BodyRegion.Chest, LookFound.Nothing))
        ).Looks;
        Assert.Contains("looked at and found clear: first look, airway (1 h 00 min ago), chest (55 min ago)", lines);
        Assert.Contains("could not be looked at: first look, belly (clothes frozen)", lines);
        Assert.Contains(lines, l => l.Contains("First look, head: looked, something found (cut over the eye)", StringComparison.Ordinal));
        Assert.Contains("steps of the first look not recorded: bleeding, breathing, circulation, cold, background", lines);
        Assert.Contains(lines, l => l.StartsWith("no look recorded at: head, neck, abdomen", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_called_clear_where_a_wound_is_recorded()
    {
        var lines = Words(
            ("10:00", new Payload.RegionLooked(null, BodyRegion.Chest, LookFound.Nothing)),
            ("10:20", new Payload.WoundFound("w2", null, BodyRegion.Chest, WoundNature.Bleeding))
        ).Looks;
        Assert.DoesNotContain(lines, l => l.StartsWith("looked at and found clear", StringComparison.Ordinal));
        Assert.Contains("called clear, but the record says otherwise: chest (1 h 00 min ago): wound w2 is recorded there", lines);
    }

    [Fact]
    public void How_and_when_the_casualty_came_to_harm_is_told_as_a_range()
    {
        var words = Words(("09:00-09:30", new Payload.InjuryStated(Mechanism.Fall, "onto the saw")));
        Assert.Equal(["mechanism: fall (onto the saw)"], words.Mechanism);
        Assert.Equal("injured between 09:00 UTC and 09:30 UTC, 1 h 30 min to 2 h 00 min ago", words.Injured);
    }

    /// <summary>Nothing of the first look or of the mechanism fits into 160 characters: the message says that the log has more.</summary>
    [Fact]
    public void A_short_message_points_to_the_log_for_the_first_look_and_the_mechanism()
    {
        foreach (
            var told in (Payload[])[new Payload.InjuryStated(Mechanism.Fall), new Payload.StepLooked(LookStep.Head, StepFound.NotLooked)]
        )
            Assert.Contains(
                ShortMessage.Log,
                ShortMessage.Of(CareFacts.Of(Story.Written(("10:00", told)), ShippedRules.Book, Some.At("11:00"))).LeftOut
            );
    }

    /// <summary>What a form passes over is named, or its silence would pass for "nothing".</summary>
    [Fact]
    public void What_a_form_does_not_say_it_names() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, ShippedRules.Book, r.Now);
                foreach (var kind in Enum.GetValues<FormKind>().Where(k => k != FormKind.Radio))
                {
                    var text = Forms.Of(kind, facts, DateTimeZone.Utc).Text();
                    foreach (
                        var (topic, told) in new[]
                        {
                            ("notes", facts.Notes),
                            ("supplies", facts.Supplies),
                            ("what was asked and advised", facts.Contacts.Concat(facts.Questions).Concat(facts.Advice)),
                            ("how care ended and what came of it", facts.Ended.Concat(facts.Outcomes)),
                            ("drugs, fluids and urine", facts.Drugs),
                            ("care of wounds and moves", facts.Moves),
                            ("the rest of the casualty", facts.Regions.Where(s => s.As<Payload.RegionLooked>().Found != LookFound.Nothing)),
                        }
                    )
                    foreach (var stated in told)
                        Assert.True(
                            text.Contains(Plain.Line(stated.Text), StringComparison.Ordinal) || Named(text, topic),
                            $"{kind}: {stated.Text}\n{text}"
                        );
                }
            },
            iter: Gens.Cases(100),
            print: r => r.ToString()
        );

    /// <summary>No food for a casualty in shock: the plan of care withholds it, and the next hands hear so.</summary>
    [Theory]
    [InlineData(FormKind.Mist)]
    [InlineData(FormKind.Atmist)]
    [InlineData(FormKind.Sbar)]
    [InlineData(FormKind.NineLine)]
    [InlineData(FormKind.Radio)]
    public void What_must_not_be_done_now_is_said_in_every_form(FormKind kind)
    {
        var record = Story.Written(
            ("06:00", new Payload.CasualtyOpened("Runa", AgeYears: 34)),
            ("06:00", Story.Tight("t1")),
            ("11:55", Some.GoodSigns with { HeartRate = 130, Mental = Mental.Confused })
        );
        var facts = CareFacts.Of(record, ShippedRules.Book, Some.At("12:00"));
        var withheld = new FactWords(facts, DateTimeZone.Utc).Withheld;
        Assert.NotEmpty(withheld);
        var text = Forms.Of(kind, facts, DateTimeZone.Utc).Text();
        foreach (var line in withheld)
            Assert.Contains(kind == FormKind.Radio ? SpokenText.Of(line) : line, text, StringComparison.Ordinal);
    }

    private static bool Named(string text, string topic) =>
        text.Split('\n').Any(l => l.Contains("not said here:", StringComparison.Ordinal) && l.Contains(topic, StringComparison.Ordinal));

    private static FactWords Words(params (string, Payload)[] told) =>
        new(CareFacts.Of(Story.Written(told), ShippedRules.Book, Some.At("11:00")), DateTimeZone.Utc);
}
