using CsCheck;
using Farhold.Exchange.HandOver;

namespace Farhold.Tests.Exchange.HandOver;

public class CareFactsTests
{
    private static readonly CareFacts Demonstrated = CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("08:30"));

    [Fact]
    public void An_amended_sign_stands_as_amended_and_says_so()
    {
        var pulse = Demonstrated.Signs.Single(s => s.Kind.Field == "heartRate");
        Assert.DoesNotContain(pulse.All, v => v.Number == 188);
        Assert.True(pulse.All.Single(v => v.Number == 88).Of.Corrected);
        Assert.Equal("84 /min", Assert.Single(pulse.Latest).Text);
    }

    [Fact]
    public void A_withdrawn_entry_counts_in_no_sum() =>
        Assert.Equal(new GivenSum(Between.Exactly(500), 2), Assert.Single(Demonstrated.FluidSums).Millilitres);

    [Fact]
    public void A_sign_nobody_took_has_no_value() => Assert.Empty(Demonstrated.Signs.Single(s => s.Kind.Field == "spo2").Latest);

    [Fact]
    public void A_limb_keeps_the_whole_range_of_its_first_tightening()
    {
        var leg = Assert.Single(Demonstrated.Limbs);
        Assert.Equal(new Happened(Some.At("01:50"), Some.At("02:20")), leg.FirstTightened);
        Assert.Equal(Some.At("07:50"), leg.LimitAt);
        Assert.Equal([AttemptResult.Bled, AttemptResult.Held], leg.Attempts.Select(a => a.Result));
    }

    [Fact]
    public void What_is_still_to_come_is_left_out() =>
        Assert.Empty(CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("02:50")).Fluids);

    [Fact]
    public void Both_entries_of_a_conflict_are_told()
    {
        var first = Told("a7k3-1", 60);
        var facts = CareFacts.Of(new CareRecord([first, Told("a7k3-1", 150)], []), ShippedRules.Book, Some.At("03:00"));
        var pulse = facts.Signs.Single(s => s.Kind.Field == "heartRate");
        Assert.Equal([60.0, 150.0], pulse.Latest.Select(v => v.Number!.Value).Order());
        Assert.All(pulse.Latest, v => Assert.True(v.Of.Disputed));
    }

    [Fact]
    public void Every_limb_judged_is_a_limb_told() =>
        Gens.StrangeRecord.Sample(
            r =>
            {
                var facts = CareFacts.Of(r.Record, ShippedRules.Book, r.Now);
                foreach (var reading in r.Record.Readings)
                {
                    foreach (var limb in Enum.GetValues<Limb>())
                    {
                        if (LimbClock.Of(limb, reading, r.Now) is not { } clock)
                            continue;
                        var told = facts.Limbs.Single(l => l.Limb == limb);
                        Assert.True(told.FirstTightened.Earliest <= clock.FirstTightened.Earliest);
                        Assert.True(told.FirstTightened.Latest >= clock.FirstTightened.Latest);
                        Assert.True(told.Tight == clock.Tight || told.Tight == Truth.Unknown);
                        Assert.True(told.Occluded.Max >= clock.Occluded.Max && told.Occluded.Min <= clock.Occluded.Min);
                    }
                }
            },
            iter: Gens.Cases(300),
            print: r => r.ToString()
        );

    private static Entry Told(string id, double heartRate) =>
        EntryWriting.Write(
            EntryId.TryParse(id)!.Value,
            Happened.At(Some.At("02:55")),
            Some.At("02:55"),
            "Ane",
            new Payload.SignsTaken { HeartRate = heartRate }
        );
}
