using CsCheck;

namespace Farhold.Physiology.Tests.Body;

/// <summary>Nothing comes from nowhere. Sums that the method keeps are held over whole courses, others at every instant.</summary>
public class ConservationTests
{
    private static readonly ModelConstants Model = Models.Current;

    /// <summary>Blood, tissue, urine, what was lost and what went in; the reference calls it exact up to rounding.</summary>
    [Fact]
    public void Water_is_kept() =>
        Gens.Course.Sample(
            course =>
            {
                // Only one kind of drink, so that what was absorbed counts by one share.
                var (infused, drunk, last, start, fine) = (0.0, 0.0, 0.0, double.NaN, true);
                course.Run(
                    Model,
                    30,
                    now =>
                    {
                        // What held in the piece that ends here: changes come after it.
                        infused += now.Conditions.Infusion.Rate * (now.Time - last);
                        drunk += now.Conditions.Drinking * (now.Time - last);
                        last = now.Time;
                        var s = now.Levels;
                        var sum =
                            s.ArterialVolume
                            + s.VenousVolume
                            + s.LimbVolume
                            + s.LostVolume
                            + s.UrineVolume
                            + s.InterstitialVolume
                            + (Model.Fluids.InsensibleShare * now.Physique.Insensible * now.Time)
                            - infused
                            - (now.Conditions.DrinkOutsideCells * (drunk - s.GutVolume));
                        start = double.IsNaN(start) ? sum : start;
                        fine &= Math.Abs(sum - start) < 1e-9 * start;
                    }
                );
                return fine;
            },
            iter: Cases.Of(200)
        );

    [Fact]
    public void Red_cells_and_protein_are_kept_where_nothing_is_lost_or_given() =>
        Gen.Select(Gens.Person, Gens.Surroundings(Gen.Const(new WoundConditions())))
            .Sample(
                (person, start) =>
                {
                    var simulation = new CasualtySimulation(Model, person) { Conditions = start };
                    var (cells, protein) = (simulation.Levels.RedCellVolume, Protein(simulation));
                    simulation.Advance(4_000);
                    return simulation.Levels.RedCellVolume == cells && Math.Abs(Protein(simulation) - protein) < 1e-9 * protein;
                },
                iter: Cases.Of(100)
            );

    /// <summary>What leaves by a wound leaves as whole blood, and what is given arrives: at any instant of any course.</summary>
    [Fact]
    public void Red_cells_and_protein_change_by_what_is_lost_and_given() =>
        AtInstants(
            (simulation, rate) =>
            {
                var (s, a, d) = (simulation.Levels, simulation.Now(), simulation.Conditions);
                var plasmaLost = rate.LostVolume * (1 - a.Haematocrit);
                return Near(rate.RedCellVolume, (d.Infusion.Rate * d.Infusion.Haematocrit) - (rate.LostVolume * a.Haematocrit), 1e-9)
                    && Near(
                        rate.PlasmaProtein + rate.InterstitialProtein,
                        (d.Infusion.Rate * d.Infusion.Protein) - (plasmaLost * s.PlasmaProtein / a.PlasmaVolume),
                        1e-9
                    );
            }
        );

    /// <summary>Stored heat: made, breathed out, given off, sweated, warmed and infused; flow from core to shell cancels.</summary>
    [Fact]
    public void Heat_is_kept() =>
        AtInstants(
            (simulation, rate) =>
            {
                var (s, a, d, p) = (simulation.Levels, simulation.Now(), simulation.Conditions, simulation.Physique);
                var stored = (rate.CoreTemperature * 0.70 * p.Mass * 3490) + (rate.ShellTemperature * 0.30 * p.Mass * 3490);
                var dry = p.Surface * (s.ShellTemperature - d.AirTemperature) / (d.Insulation * (1 - (0.6 * d.Wetness)));
                var wet = p.Surface * (5 + (35 * d.Wetness));
                var sweat =
                    170
                    * Math.Max(s.CoreTemperature - 37.1, 0)
                    * Math.Exp(Math.Max(s.ShellTemperature - 33.7, 0) / 10.7)
                    * p.Surface
                    * 0.68
                    * 0.6;
                var infused = d.Infusion.Rate * 4.1 * (s.CoreTemperature - d.Infusion.Temperature);
                return Near(stored, (20.1 * a.OxygenUse * 0.92) - dry - wet - sweat - infused + d.Warming, 1e-8);
            }
        );

    /// <summary>Potassium in limb and plasma: what leaks, what dies, what the body takes back; washing out only moves it.</summary>
    [Fact]
    public void Potassium_is_kept() =>
        AtInstants(
            (simulation, rate) =>
            {
                var (s, a, p) = (simulation.Levels, simulation.Now(), simulation.Physique);
                var pool = rate.LimbPotassium + rate.DeadMusclePotassium + (rate.Potassium * p.PotassiumVolume);
                var ischaemia = Math.Max(1 - (a.LimbInflow / (0.2 * p.LimbFlow)), 0);
                var leaked = 0.04 / 60 * ischaemia * (1 - (s.LimbPotassium / 20));
                var taken = 0.045 / 60 * (s.Potassium - 4) * p.PotassiumVolume;
                return Near(pool, leaked + (196 * rate.DeadMuscle) - taken, 1e-12);
            }
        );

    private static void AtInstants(Func<CasualtySimulation, Levels, bool> holds) =>
        Gens.Course.Sample(
            course =>
            {
                var fine = true;
                course.Run(Model, 60, now => fine &= holds(now, now.Rates()));
                return fine;
            },
            iter: Cases.Of(100)
        );

    private static double Protein(CasualtySimulation of) => of.Levels.PlasmaProtein + of.Levels.InterstitialProtein;

    private static bool Near(double found, double expected, double within) =>
        Math.Abs(found - expected) <= within * Math.Max(1, Math.Abs(expected));
}
