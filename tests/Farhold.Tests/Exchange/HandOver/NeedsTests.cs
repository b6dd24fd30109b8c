using CsCheck;
using Farhold.Exchange.HandOver;

namespace Farhold.Tests.Exchange.HandOver;

public class NeedsTests
{
    private static readonly Rulebook Shipped = ShippedRules.Book;

    [Fact]
    public void Of_an_empty_record_nothing_is_called_needless()
    {
        var needs = Needs.Of(CareFacts.Of(new([], []), Shipped, Some.At("11:00")));
        Assert.DoesNotContain(needs, n => n.State == Truth.NotMet);
        Assert.Equal(Truth.Unknown, needs.Single(n => n.Kind == NeedKind.Blood).State);
        Assert.Equal(Truth.Met, needs.Single(n => n.Kind == NeedKind.Advice).State);
    }

    /// <summary>Two and six hours: tactical combat casualty care; counted from the earliest time that is possible.</summary>
    [Fact]
    public void Surgery_is_needed_with_the_hours_left_on_the_worse_side()
    {
        var need = Of("11:30", NeedKind.Surgery, Limb.LeftLeg, ("10:00-10:30", Story.Tight("t1")));
        Assert.Equal((Truth.Met, "30 min left to 2 h 00 min, 4 h 30 min left to 6 h 00 min"), (need.State, need.Because));
        Assert.Equal((Some.At("12:00"), Some.At("16:00")), need.Until);
        Assert.StartsWith(
            "2 h 00 min passed 30 min ago",
            Of("12:30", NeedKind.Surgery, Limb.LeftLeg, ("10:00-10:30", Story.Tight("t1"))).Because,
            StringComparison.Ordinal
        );
    }

    /// <summary>Both bleeding and the pulse beyond stopped: tactical combat casualty care.</summary>
    [Fact]
    public void A_pulse_beyond_a_tight_tourniquet_asks_for_a_second_one()
    {
        var felt = new Payload.SignsTaken
        {
            DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                Limb.LeftLeg,
                DistalPulse.Present
            ),
        };
        Assert.Equal(Truth.Met, Of("10:30", NeedKind.SecondTourniquet, Limb.LeftLeg, ("10:00", Story.Tight("t1")), ("10:20", felt)).State);
        Assert.Equal(
            Truth.Unknown, // felt before it was tightened again
            Of("10:30", NeedKind.SecondTourniquet, Limb.LeftLeg, ("10:00", felt), ("10:10", Story.Tight("t1"))).State
        );
    }

    [Theory]
    [InlineData("11:00", Truth.Met)]
    [InlineData("18:00", Truth.Met)] // a sign is lifted by a look, never by time
    public void Signs_of_shock_ask_for_blood(string at, Truth state) =>
        Assert.Equal(state, Of(at, NeedKind.Blood, null, ("10:55", Some.GoodSigns with { HeartRate = 130 }), ("10:00", Aged)).State);

    [Fact]
    public void Where_shock_is_asked_for_and_not_seen_no_blood_is_asked_for_until_that_look_is_old()
    {
        (string, Payload)[] told =
        [
            ("10:00", Aged),
            ("10:30", Some.GoodSigns with { CapillaryRefillS = 1 }),
            ("10:55", Some.GoodSigns with { CapillaryRefillS = 1 }),
        ];
        Assert.Equal(Truth.NotMet, Of("11:00", NeedKind.Blood, null, told).State);
        Assert.Equal(Truth.Unknown, Of("12:00", NeedKind.Blood, null, told).State);
    }

    /// <summary>36 °C: Joint Trauma System, burn care, prolonged field care.</summary>
    [Fact]
    public void A_cold_casualty_is_warmed_and_nobody_felt_is_not_warm()
    {
        Assert.Equal(Truth.Met, Of("11:00", NeedKind.Warming, null, ("10:50", new Payload.SignsTaken { TemperatureC = 35.9 })).State);
        Assert.Equal(Truth.NotMet, Of("11:00", NeedKind.Warming, null, ("10:50", new Payload.SignsTaken { TemperatureC = 36 })).State);
        Assert.Equal(Truth.Met, Of("11:00", NeedKind.Warming, null, ("08:00", new Payload.CasualtyLookedOver(VeryCold: true))).State);
        Assert.Equal(Truth.Unknown, Of("11:00", NeedKind.Warming, null, ("08:00", new Payload.CasualtyLookedOver(VeryCold: false))).State);
    }

    /// <summary>Wet clothes off and wrapped against wind: tactical combat casualty care, prevention of hypothermia.</summary>
    [Fact]
    public void Who_was_found_wet_or_shivering_is_warmed_until_that_step_is_looked_at_again()
    {
        (string, Payload) notVery = ("10:50", new Payload.CasualtyLookedOver(VeryCold: false));
        (string, Payload) wet = ("10:50", new Payload.StepLooked(LookStep.Cold, StepFound.Something, "wet or shivering"));
        (string, Payload) dry = ("10:55", new Payload.StepLooked(LookStep.Cold, StepFound.Nothing));
        var need = Of("11:00", NeedKind.Warming, null, notVery, wet);
        Assert.Equal((Truth.Met, "wet or shivering, seen 10 min ago"), (need.State, need.Because));
        Assert.Equal(Truth.NotMet, Of("11:00", NeedKind.Warming, null, notVery, wet, dry).State);
    }

    [Fact]
    public void A_question_without_an_answer_asks_for_advice()
    {
        (string, Payload) asked = ("10:10", new Payload.QuestionAsked("duty doctor", "may we convert?"));
        (string, Payload) other = ("10:05", new Payload.AdviceReceived("duty doctor", "keep warm"));
        Assert.Contains("may we convert?", Of("11:00", NeedKind.Advice, null, asked, other).Because, StringComparison.Ordinal);
        Assert.Equal(
            Truth.NotMet,
            Of("11:00", NeedKind.Advice, null, asked, ("10:20", new Payload.AdviceReceived("duty doctor", "no"))).State
        );
    }

    /// <summary>Without a new entry, time alone never does away with a need. What advice is wanted for can pass with the hours.</summary>
    [Fact]
    public void No_need_goes_away_by_waiting() =>
        Gen.Select(Gens.Record, Gen.Int[1, 600])
            .Sample(
                (r, minutes) =>
                {
                    var record = new CareRecord(r.Entries.Where(e => e.Happened.Latest <= r.Now), r.Damaged);
                    var later = Needs.Of(CareFacts.Of(record, Shipped, r.Now + Duration.FromMinutes(minutes)));
                    var now = Needs.Of(CareFacts.Of(record, Shipped, r.Now));
                    foreach (var need in later.Where(n => n.State == Truth.NotMet && n.Kind != NeedKind.Advice))
                        Assert.Contains(now, n => n.State == Truth.NotMet && (n.Kind, n.Limb, n.What) == (need.Kind, need.Limb, need.What));
                },
                iter: Gens.Cases(400)
            );

    [Fact]
    public void Every_kind_is_spoken_of_in_every_record() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, Shipped, r.Now);
                var needs = Needs.Of(facts);
                foreach (var kind in Enum.GetValues<NeedKind>().Where(k => k != NeedKind.SecondTourniquet))
                    Assert.Contains(needs, n => n.Kind == kind);
                foreach (var limb in facts.Limbs)
                    Assert.Contains(needs, n => n.Kind == NeedKind.Surgery && n.Limb == limb.Limb);
                Assert.All(needs, n => Assert.NotEqual("", n.Because));
                Assert.Equal(needs.Length, new FactWords(facts, DateTimeZone.Utc).NeedLines.Length);
            },
            iter: Gens.Cases(200),
            print: r => r.ToString()
        );

    private static Payload Aged => new Payload.CasualtyOpened("Runa", AgeYears: 34, Medicines: []);

    private static Need Of(string at, NeedKind kind, Limb? limb, params (string, Payload)[] told) =>
        Needs.Of(CareFacts.Of(Story.Written(told), Shipped, Some.At(at))).First(n => n.Kind == kind && n.Limb == limb);
}
