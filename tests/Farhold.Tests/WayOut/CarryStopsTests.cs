using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.WayOut;

public class CarryStopsTests
{
    private static readonly Judgement Tied = Case.Well.Judgement;

    /// <summary>Hourly checks of a tight tourniquet in a stable casualty, every 15 min else (PCC guideline 2022, Table 5).</summary>
    [Fact]
    public void The_look_at_the_tourniquet_sets_the_stops()
    {
        var stops = CarryStops.Of(
            Leg(new ThreePoint(Minutes(40), Minutes(60), Minutes(95))),
            Case.Well.NewSigns(s => s with { Pale = true }).Judgement,
            true
        );
        Assert.Equal(new CarryStop(Minutes(15), 2, 6), stops.Look);
        Assert.Equal(
            new CarryStop(Minutes(60), 0, 1),
            CarryStops.Of(Leg(new ThreePoint(Minutes(40), Minutes(60), Minutes(95))), Tied, true).Look
        );
    }

    [Fact]
    public void Whoever_lies_still_is_felt_for_warmth_every_half_hour() =>
        Assert.Equal(
            new CarryStop(Minutes(30), 1, 3),
            CarryStops.Of(Leg(new Percentiles(Minutes(40), null, Minutes(95))), Tied, true).Warmth
        );

    [Fact]
    public void A_wound_that_needs_eyes_without_a_break_has_no_stops_on_a_carry()
    {
        var loose = Case.Well.And("00:05", new Payload.TourniquetSlackened("t1")).Judgement;
        var stops = CarryStops.Of(Leg(new ThreePoint(Minutes(40), Minutes(60), Minutes(95))), loose, true);
        Assert.Null(stops.Look);
        Assert.Contains(CarryWords.Of(stops), s => s.Contains("don't set out", StringComparison.Ordinal));
    }

    [Fact]
    public void Ground_to_cover_gives_the_range_of_the_carry()
    {
        var stops = CarryStops.Of(Leg(Ground(new Stretch(3, 0, 100), 12)), Tied, true);
        var law = new LitterCarry(new Stretch(3, 0, 100), Surfaces.Path, 12).TimeSeconds();
        Assert.Equal(law.Quantile(0.1), stops.Shortest!.Value.TotalSeconds, 3);
        Assert.Equal(law.Quantile(0.9), stops.Longest!.Value.TotalSeconds, 3);
        Assert.NotNull(stops.Rota);
    }

    [Fact]
    public void What_is_not_known_is_said()
    {
        var stops = CarryStops.Of(Leg(Ground(null, null)), Tied, true);
        Assert.Equal((null, null, null), (stops.Shortest, stops.Longest, stops.Rota));
        var said = CarryWords.Of(stops);
        Assert.Contains(said, s => s.StartsWith("How long this carry takes is not known", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("say how many bearers", StringComparison.Ordinal));
    }

    /// <summary>Four with a harness lasted 24.5 min, SD 9.0 (Rice 1996); two by hand 3.0, SD 1.8.</summary>
    [Theory]
    [InlineData(2, true, 1, 6)] // two with shoulder straps: 14.5 - 8.3 (Knapik 2000)
    [InlineData(2, false, 1, 1)]
    [InlineData(6, true, 1, 15)]
    [InlineData(7, true, 1, 15)]
    [InlineData(8, true, 4, 5)]
    [InlineData(12, true, 6, 5)]
    public void Bearers_change_before_they_give_out(int bearers, bool straps, int turns, int minutes)
    {
        var rota = BearerRota.Of(bearers, straps);
        Assert.Equal((turns, minutes), (rota.Turns.Length, rota.Minutes));
        Assert.Equal(turns == 1, rota.SetsDown);
    }

    [Fact]
    public void A_rota_is_fair_and_nobody_carries_longer_than_was_read() =>
        Gen.Select(Gen.Int[2, 40], Gen.Bool)
            .Sample(
                (bearers, straps) =>
                {
                    var rota = BearerRota.Of(bearers, straps);
                    var pairs = bearers / 2 * 2;
                    foreach (var turn in rota.Turns)
                    {
                        Assert.Equal(Enumerable.Range(1, pairs), turn.Carry.Concat(turn.Rest).Order());
                        Assert.InRange(turn.Carry.Length, 2, 6);
                    }

                    Assert.Equal(bearers % 2 == 1 ? bearers : null, rota.Spare);
                    var carried = Enumerable.Range(1, pairs).Select(b => rota.Turns.Count(t => t.Carry.Contains(b))).Distinct();
                    Assert.Single(carried);
                    if (!rota.SetsDown && straps)
                        Assert.True(carried.Single() * rota.Minutes <= rota.By.Minutes - rota.By.Sd);
                },
                iter: Gens.Cases(200)
            );

    [Fact]
    public void The_words_name_the_bearers_of_every_turn()
    {
        var said = CarryWords.Of(CarryStops.Of(Leg(Ground(new Stretch(3, 0, 100), 9)), Tied, true));
        Assert.Contains("0 to 5 min: 1, 2, 3, 4, 5, 6 carry, 7, 8 rest.", said);
        Assert.Contains("15 to 20 min: 7, 8, 1, 2, 3, 4 carry, 5, 6 rest; then from the beginning.", said);
        Assert.Contains("9 belongs to no pair: takes the place of whoever tires, or watches the casualty.", said);
    }

    [Fact]
    public void Only_a_carry_has_stops() =>
        Assert.Throws<ArgumentException>(() =>
            CarryStops.Of(Leg(new ThreePoint(Minutes(1), Minutes(2), Minutes(3))) with { Mode = TravelMode.Boat }, Tied, true)
        );

    private static Duration Minutes(int minutes) => Duration.FromMinutes(minutes);

    private static Travel Leg(Extent extent) => new(1, null, TravelMode.Carry, extent, DarkRule.Allowed, FlightWindow.AnyHour, null);

    private static Measured Ground(Stretch? stretch, int? bearers) =>
        new(null, stretch, null, null, 0, null, null, bearers, false, 0, false);
}
