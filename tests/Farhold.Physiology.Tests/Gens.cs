using CsCheck;
using static Farhold.Physiology.Reference.Courses;

namespace Farhold.Physiology.Tests;

/// <summary>Casualties, and what may be done to them.</summary>
internal static class Gens
{
    public static readonly Gen<Person> Person = Gen.Select(
        Gen.Double[45, 110],
        Gen.Double[1.5, 2.0],
        Gen.Double[18, 85],
        Gen.Bool,
        Gen.Double[48, 92],
        Gen.Double[75, 115],
        Gen.Select(Gen.Double[0.36, 0.50], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[85, 145]),
        (mass, height, age, male, rate, pressure, more) =>
            new Person
            {
                MassKg = mass,
                HeightM = height,
                AgeYears = age,
                Sex = male ? Sex.Male : Sex.Female,
                HeartRate = rate,
                ArterialPressure = pressure,
                Haematocrit = more.Item1,
                BetaBlockade = more.Item2 > 0.8 ? more.Item2 : 0,
                DepressorStrength = more.Item3,
                DebtThreshold = more.Item4,
            }
    );

    public static readonly Gen<WoundConditions> LimbWound = Gen.Select(
        Gen.OneOf(Gen.Const(WoundKind.LimbArtery), Gen.Const(WoundKind.LimbVein)),
        Gen.Double[20, 1_000],
        WoundConditions.Bleeding
    );

    public static readonly Gen<WoundConditions> Wound = Gen.OneOf(
        LimbWound,
        Gen.Double[20, 400].Select(rate => WoundConditions.Bleeding(WoundKind.TrunkArtery, rate))
    );

    /// <summary>Hurt, somewhere between warm and freezing.</summary>
    public static Gen<Conditions> Surroundings(Gen<WoundConditions> wound) =>
        Gen.Select(
            Gen.Double[-10, 35],
            Gen.Double[0.1, 0.9],
            Gen.Double[0, 1],
            Gen.Double[0, 10],
            Gen.Double[0, 1],
            wound,
            (air, insulation, wet, pain, anxiety, w) =>
                new Conditions
                {
                    AirTemperature = air,
                    Insulation = insulation,
                    Wetness = wet,
                    Pain = pain,
                    Anxiety = anxiety,
                    NociceptiveBlock = 0.8,
                    Wounds = [w],
                }
        );

    public static readonly Gen<Change> Change = Gen.Select(
        Gen.Int[0, 2 * 1_200].Select(half => half / 2.0),
        Gen.OneOf(
            Gen.Const<Func<Conditions, Conditions>>(Tied),
            Gen.Const<Func<Conditions, Conditions>>(Slack),
            Gen.Const<Func<Conditions, Conditions>>(c => c with { ArterialOcclusion = 0.2, VenousOcclusion = 1 }),
            Gen.Const<Func<Conditions, Conditions>>(c => Covered(c, 0.2, 30, 3)),
            Gen.Const<Func<Conditions, Conditions>>(c => Covered(c, 1, 0, 1)),
            Gen.Double[0, 2].Select<double, Func<Conditions, Conditions>>(r => c => c with { Infusion = new(r, Temperature: 15) }),
            Gen.Double[0, 1].Select<double, Func<Conditions, Conditions>>(r => c => c with { Infusion = new(r, 0.38, 0.0372, 0.55, 4) }),
            Gen.Double[0, 0.2].Select<double, Func<Conditions, Conditions>>(r => c => c with { Drinking = r }),
            Gen.Double[0, 10].Select<double, Func<Conditions, Conditions>>(p => c => c with { Pain = p }),
            Gen.Double[0.1, 0.9]
                .Select<double, Func<Conditions, Conditions>>(i => c => c with { Insulation = i, Wetness = 0, Warming = 40 })
        ),
        (at, to) => new Change(at, to)
    );

    /// <summary>A casualty and what is done, in order of time.</summary>
    public static readonly Gen<Course> Course = Gen.Select(
        Person,
        Surroundings(Wound),
        Change.Array[0, 8],
        Gen.Int[2 * 60, 2 * 1_800],
        (person, start, changes, halves) => new Course("any", person, start, [.. changes.OrderBy(c => c.At)], halves / 2.0)
    );
}
