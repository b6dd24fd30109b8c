using CsCheck;
using Farhold.Exchange.HandOver;

namespace Farhold.Tests.Exchange.HandOver;

public class FormsTests
{
    private static readonly DateTimeZone Oslo = DateTimeZoneProviders.Tzdb["Europe/Oslo"];
    private static readonly CareFacts Demonstrated = CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("08:30"));

    public static TheoryData<FormKind> Kinds => [.. Enum.GetValues<FormKind>()];

    [Theory, MemberData(nameof(Kinds))]
    public void Every_form_tells_the_whole_range_of_the_first_tightening(FormKind kind)
    {
        var text = Said(kind, Demonstrated);
        var (early, late) =
            kind == FormKind.Radio
                ? ("zero three five zero (zero one five zero U T C)", "zero four two zero (zero two two zero U T C)")
                : ("03:50 (01:50 UTC)", "04:20 (02:20 UTC)");
        Assert.Contains($"between {early} and {late}", text, StringComparison.Ordinal);
    }

    /// <summary>Letters: reference of hand-over formats, common practice.</summary>
    [Theory]
    [InlineData(FormKind.Mist, "M I S T")]
    [InlineData(FormKind.Atmist, "A T M I S T")]
    [InlineData(FormKind.Sbar, "S B A R")]
    [InlineData(FormKind.NineLine, "1 2 3 4 5 6 7 8 9")]
    public void A_form_has_the_parts_of_its_name(FormKind kind, string keys) =>
        Assert.Equal(keys, string.Join(' ', Forms.Of(kind, Demonstrated, Oslo).Parts.Select(p => p.Key)).TrimEnd());

    [Fact]
    public void An_amended_pulse_is_told_as_amended_and_the_wrong_one_never()
    {
        var before = CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("06:30"));
        var text = Said(FormKind.Mist, before);
        Assert.Contains("heart rate 88 /min, 30 min ago, too old to decide by, corrected", text, StringComparison.Ordinal);
        Assert.DoesNotContain("188", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nobody_recorded_is_said_to_be_unknown()
    {
        var empty = CareFacts.Of(new CareRecord([], []), ShippedRules.Book, Some.At("08:30"));
        var text = Said(FormKind.Atmist, empty);
        foreach (
            var unknown in new[]
            {
                "name not known",
                "age not known",
                "allergies: not recorded",
                "mechanism not recorded",
                "no wound recorded",
                "not recorded: heart rate",
                "no tourniquet recorded",
                "no drug recorded",
                "time of injury not recorded",
                "no first look recorded",
                "perhaps needs blood; it is not known",
            }
        )
            Assert.Contains(unknown, text, StringComparison.Ordinal);
    }

    /// <summary>"Absent", felt under the tight tourniquet, would be read as a limb without blood after its release.</summary>
    [Theory]
    [InlineData("08:10", "NOT CHECKED since it was loosened; before that absent 08:10 UTC")]
    [InlineData("08:25", "absent 08:25 UTC")]
    public void A_pulse_felt_before_the_limb_was_loosened_is_told_as_of_before(string felt, string told)
    {
        var beyond = new Payload.SignsTaken
        {
            DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                Limb.LeftLeg,
                DistalPulse.Absent
            ),
        };
        Entry Of(int number, string at, Payload what) =>
            EntryWriting.Write(new("a7k3", number), Happened.At(Some.At(at)), Some.At("08:28"), "Ane", what);
        var record = new CareRecord(
            [
                Of(1, "08:00", new Payload.TourniquetTightened("t1", Limb.LeftLeg)),
                Of(2, felt, beyond),
                Of(3, "08:20", new Payload.TourniquetSlackened("t1")),
            ],
            []
        );
        var text = Forms.Of(FormKind.Atmist, CareFacts.Of(record, ShippedRules.Book, Some.At("08:30")), DateTimeZone.Utc).Text();
        Assert.Contains($"left leg: pulse below the tourniquet: {told}", text, StringComparison.Ordinal);
        Assert.Contains("left leg: tourniquet loosened 08:20 UTC", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pulse_that_nobody_felt_for_is_called_not_checked_and_shock_none_of_what_was_asked()
    {
        var record = new CareRecord(
            [
                EntryWriting.Write(
                    new("a7k3", 1),
                    Happened.At(Some.At("08:00")),
                    Some.At("08:00"),
                    "Ane",
                    new Payload.TourniquetTightened("t1", Limb.LeftLeg)
                ),
                EntryWriting.Write(new("a7k3", 2), Happened.At(Some.At("08:28")), Some.At("08:28"), "Ane", Some.GoodSigns),
            ],
            []
        );
        var text = Said(FormKind.Atmist, CareFacts.Of(record, ShippedRules.Book, Some.At("08:30")));
        Assert.Contains("left leg: pulse below the tourniquet: NOT CHECKED", text, StringComparison.Ordinal);
        Assert.Contains("shock: none of the signs asked for", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_entries_in_conflict_are_both_told()
    {
        Entry Told(double rate) =>
            EntryWriting.Write(
                new("a7k3", 1),
                Happened.At(Some.At("08:20")),
                Some.At("08:20"),
                "Ane",
                new Payload.SignsTaken { HeartRate = rate }
            );
        var facts = CareFacts.Of(new CareRecord([Told(60), Told(150)], []), ShippedRules.Book, Some.At("08:30"));
        var text = Said(FormKind.Mist, facts);
        Assert.Contains("60 /min", text, StringComparison.Ordinal);
        Assert.Contains("150 /min", text, StringComparison.Ordinal);
        Assert.Contains("the record disagrees", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_nine_line_leaves_to_the_voice_what_no_record_holds()
    {
        var lines = Forms
            .Of(FormKind.NineLine, Demonstrated, Oslo, new Farhold.Exchange.HandOver.PickUp { Place = "hut above the upper lake" })
            .Parts;
        Assert.Equal(["hut above the upper lake"], lines[0].Lines);
        Assert.Equal(["not in the record: say it"], lines[6].Lines);
        Assert.Contains("wound w1, left leg: bleeding", lines[5].Lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void No_digit_is_left_in_a_radio_script() =>
        Gens.StrangeRecord.Sample(
            r =>
                Assert.DoesNotContain(
                    Forms.Of(FormKind.Radio, CareFacts.Of(r.Record, ShippedRules.Book, r.Now), Oslo).Parts.SelectMany(p => p.Lines),
                    line => line.Any(char.IsAsciiDigit)
                ),
            iter: Gens.Cases(200),
            print: r => r.ToString()
        );

    [Theory]
    [InlineData("heart rate 128 /min", "heart rate one two eight per minute")]
    [InlineData("04:10 (02:10 UTC)", "zero four one zero (zero two one zero U T C)")]
    [InlineData("36.6 °C", "three six decimal six degrees Celsius")]
    [InlineData("2 h 05 min ago", "two hours zero five minutes ago")]
    [InlineData("1 h 01 min ago", "one hour zero one minutes ago")]
    [InlineData("tourniquet t2, 10 mg", "tourniquet t two, one zero milligrams")]
    [InlineData("3 May 22:40", "three May two two four zero")]
    public void Numbers_are_said_digit_by_digit(string written, string said) => Assert.Equal(said, SpokenText.Of(written));

    /// <summary>Spelling alphabet: ICAO Annex 10, volume II (from memory).</summary>
    [Fact]
    public void A_name_is_spelled() => Assert.Equal("Romeo Uniform November Alfa two", SpokenText.Spelled("Runa2"));

    [Fact]
    public void A_time_of_another_day_says_its_day_on_both_clocks()
    {
        var times = new TimeWords(DateTimeZoneProviders.Tzdb["Pacific/Auckland"], Some.Time("2031-05-04T13:00:00Z"));
        Assert.Equal("4 May 23:30 (11:30 UTC)", times.At(Some.Time("2031-05-04T11:30:00Z")));
        Assert.Equal("01:00 (4 May 13:00 UTC)", times.At(Some.Time("2031-05-04T13:00:00Z")));
    }

    /// <summary>A doubt, a limit and a time never get lost between record and form, whatever the record.</summary>
    [Fact]
    public void Every_limb_and_every_caution_is_in_every_form() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, ShippedRules.Book, r.Now);
                var words = new FactWords(facts, Oslo);
                foreach (var kind in Enum.GetValues<FormKind>())
                {
                    var text = Said(kind, facts);
                    foreach (var line in facts.Limbs.Select(words.Tourniquet).Concat(words.Cautions))
                        Assert.Contains(kind == FormKind.Radio ? SpokenText.Of(line) : line, text, StringComparison.Ordinal);
                }
            },
            iter: Gens.Cases(100),
            print: r => r.ToString()
        );

    private static string Said(FormKind kind, CareFacts facts) => Forms.Of(kind, facts, Oslo).Text();
}
