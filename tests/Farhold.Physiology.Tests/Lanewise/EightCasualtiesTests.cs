using System.Runtime.Intrinsics;
using CsCheck;
using Farhold.Physiology.Lanewise;

namespace Farhold.Physiology.Tests.Lanewise;

public class EightCasualtiesTests
{
    /// <summary>Eight of any, each with changes of its own; some die on the way, and stay as they died.</summary>
    [Fact]
    public void Each_has_the_bits_it_has_alone() => Bits(0.5, Cases.Of(60));

    [Fact]
    public void Each_has_the_bits_it_has_alone_at_two_seconds() => Bits(2, Cases.Of(30));

    private static void Bits(double step, long cases) =>
        Gen.Select(
                Gens.Person.Array[8],
                Gens.Surroundings(Gens.Wound).Array[8],
                Gen.Select(Gen.Int[0, 7], Gen.Int[1, 600], Gens.Change).Array[0, 12]
            )
            .Sample(
                (people, starts, changes) =>
                {
                    var together = new EightCasualties(Models.Current, people, step: step);
                    var alone = people.Select(p => new CasualtySimulation(Models.Current, p, step: step)).ToArray();
                    for (var i = 0; i < 8; i++)
                        Set(i, starts[i]);
                    foreach (var (lane, steps, change) in changes)
                    {
                        Advance(steps);
                        Set(lane, change.To(alone[lane].Conditions));
                    }

                    Advance(900);
                    return Enumerable.Range(0, 8).All(Same);

                    void Set(int lane, Conditions conditions)
                    {
                        alone[lane].Conditions = conditions;
                        together.SetConditions(lane, conditions);
                    }

                    void Advance(int steps)
                    {
                        together.Advance(steps);
                        foreach (var one in alone)
                            one.Advance(steps);
                    }

                    bool Same(int lane) =>
                        alone[lane].Time == together.Time(lane)
                        && Enumerable.Range(0, alone[lane].State.Length).All(s => Equal(alone[lane].State[s], together.State(lane, s)));
                },
                iter: cases
            );

    [Fact]
    public void Those_who_die_stay_and_the_others_go_on()
    {
        var people = Enumerable.Repeat(new Person(), 8).ToArray();
        var together = new EightCasualties(Models.Current, people);
        together.SetConditions(3, new() { Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 1000)] });
        together.Advance(2_000);
        Assert.InRange(together.Time(3), 200, 900);
        Assert.Equal(1_000, together.Time(0));
    }

    [Fact]
    public void Exp_and_log_have_the_same_bits_eight_at_once() =>
        Gen.Select(Gen.Double[-800, 800].Array[8], Gen.Double[1e-300, 1e300].Array[8], Gen.Double[0.5, 2].Array[8])
            .Sample(
                (x, y, z) =>
                    Same(LaneMath.Exp(Eight(x)), ExactMath.Exp, x)
                    && Same(LaneMath.Log(Eight(y)), ExactMath.Log, y)
                    && Same(LaneMath.Log(Eight(z)), ExactMath.Log, z),
                iter: Cases.Of(20_000)
            );

    [Fact]
    public void Seven_are_refused() =>
        Assert.Throws<ArgumentException>(() => new EightCasualties(Models.Current, Enumerable.Repeat(new Person(), 7).ToArray()));

    private static Lanes Eight(double[] values) => new(Vector512.Create(values));

    private static bool Same(Lanes found, Func<double, double> alone, double[] from) =>
        Enumerable.Range(0, 8).All(i => Equal(alone(from[i]), found[i]));

    private static bool Equal(double a, double b) => BitConverter.DoubleToInt64Bits(a) == BitConverter.DoubleToInt64Bits(b);
}
