using CsCheck;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;

namespace Farhold.Tests.Exchange.Message;

public class ShortMessageTests
{
    private static readonly Gen<(CareFacts Facts, Written From)> Told = Gen.OneOf(Gens.Record, Gens.StrangeRecord)
        .Select(r => (CareFacts.Of(r.Record, ShippedRules.Book, r.Now), r));

    [Fact]
    public void It_fits_one_message_and_can_be_read() =>
        Sample(facts =>
        {
            var message = ShortMessage.Of(facts);
            Assert.InRange(Gsm7.Septets(message.Text) ?? int.MaxValue, 1, Gsm7.MessageSeptets);
            Assert.Equal(message.LeftOut.IsEmpty, Read(message.Text).LeftOut!.Value.IsEmpty);
        });

    [Fact]
    public void Every_part_fits_one_message_and_can_be_read() =>
        Sample(facts =>
        {
            var parts = ShortMessage.Parts(facts);
            for (var i = 0; i < parts.Length; i++)
            {
                Assert.InRange(Gsm7.Septets(parts[i].Text) ?? int.MaxValue, 1, Gsm7.MessageSeptets);
                Assert.Equal((i + 1, parts.Length), Read(parts[i].Text).Part);
            }

            Assert.NotNull(Read(parts[^1].Text).LeftOut);
        });

    [Fact]
    public void A_tourniquet_time_is_never_dropped() =>
        Sample(facts =>
        {
            Tells(Read(ShortMessage.Of(facts).Text).Facts);
            Tells([.. ShortMessage.Parts(facts).SelectMany(p => Read(p.Text).Facts)]);

            void Tells(IEnumerable<MessageFact> told)
            {
                foreach (var limb in facts.Limbs)
                {
                    var one = Assert.Single(told.OfType<MessageFact.Tourniquet>(), t => t.Limb == limb.Limb);
                    Assert.Equal(limb.Tight, one.Tight);
                    Contains(one.First, limb.FirstTightened);
                }
            }
        });

    [Fact]
    public void What_is_read_never_contradicts_the_record() =>
        Sample(facts =>
        {
            foreach (
                var fact in Read(ShortMessage.Of(facts).Text).Facts.Concat(ShortMessage.Parts(facts).SelectMany(p => Read(p.Text).Facts))
            )
                Agrees(fact, facts);
        });

    [Fact]
    public void What_is_not_told_and_not_cut_was_not_recorded_or_is_in_doubt() =>
        Sample(facts =>
        {
            var message = ShortMessage.Of(facts);
            bool Mentions(string word) => message.LeftOut.Contains(word) || message.Text.Contains($";{word}", StringComparison.Ordinal);
            Assert.True(facts.Drugs.All(d => d.Disputed) || Mentions("DRUG"));
            Assert.True(facts.Help is not [{ Disputed: false }] || Mentions("HELP"));
            Assert.True(facts.Rest.All(r => r.Latest is not [{ Disputed: false }]) || Mentions("REST"));
            Assert.True(facts.Positions is not [{ Disputed: false }] || Mentions("POS"));
            Assert.True(facts.Person.Allergies is null || Mentions("ALLERGY"));
            Assert.True(facts.Cautions.IsEmpty || Mentions("DOUBT"));
            Assert.True(facts.Notes.IsEmpty || message.LeftOut.Contains(ShortMessage.Log));
        });

    [Fact]
    public void The_entries_it_amounts_to_make_a_record_in_which_nobody_is_told_to_attempt() =>
        Told.Sample(
            t =>
            {
                var entries = MessageEntries.Of(Read(ShortMessage.Of(t.Facts).Text));
                var record = new CareRecord(entries, []);
                Assert.Empty(record.Doubts);
                var judgement = Judge.At(record, ShippedRules.Book, Instant.Max(t.From.Now, record.LastRecorded!.Value));
                Assert.DoesNotContain(judgement.Limbs, l => l.Verdict == Verdict.Attempt);
                Assert.Equal(
                    t.Facts.Limbs.Select(l => l.Limb).Order(),
                    judgement.Limbs.Select(l => l.Limb).Concat(judgement.Observed.Select(w => w.Limb)).Order()
                );
                foreach (var limb in judgement.Limbs)
                    Assert.True(
                        limb.Clock.SinceFirstTightened.Max
                            >= t.Facts.Limbs.Single(l => l.Limb == limb.Limb).SinceFirstTightened.Max - Duration.FromMinutes(1)
                    );
            },
            iter: Gens.Cases(400),
            print: t => t.From + "\n" + ShortMessage.Of(t.Facts).Text
        );

    [Fact]
    public void Reading_it_twice_adds_nothing()
    {
        var message = Read(ShortMessage.Of(CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("08:30"))).Text);
        var record = new CareRecord(MessageEntries.Of(message), []);
        Assert.All(MessageEntries.Of(message), e => Assert.False(record.Add(e)));
    }

    [Fact]
    public void The_demo_tells_what_matters_first() =>
        Assert.Equal(
            "FH1 20310504 0830Z;TQ LL OFF/0436 0150-0220;",
            ShortMessage.Of(CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("08:30"))).Text[..44]
        );

    [Fact]
    public void Four_limbs_of_long_ago_still_fit()
    {
        var number = 0;
        Entry On(Limb limb) =>
            EntryWriting.Write(
                new("a7k3", ++number),
                new(Some.Time("2031-03-01T01:50:00Z"), Some.Time("2031-04-20T02:20:00Z")),
                Some.At("08:00"),
                "Ane",
                new Payload.TourniquetTightened("t" + number, limb)
            );
        var facts = CareFacts.Of(new CareRecord(Enum.GetValues<Limb>().Select(On), []), ShippedRules.Book, Some.At("08:30"));
        var message = ShortMessage.Of(facts);
        Assert.InRange(Gsm7.Septets(message.Text) ?? int.MaxValue, 1, Gsm7.MessageSeptets);
        foreach (var limb in facts.Limbs)
            Contains(Read(message.Text).Facts.OfType<MessageFact.Tourniquet>().Single(t => t.Limb == limb.Limb).First, limb.FirstTightened);
    }

    [Fact]
    public void A_drill_never_looks_like_the_real_thing()
    {
        var body = EntryWriting.Body(
            Happened.At(Some.At("08:00")),
            Some.At("08:00"),
            "Ane",
            practice: true,
            new Payload.TourniquetTightened("t1", Limb.LeftLeg)
        );
        var entry = (
            (Read<Entry>.Usable)new EntryReader().Read(System.Text.Encoding.UTF8.GetBytes($"{{\"id\":\"a7k3-1\",{body[1..]}"), "new", 1)
        ).Value;
        var message = ShortMessage.Of(CareFacts.Of(new CareRecord([entry], []), ShippedRules.Book, Some.At("08:30")));
        Assert.StartsWith("DRILL1 ", message.Text, StringComparison.Ordinal);
        Assert.All(
            MessageEntries.Of(Read(message.Text)),
            e => Assert.Contains("\"practice\":true", e.Json.ToString(), StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("", 1, "begins with")]
    [InlineData("FH1 20310504 0830Z;TQ LL ON 0150", 33, "the end is missing")]
    [InlineData("FH1 20310504 0830Z;TQ XX ON 0150;END", 20, "a limb")]
    [InlineData("FH1 20310504 0830Z; SIGNS HR900 0820;END", 21, "SIGNS")]
    [InlineData("FH1 20310504 0830Z;TQ LL ON 2561;END", 20, "time of first tightening")]
    [InlineData("FH1 20311304 0830Z;END", 1, "date")]
    [InlineData("FH2 20310504 0830Z;END", 1, "FH1")]
    [InlineData("FH1 20310504 0830Z;END;TQ LL ON 0150", 24, "nothing can follow")]
    [InlineData("FH1 20310504 0830Z 3/2;END", 1, "begins with")]
    public void A_fault_is_refused_with_its_place(string text, int column, string about)
    {
        var refusal = Assert.Single(Assert.IsType<Read<ReceivedMessage>.Refused>(MessageReader.Read(text, "in", 4)).Refusals);
        Assert.Equal((4, column), (refusal.Line, refusal.Column));
        Assert.Contains(about, refusal.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_kind_of_help_comes_is_part_of_the_message()
    {
        Entry Said(int number, HelpCare? care, string at) =>
            EntryWriting.Write(
                new("a7k3", number),
                Happened.At(Some.At("08:00")),
                Some.At("08:00"),
                "Ane",
                new Payload.HelpExpected(Some.At(at), Latest: Some.At("20:00"), Care: care)
            );
        var record = new CareRecord([Said(1, HelpCare.Hands, "09:00"), Said(2, HelpCare.Surgery, "18:00"), Said(3, null, "19:00")], []);
        var message = ShortMessage.Of(CareFacts.Of(record, ShippedRules.Book, Some.At("08:30")));
        Assert.Contains(";HELP 1800 surgery by/2000;HELP 0900 hands by/2000;HELP 1900 by/2000;", message.Text, StringComparison.Ordinal);
        Assert.Equal(
            [HelpCare.Surgery, HelpCare.Hands, null],
            MessageEntries.Of(Read(message.Text)).Select(e => e.Payload).OfType<Payload.HelpExpected>().Select(h => h.Care)
        );
    }

    [Fact]
    public void The_rest_of_the_casualty_and_the_place_are_part_of_the_message()
    {
        Entry Said(int number, string at, Payload what) =>
            EntryWriting.Write(new("a7k3", number), Happened.At(Some.At(at)), Some.At(at), "Ane", what);
        var record = new CareRecord(
            [
                Said(1, "08:00", new Payload.CasualtyLookedOver(BleedingElsewhere: true, BloodThinner: false)),
                Said(2, "08:10", new Payload.CasualtyLookedOver(BleedingElsewhere: false, VeryCold: true)),
                Said(3, "08:12", new Payload.PositionNoted(-45.1234567, 168.5, 15)),
            ],
            []
        );
        var message = ShortMessage.Of(CareFacts.Of(record, ShippedRules.Book, Some.At("08:30")));
        Assert.Contains(";REST bleeding- cold+ 0810;REST thinner- 0800;POS -45.12346 168.5 0812;", message.Text, StringComparison.Ordinal);
        var read = MessageEntries.Of(Read(message.Text)).Select(e => e.Payload).ToArray();
        Assert.Contains(new Payload.CasualtyLookedOver(BleedingElsewhere: false, VeryCold: true), read);
        Assert.Contains(new Payload.PositionNoted(-45.12346, 168.5), read);
    }

    [Fact]
    public void A_message_typed_by_hand_is_read_whatever_its_case_and_spaces()
    {
        var facts = Read(" fh1 20310504  0830z ; tq ll on 0150 ;bleed w1 NONE 0820; cut drug").Facts;
        Assert.Equal(new MessageFact.Tourniquet(Limb.LeftLeg, Truth.Met, Minute("01:50"), null), facts[0]);
        Assert.Equal(new MessageFact.Bleeds("w1", Bleeding.None, Minute("08:20")), facts[1]);
    }

    [Fact]
    public void No_text_breaks_the_reader() =>
        Gen.Select(
                Gen.Const(
                    "FH1 20310504 0830Z;TQ LL ON 0150-0220;SIGNS HR84 alert pale- 0820;REST bleeding- cold+ 0822;POS -45.1 168.5 "
                        + "0820;HELP 1145 clinic from/1115 by/1300;DRUG x 1 g IV 0410;WHO Runa F 34y;CUT LOG"
                ),
                Gen.Int[0, 170],
                Gen.Char[' ', 'z'],
                Gen.Int[0, 3]
            )
            .Sample(
                (text, at, letter, how) =>
                {
                    var changed = how switch
                    {
                        0 => text.Insert(at % text.Length, letter.ToString()),
                        1 => text.Remove(at % text.Length, 1),
                        2 => text[..(at % text.Length)],
                        _ => string.Concat(text.AsSpan(0, at % text.Length), letter.ToString(), text.AsSpan((at % text.Length) + 1)),
                    };
                    if (MessageReader.Read(changed, "in") is Read<ReceivedMessage>.Usable { Value: var message })
                        Assert.NotEmpty(MessageEntries.Of(message));
                },
                iter: Gens.Cases(5_000)
            );

    private static Happened Minute(string at) => new(Some.At(at), Some.At(at) + Duration.FromSeconds(59));

    private static void Sample(Action<CareFacts> law) =>
        Told.Sample(t => law(t.Facts), iter: Gens.Cases(400), print: t => t.From + "\n" + ShortMessage.Of(t.Facts).Text);

    private static ReceivedMessage Read(string text) =>
        MessageReader.Read(text, "message") switch
        {
            Read<ReceivedMessage>.Usable usable => usable.Value,
            Read<ReceivedMessage>.Refused refused => throw new InvalidOperationException($"{text}\n{refused.Refusals[0]}"),
            _ => throw new InvalidOperationException(),
        };

    /// <summary>A message tells whole minutes.</summary>
    private static void Contains(Happened told, Happened known)
    {
        Assert.True(told.Earliest <= known.Earliest, $"{told} begins after {known}");
        Assert.True(told.Latest > known.Latest - Duration.FromMinutes(1), $"{told} ends before {known}");
    }

    private static void Agrees(MessageFact told, CareFacts facts)
    {
        void Held(IEnumerable<Stated> entries, Func<Stated, bool> same, Happened when)
        {
            var match = entries.Where(same).ToArray();
            Assert.NotEmpty(match);
            Assert.Contains(
                match,
                m =>
                    told is MessageFact.Given or MessageFact.Urine
                    || (when.Earliest <= m.When.Earliest && when.Latest > m.When.Latest - Duration.FromMinutes(1))
            );
        }

        switch (told)
        {
            case MessageFact.Tourniquet t:
                Assert.Equal(facts.Limbs.Single(l => l.Limb == t.Limb).Tight, t.Tight);
                break;
            case MessageFact.Doubt:
                Assert.NotEmpty(facts.Cautions);
                break;
            case MessageFact.Shock s:
                Assert.Equal(facts.Judgement.Shock.State, s.State);
                break;
            case MessageFact.Wound w:
                Held(
                    facts.Wounds.Single(x => x.Name == w.Name).Found,
                    f => f.As<Payload.WoundFound>() is var p && (p.Limb, p.Region, p.Nature) == (w.Limb, w.Region, w.Nature),
                    w.When
                );
                break;
            case MessageFact.Bleeds b:
                Held(
                    facts.Wounds.Single(x => x.Name == b.Place).LastLook,
                    l => l.As<Payload.BleedingChecked>().Bleeding == b.Bleeding,
                    b.When
                );
                break;
            case MessageFact.Tried t:
                Assert.Contains(facts.Limbs.Single(l => l.Limb == t.Limb).Attempts, a => a.Result == t.Result && a.Wound == t.Place);
                break;
            case MessageFact.Signs s:
                Held(
                    facts.Looks,
                    l =>
                        l.As<Payload.SignsTaken>() is var p
                        && (s.Taken.HeartRate ?? p.HeartRate) == p.HeartRate
                        && (s.Taken.RespiratoryRate ?? p.RespiratoryRate) == p.RespiratoryRate
                        && (s.Taken.Systolic ?? p.Systolic) == p.Systolic
                        && (s.Taken.Mental ?? p.Mental) == p.Mental
                        && (s.Taken.TemperatureC ?? p.TemperatureC) == p.TemperatureC
                        && (s.Taken.Pale ?? p.Pale) == p.Pale
                        && (s.Taken.OnOxygen ?? p.OnOxygen) == p.OnOxygen
                        && (s.Taken.RadialPulse ?? p.RadialPulse) == p.RadialPulse,
                    s.When
                );
                break;
            case MessageFact.Help h:
                var help = Assert.Single(facts.Help, x => x.As<Payload.HelpExpected>().Care == h.Care).As<Payload.HelpExpected>();
                Assert.InRange(help.Likely - h.Likely, Duration.Zero, Duration.FromMinutes(1));
                Assert.Equal((help.Earliest is null, help.Latest is null), (h.Earliest is null, h.Latest is null));
                break;
            case MessageFact.Rest r:
                Held(
                    facts.LookedOver,
                    l => RestFact.Kinds.All(k => k.Of(r.Seen) is null || k.Of(r.Seen) == k.Of(l.As<Payload.CasualtyLookedOver>())),
                    r.When
                );
                break;
            case MessageFact.Position p:
                Held(
                    facts.Positions,
                    x =>
                        Math.Abs(x.As<Payload.PositionNoted>().Lat - p.Lat) <= 0.0000051
                        && Math.Abs(x.As<Payload.PositionNoted>().Lon - p.Lon) <= 0.0000051,
                    p.When
                );
                break;
            case MessageFact.Drug d:
                Held(
                    facts.Drugs,
                    x => x.As<Payload.DrugGiven>() is var p && (p.Drug, p.Amount, p.Unit, p.Route) == (d.Name, d.Amount, d.Unit, d.Route),
                    d.When
                );
                break;
            case MessageFact.Given g:
                Assert.Equal(
                    facts
                        .Fluids.Select(f => f.As<Payload.FluidGiven>())
                        .Where(f => f.Fluid == g.Fluid && f.Route == g.Route)
                        .Sum(f => f.Millilitres),
                    g.Millilitres,
                    9
                );
                break;
            case MessageFact.Urine u:
                Assert.Equal((facts.UrineSum.Amount.Low, facts.UrineSum.Amount.High), (u.Millilitres, u.Millilitres));
                break;
            case MessageFact.Who w:
                Assert.True(w.Alias is null || facts.Person.Aliases.Contains(w.Alias));
                Assert.True(w.AgeYears is null || Math.Abs(Assert.Single(facts.Person.AgesYears) - w.AgeYears.Value) <= 0.0501);
                break;
            case MessageFact.Allergies a:
                Assert.Equal(facts.Person.Allergies!.Value, a.Names);
                break;
            case MessageFact.Ended e:
                Held(facts.Ended, x => x.As<Payload.CareEnded>().How == e.How, e.When);
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}
