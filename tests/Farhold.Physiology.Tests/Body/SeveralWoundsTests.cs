using CsCheck;

namespace Farhold.Physiology.Tests.Body;

public class SeveralWoundsTests
{
    private static readonly Gen<(Person Person, Conditions Start, WoundConditions Other)> Two = Gen.Select(
        Gens.Person,
        Gens.Surroundings(Gens.Wound),
        Gens.Wound
    );

    [Fact]
    public void A_wound_that_is_none_changes_no_bit() =>
        Two.Sample(
            (person, start, _) =>
            {
                var (one, two) = (Run(person, start, 1), Run(person, start, 2));
                return one.State.SequenceEqual(two.State[..one.State.Length]) && two.State[^2] == 0 && two.State[^1] == 0;
            },
            iter: Cases.Of(60)
        );

    /// <summary>In the first minute; later the casualty who bleeds more has less pressure, and may be dead.</summary>
    [Fact]
    public void Two_wounds_lose_more_than_one_of_them() =>
        Two.Sample(
            (person, start, other) =>
                Run(person, Both(start, other), 2, 120).Levels.LostVolume > Run(person, start, 2, 120).Levels.LostVolume,
            iter: Cases.Of(60)
        );

    [Fact]
    public void The_order_of_wounds_matters_by_rounding_only() =>
        Two.Sample(
            (person, start, other) =>
            {
                var one = Run(person, Both(start, other), 2).State;
                var two = Run(person, start with { Wounds = [other, start.Wounds[0]] }, 2).State;
                for (var i = 0; i < Slots.BodyCount; i++)
                    if (Math.Abs(one[i] - two[i]) > 1e-7 * Math.Max(1, Math.Abs(one[i])))
                        return false;
                return Math.Abs(one[^2] - two[^4]) < 1e-7;
            },
            iter: Cases.Of(60)
        );

    [Fact]
    public void A_tourniquet_stops_the_limb_and_not_the_trunk()
    {
        var simulation = new CasualtySimulation(Models.Current, new(), wounds: 2)
        {
            Conditions = Courses.Tied(
                new()
                {
                    Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 500), WoundConditions.Bleeding(WoundKind.TrunkArtery, 100)],
                }
            ),
        };
        Assert.Equal(100, simulation.Vitals().WoundFlow, 0.001);
    }

    [Fact]
    public void More_wounds_than_there_can_be_are_refused() =>
        Assert.Throws<ArgumentException>(() =>
            new CasualtySimulation(Models.Current, new()).Conditions = new() { Wounds = [new(), new()] }
        );

    private static Conditions Both(Conditions start, WoundConditions other) => start with { Wounds = [start.Wounds[0], other] };

    private static CasualtySimulation Run(Person person, Conditions start, int wounds, int steps = 1_200)
    {
        var simulation = new CasualtySimulation(Models.Current, person, wounds) { Conditions = start };
        simulation.Advance(steps);
        return simulation;
    }
}
