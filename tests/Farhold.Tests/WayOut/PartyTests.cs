using CsCheck;

namespace Farhold.Tests.WayOut;

/// <summary>One party has one pace: how its way is cut into legs changes nothing. And it tires.</summary>
public class PartyTests
{
    private const string Light = "\"from\":{\"lat\":1,\"lon\":2},";

    [Fact]
    public void Cutting_a_leg_in_five_changes_nothing() =>
        Gen.Select(
                Gen.OneOf(Gen.Const("carry"), Gen.Const("walk"), Gen.Const("vehicle")),
                Gen.Int[1, 40].Select(k => k / 4.0),
                Gen.Int[2, 24],
                Gen.Int[0, 5],
                Gen.Bool,
                Gen.Bool
            )
            .Sample(
                (mode, km, bearers, tenthsRho, stop, joining) =>
                {
                    var more =
                        (stop ? ",\"dark\":\"stop\"" : "")
                        + (mode == "carry" ? FormattableString.Invariant($",\"bearers\":{bearers},\"packaging\":false") : "")
                        + (mode == "carry" && joining ? ",\"joining\":{\"bearers\":9,\"low\":30,\"likely\":90,\"high\":200}" : "");
                    string Leg(double km) => FormattableString.Invariant($"{{\"mode\":\"{mode}\",\"distanceKm\":{km}{more}}}");
                    var head = Light + FormattableString.Invariant($"\"correlation\":{tenthsRho / 5.0},");
                    var whole = SomePlan.Of(Leg(km), head);
                    var cut = SomePlan.Of(string.Join(",", Enumerable.Repeat(Leg(km / 5), 5)), head);
                    Assert.All(
                        SomePlan.Seconds(whole, SomePlan.Nights, 60).Zip(SomePlan.Seconds(cut, SomePlan.Nights, 60)),
                        pair =>
                            Assert.True(
                                Math.Abs(pair.First - pair.Second) <= 1e-6 * pair.First
                                    || (double.IsInfinity(pair.First) && double.IsInfinity(pair.Second)),
                                $"{pair}"
                            )
                    );
                },
                iter: 100
            );

    // Worked by hand: 13 km at 1.8 km/h by 18 are 7.22 h; six at the fresh pace, the rest at 0.7 of it.
    [Fact]
    public void Bearers_slow_after_six_hours()
    {
        var law = new LitterCarry(new Stretch(13), Surfaces.Path, 18).TimeSeconds();
        var plan = SomePlan.Of("""{"mode":"carry","distanceKm":13,"bearers":18,"packaging":false}""", "\"correlation\":1,");
        var seconds = SomePlan.Seconds(plan, Darkness.Of([], Some.At("00:00") + Duration.FromDays(3)), 20_000);
        Array.Sort(seconds);
        var fresh = law.Median / 3600;
        Assert.Equal(7.22, fresh, 0.01);
        Assert.Equal(6 + ((fresh - 6) / 0.7), seconds[10_000] / 3600, 0.1);
    }

    [Fact]
    public void A_party_without_relief_is_not_counted_on_beyond_ten_hours()
    {
        var seconds = SomePlan.Seconds(SomePlan.Of("""{"mode":"carry","distanceKm":25,"bearers":2}"""), null, 200);
        Assert.All(seconds, s => Assert.True(s is double.PositiveInfinity or < 17 * 3600));
        Assert.True(seconds.Count(double.IsInfinity) > 190);
    }

    // Worked by hand: with halts of 3 min in every 30 min on the move a carry takes a tenth longer.
    [Fact]
    public void Halts_for_the_casualty_lengthen_a_carry()
    {
        var without = SomePlan.Seconds(SomePlan.Of("""{"mode":"carry","distanceKm":3,"packaging":false}"""), null, 100);
        var with = SomePlan.Seconds(
            SomePlan.Of("""{"mode":"carry","distanceKm":3,"packaging":false,"halts":{"every":30,"for":3}}"""),
            null,
            100
        );
        Assert.All(without.Zip(with), pair => Assert.Equal(1.1, pair.Second / pair.First, 1e-9));
    }

    // Worked by hand: alone for two hours at half the speed of all, then at full speed.
    [Fact]
    public void Hands_that_join_make_the_rest_of_a_carry_faster()
    {
        const string joined =
            """{"mode":"carry","distanceKm":1.8,"bearers":4,"packaging":false,"joining":{"bearers":12,"low":60,"likely":60,"high":60}}""";
        const string alone = """{"mode":"carry","distanceKm":1.8,"bearers":4,"packaging":false}""";
        var light = Darkness.Of([], Some.At("00:00") + Duration.FromDays(3));
        Assert.All(
            SomePlan.Seconds(SomePlan.Of(alone), light, 100).Zip(SomePlan.Seconds(SomePlan.Of(joined), light, 100)),
            pair =>
            {
                if (pair.First < 6 * 3600)
                    Assert.Equal(pair.First <= 3600 ? pair.First : 3600 + ((pair.First - 3600) / 2), pair.Second, 1e-6 * pair.First);
            }
        );
    }

    [Fact]
    public void More_who_join_are_never_later() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[2, 20])
            .Sample(
                (joining, bearers) =>
                {
                    string Plan(int n) =>
                        $$$"""{"mode":"carry","distanceKm":4,"bearers":{{{bearers}}},"joining":{"bearers":{{{n}}},"low":10,"likely":60,"high":300}}""";
                    Assert.All(
                        SomePlan
                            .Seconds(SomePlan.Of(Plan(joining)), SomePlan.Nights, 60)
                            .Zip(SomePlan.Seconds(SomePlan.Of(Plan(joining + 1)), SomePlan.Nights, 60)),
                        pair => Assert.True(pair.Second <= pair.First + 1e-6, $"{pair}")
                    );
                },
                iter: 50
            );
}
