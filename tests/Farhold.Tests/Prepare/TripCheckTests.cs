using System.Collections.Immutable;
using System.Text;
using CsCheck;

namespace Farhold.Tests.Prepare;

/// <summary>The check before a trip. Amounts are from the shipped kit list, where each is marked as a design.</summary>
public class TripCheckTests
{
    private static readonly Gen<TripPlan> Plans = Gen.Select(
            Gen.Int[0, 8],
            Gen.Double[0, 200],
            Gen.Int[1, 30],
            Gen.Bool,
            Gen.Int[0, 20_000].Array[ShippedKit.Kit.Items.Length]
        )
        .Select(
            (people, hours, days, told, packed) =>
                new TripPlan(
                    null,
                    days,
                    told ? hours : null,
                    null,
                    Party(people),
                    [],
                    ShippedKit
                        .Kit.Items.Zip(packed)
                        .Where(p => p.Second % 3 > 0)
                        .ToImmutableSortedDictionary(p => p.First.Id, p => p.Second)
                )
        );

    [Fact]
    public void Of_a_plan_that_says_nothing_nothing_is_met() => Assert.DoesNotContain(Check(TripPlan.Empty), l => l.State == Truth.Met);

    [Fact]
    public void What_is_missing_comes_first() =>
        Plans.Sample(plan =>
        {
            var states = Check(plan).Select(l => l.State).ToArray();
            Assert.Equal(states.Order(), states);
        });

    [Fact]
    public void Taking_something_away_never_mends_a_line() =>
        Gen.Select(Plans, Gen.OneOf<KitItem>([.. ShippedKit.Kit.Items]))
            .Sample(
                (plan, item) =>
                {
                    Assert.True(State(plan with { Packed = plan.Packed.Remove(item.Id) }, item) <= Truth.Unknown);
                    if (plan.Packed.TryGetValue(item.Id, out var packed) && packed > 0)
                        Assert.True(State(plan with { Packed = plan.Packed.SetItem(item.Id, packed - 1) }, item) <= State(plan, item));
                }
            );

    [Fact]
    public void More_people_more_days_or_help_further_away_never_need_less() =>
        Gen.Select(Plans, Gen.Int[0, 4], Gen.Double[0, 100], Gen.Int[0, 20])
            .Sample(
                (plan, people, hours, days) =>
                {
                    var more = plan with
                    {
                        Party = Party(plan.Party.Length + people),
                        HoursToHelp = (plan.HoursToHelp ?? 0) + hours,
                        Days = plan.Days + days,
                    };
                    Assert.All(
                        ShippedKit.Kit.Items.Where(i => i.Carry is not null),
                        i => Assert.True(TripCheck.Needed(i.Carry!, more) >= TripCheck.Needed(i.Carry!, plan))
                    );
                }
            );

    [Theory]
    [InlineData(5.9, Truth.Met)]
    [InlineData(6.0, Truth.NotMet)] // common practice, conflict C1: at six hours, not after
    [InlineData(null, Truth.Unknown)]
    public void Help_further_away_than_the_limit_is_said(double? hours, Truth state) =>
        Assert.Equal(state, Check(TripPlan.Empty with { HoursToHelp = hours }).Single(l => l.Id == "help").State);

    [Fact]
    public void Help_at_the_end_of_the_scale_may_be_further_away_still()
    {
        var all = ShippedKit.Kit.Items.ToImmutableSortedDictionary(i => i.Id, _ => TripReader.MostPieces);
        var plan = (TripPlan.Empty with { Party = Party(3), Days = 3, Packed = all }).WithReach(400);
        Assert.Equal((240, "240 h or more"), (plan.HoursToHelp, plan.HoursSaid));
        Assert.Contains("help takes 240 h or more, longer than", Line(plan, "help").Text);
        Assert.Equal(Truth.Unknown, Line(plan, "plain-gauze").State);
        Assert.Equal(Truth.Met, Line(plan.WithReach(239), "plain-gauze").State);
        Assert.Equal("239 h", plan.WithReach(239).HoursSaid);
    }

    [Fact]
    public void A_route_that_cannot_tell_undoes_what_was_said() =>
        Assert.Equal(Truth.Unknown, Line((TripPlan.Empty with { HoursToHelp = 2 }).WithReach(null), "help").State);

    [Fact]
    public void Three_litres_for_each_person_and_day_of_waiting() // upper end of the JTS nursing guideline, at rest in the cool
    {
        var plan = TripPlan.Empty with { Party = Party(3), HoursToHelp = 30 };
        Assert.Equal(3 * 2 * 3000, TripCheck.Needed(ShippedKit.Kit.Named("water-ml")!.Carry!, plan));
        Assert.Equal("Drinking water: 12 L of 18 L", Line(plan with { Packed = plan.Packed.Add("water-ml", 12_000) }, "water-ml").Text);
    }

    [Fact]
    public void A_local_protocol_counts_only_signed_and_with_a_named_authority()
    {
        Assert.Equal(Truth.NotMet, Check(TripPlan.Empty).Single(l => l.Id == "local").State);
        var signed = Assert
            .IsType<Read<Protocol>.Usable>(
                Protocols.LocalFile.Read(
                    """
                    {"local":"x","version":"1","title":"X","over":"farhold-base","authority":{"name":"Dr Vigdis Holm (invented)","role":"medical lead","date":"2031-01-10"}}
                    """
                )
            )
            .Value;
        Assert.Equal(Truth.Met, TripCheck.Of(TripPlan.Empty, ShippedRules.Book.By(signed), false).Single(l => l.Id == "local").State);
    }

    private static ImmutableArray<PartyMember> Party(int people) =>
        [.. Enumerable.Range(0, people).Select(i => new PartyMember($"P{i}", "", i < 2))];

    private static ImmutableArray<TripCheckLine> Check(TripPlan plan) => TripCheck.Of(plan, ShippedRules.Book, false);

    private static TripCheckLine Line(TripPlan plan, string id) => Check(plan).Single(l => l.Id == id);

    private static Truth State(TripPlan plan, KitItem item) => Check(plan).SingleOrDefault(l => l.Id == item.Id)?.State ?? Truth.NotMet;
}
