using System.Collections.Immutable;

namespace Farhold.App.Tests.WayOut;

public class NextLegTests : WayTest
{
    [Fact]
    public async Task The_legs_offer_their_moves_one_after_another()
    {
        await ReadyAsync();
        Way.Use(Legs(TravelMode.Wait, TravelMode.Carry, TravelMode.Boat));
        var screen = Shown();
        Press(screen, "About to move: Carried");
        Press(screen, "About to move: Carried"); // having gone through the check
        Assert.Equal(new(Movement.Carried, MovePhase.AboutTo), Last<Payload.CasualtyMoved>());
        Assert.Contains("Under way: Carried", screen.Markup, StringComparison.Ordinal);
        Press(screen, "Moved: Carried");
        Assert.Equal(MovePhase.Moved, Last<Payload.CasualtyMoved>().Phase);
        Press(screen, "Moved: In a boat");
        Assert.Equal(new(Movement.Boat, MovePhase.Moved), Last<Payload.CasualtyMoved>());
        Assert.Empty(screen.FindAll("#next-leg"));
    }

    [Fact]
    public async Task Where_ways_part_each_offers_its_first_move_until_one_was_gone()
    {
        await ReadyAsync();
        var fork = new Choice(
            9,
            null,
            ChoiceKind.First,
            [
                new("air", 0.5, Legs(TravelMode.Wait, TravelMode.Aircraft).Legs),
                new(null, 1, Legs(TravelMode.Carry, TravelMode.Vehicle).Legs),
            ]
        );
        var plan = Legs(TravelMode.Walk) with { };
        plan = plan with { Legs = [.. plan.Legs, fork, .. Legs(TravelMode.Boat).Legs] };
        Assert.Equal([TravelMode.Walk], Next(plan));
        await TellAsync(new Payload.CasualtyMoved(Movement.Walked, MovePhase.Moved));
        Assert.Equal([TravelMode.Aircraft, TravelMode.Carry], Next(plan));
        await TellAsync(new Payload.CasualtyMoved(Movement.Lifted, MovePhase.Moved));
        await TellAsync(new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved));
        Assert.Equal([TravelMode.Vehicle], Next(plan));
        await TellAsync(new Payload.CasualtyMoved(Movement.Vehicle, MovePhase.Moved));
        Assert.Equal([TravelMode.Boat], Next(plan));
    }

    [Fact]
    public async Task A_carry_shows_its_stops_and_who_carries_when()
    {
        await ReadyAsync();
        var carry = (Travel)Legs(TravelMode.Carry).Legs[0];
        Way.Use(Legs() with { Legs = [carry with { Extent = Ground(8) }] });
        var screen = Shown();
        var stops = screen.FindAll("details").Single(d => d.TextContent.Contains("Stops and bearers", StringComparison.Ordinal));
        Assert.Contains("by hand lasted 3 min, SD 1.8", stops.TextContent, StringComparison.Ordinal);
        Assert.Contains("Stop and look at tourniquet and dressing at least every", stops.TextContent, StringComparison.Ordinal);
        Assert.Contains("1, 2, 3, 4, 5, 6 carry, 7, 8 rest", stops.TextContent, StringComparison.Ordinal);
    }

    private TravelMode[] Next(Plan plan) => [.. NextLeg.Of(plan, Care.Record!.Readings[0], Care.Now).Select(t => t.Mode)];

    private static Measured Ground(int bearers) => new(null, new(3, 0, 100), null, null, 0, null, null, bearers, false, 0, false);

    private Plan Legs(params TravelMode[] modes) =>
        Waits(1, 2, 3) with
        {
            Start = Now - Minutes(1),
            Legs =
            [
                .. modes.Select(
                    (m, i) =>
                        new Travel(
                            i + 1,
                            null,
                            m,
                            new ThreePoint(Minutes(30), Minutes(60), Minutes(95)),
                            DarkRule.Allowed,
                            FlightWindow.AnyHour,
                            null
                        )
                ),
            ],
        };
}
