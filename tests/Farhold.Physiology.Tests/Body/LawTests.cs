using CsCheck;
using static Farhold.Physiology.Reference.Courses;

namespace Farhold.Physiology.Tests.Body;

/// <summary>What holds for every casualty, whatever is done.</summary>
public class LawTests
{
    /// <summary>The same acts give the same truth, however the time between them is cut into pieces.</summary>
    [Fact]
    public void Chunks_of_time_change_no_bit() =>
        Gen.Select(Gens.Course, Gen.Int[1, 400], Gen.Int[1, 400])
            .Sample(
                (course, one, other) =>
                {
                    var (first, second) = (Run(course, one / 2.0), Run(course, other / 2.0));
                    return first.Time == second.Time && first.State.SequenceEqual(second.State);
                },
                iter: Cases.Of(200)
            );

    [Fact]
    public void Time_in_one_piece_is_time_step_by_step() =>
        Gen.Select(Gens.Person, Gens.Surroundings(Gens.Wound), Gen.Int[1, 1_000])
            .Sample(
                (person, start, steps) =>
                {
                    var (at, by) = (Started(person, start), Started(person, start));
                    at.Advance(steps);
                    for (var i = 0; i < steps; i++)
                        by.Advance(1);
                    return at.Steps == by.Steps && at.State.SequenceEqual(by.State);
                },
                iter: Cases.Of(200)
            );

    /// <summary>Fully tight, that is: a loose one can lose more than none, see below.</summary>
    /// <remarks>A millilitre in a thousand million is left to rounding.</remarks>
    [Fact]
    public void Tight_sooner_never_loses_more_blood() =>
        Gen.Select(Gens.Person, Gens.Surroundings(Gens.LimbWound), Gen.Int[0, 1_800], Gen.Int[1, 1_800])
            .Sample(
                (person, start, sooner, later) =>
                {
                    return Lost(sooner) <= Lost(sooner + later) * (1 + 1e-9);

                    double Lost(double tight) => Run(new("tied", person, start, [new(tight, Tied)], 5_400), 600).Levels.LostVolume;
                },
                iter: Cases.Of(200)
            );

    [Fact]
    public void A_loose_tourniquet_can_lose_more_than_none()
    {
        var start = new Conditions { NociceptiveBlock = 0.8, Wounds = [WoundConditions.Bleeding(WoundKind.LimbVein, 200)] };
        var without = new Course("none", new(), start, [], 1800);
        var loose = without with { Start = start with { ArterialOcclusion = 0.2, VenousOcclusion = 1 } };
        Assert.True(Run(loose, 60).Levels.LostVolume > 1.3 * Run(without, 60).Levels.LostVolume);
    }

    /// <summary>Nothing bleeds, so that only the time differs; compared half an hour after the later release.</summary>
    [Fact]
    public void Longer_tight_never_saves_muscle() =>
        Gen.Select(Gens.Person, Gens.Surroundings(Gen.Const(new WoundConditions())), Gen.Int[0, 6 * 60], Gen.Int[1, 60])
            .Sample(
                (person, start, minutes, more) =>
                {
                    var end = 60.0 * (minutes + more + 30);
                    return Dead(minutes) <= Dead(minutes + more);

                    double Dead(int tight) =>
                        Run(new("tight", person, Tied(start), [new(60 * tight, Slack)], end), 600, 1).Levels.DeadMuscle;
                },
                iter: Cases.Of(60)
            );

    /// <summary>Volumes, cells and amounts never go below nothing, and shares stay shares, whatever is done.</summary>
    [Fact]
    public void Every_number_stays_one_that_can_be() =>
        Gens.Course.Sample(
            course =>
            {
                var fine = true;
                course.Run(
                    Models.Current,
                    30,
                    now =>
                    {
                        var s = now.Levels;
                        fine &= now.State.ToArray().All(double.IsFinite);
                        fine &= s is { ArterialVolume: > 0, VenousVolume: > 0, RedCellVolume: > 0, PlasmaProtein: > 0 };
                        fine &= s.ArterialVolume + s.VenousVolume + s.LimbVolume > s.RedCellVolume;
                        fine &= s is { LimbLactate: >= 0, LimbPotassium: >= 0, DeadMusclePotassium: >= 0, LimbDose: >= 0, GutVolume: >= 0 };
                        fine &= s.DeadMuscle is >= 0 and <= 1 && s.IschaemiaDose is >= 0 and <= 1;
                    }
                );
                return fine;
            },
            iter: Cases.Of(200)
        );

    [Fact]
    public void Stepping_allocates_nothing()
    {
        var simulation = Started(new(), new() { Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 100)] });
        simulation.Advance(10);
        var before = GC.GetAllocatedBytesForCurrentThread();
        simulation.Advance(2_000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void Time_stops_at_arrest()
    {
        var simulation = Started(new(), new() { Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 1000)] });
        simulation.Advance(10_000);
        Assert.True(simulation.IsArrested);
        var (time, state) = (simulation.Time, simulation.State.ToArray());
        simulation.Advance(100);
        Assert.Equal(time, simulation.Time);
        Assert.Equal(state, simulation.State.ToArray());
    }

    [Fact]
    public void Deep_cold_is_arrest()
    {
        var simulation = Started(
            new(),
            new()
            {
                AirTemperature = -40,
                Insulation = 0.05,
                Wetness = 1,
            }
        );
        simulation.Advance(2 * 48 * 3600);
        Assert.True(simulation.IsArrested);
        Assert.True(simulation.Levels.CoreTemperature < 24);
    }

    private static CasualtySimulation Run(Course course, double every, double step = 0.5) =>
        course.Run(Models.Current, every, _ => { }, step);

    private static CasualtySimulation Started(Person person, Conditions start) => new(Models.Current, person) { Conditions = start };
}
