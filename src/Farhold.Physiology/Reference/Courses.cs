using System.Collections.Immutable;

namespace Farhold.Physiology.Reference;

/// <summary>Ten invented courses that an independent integrator worked out too, eight of them to the digit.</summary>
internal static class Courses
{
    private static readonly Person Injured = new() { DepressorStrength = 0.4 };

    /// <summary>Tissue injury holds the depressor reflex back (Little 1989, rats).</summary>
    private static readonly Conditions Hurt = new() { NociceptiveBlock = 0.8, AirTemperature = 22 };

    public static readonly ImmutableArray<Course> All =
    [
        new("R01_rest_24h", new(), new(), [], 86400),
        new(
            "R02_donor_1000mL",
            new() { DepressorStrength = 0.5 },
            new(),
            [new(60, c => c with { Withdrawal = 1000.0 / 1200 }), new(1260, c => c with { Withdrawal = 0 })],
            7260
        ),
        Bled("R03_vasovagal_30pct", new(), new(), 0.3, 1800, 5400),
        new(
            "R04_exsanguination",
            Injured,
            Hurt with
            {
                Pain = 6,
                Anxiety = 1,
                Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 1000)],
            },
            [],
            600
        ),
        new(
            "R05_tourniquet_blood_conversion",
            Injured,
            Hurt with
            {
                Pain = 6,
                Anxiety = 1,
                Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 700)],
            },
            [
                new(150, c => Tied(c) with { Pain = 8 }),
                new(3600, c => c with { Infusion = new(450.0 / 1200, 0.38, 0.0372, 0.55, 20), Pain = 5 }),
                new(4800, c => c with { Infusion = c.Infusion with { Rate = 0 } }),
                new(7200, c => Covered(Slack(c) with { Pain = 4 }, 0.10, 40, 3)),
            ],
            14400
        ),
        new(
            "R06_torso_crystalloid",
            Injured,
            Hurt with
            {
                Pain = 5,
                Anxiety = 0.7,
                Wounds = [WoundConditions.Bleeding(WoundKind.TrunkArtery, 220)],
            },
            [
                new(1800, c => c with { Infusion = new(1000.0 / 1200, Temperature: 15) }),
                new(3000, c => c with { Infusion = c.Infusion with { Rate = 0 } }),
                new(5400, c => c with { Infusion = c.Infusion with { Rate = 1000.0 / 1200 } }),
                new(6600, c => c with { Infusion = c.Infusion with { Rate = 0 } }),
            ],
            14400
        ),
        new(
            "R07_tourniquet_6h_release",
            Injured,
            Hurt with
            {
                Pain = 6,
                Anxiety = 0.7,
                AirTemperature = 12,
                Insulation = 0.45,
                Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 400)],
            },
            [new(120, c => Tied(c) with { Pain = 8 }), new(600, c => c with { Wounds = [] }), new(21600, c => Slack(c) with { Pain = 5 })],
            32400
        ),
        Cold(),
        new(
            "R09_loose_tourniquet_venous",
            Injured,
            Hurt with
            {
                Pain = 5,
                Anxiety = 0.7,
                Wounds = [WoundConditions.Bleeding(WoundKind.LimbVein, 200)],
            },
            [new(120, c => c with { ArterialOcclusion = 0.2, VenousOcclusion = 1 }), new(600, Tied)],
            1800
        ),
        Bled(
            "R10_age66_betablock_30pct",
            new()
            {
                MassKg = 88,
                HeightM = 1.72,
                AgeYears = 66,
                HeartRate = 62,
                ArterialPressure = 98,
                Haematocrit = 0.41,
                BetaBlockade = 1,
                DepressorStrength = 0.2,
                DebtThreshold = 100,
            },
            new()
            {
                NociceptiveBlock = 0.8,
                Pain = 5,
                Anxiety = 0.7,
            },
            0.3,
            1200,
            7200
        ),
    ];

    /// <summary>A share of the blood drawn off evenly from the start.</summary>
    public static Course Bled(string id, Person person, Conditions start, double share, double over, double end)
    {
        var volume = new Physique(Models.Current, person).BloodVolume;
        return new(id, person, start with { Withdrawal = share * volume / over }, [new(over, c => c with { Withdrawal = 0 })], end);
    }

    private static Course Cold()
    {
        var start = new Conditions
        {
            NociceptiveBlock = 0.8,
            Pain = 4,
            Anxiety = 0.5,
            AirTemperature = 2,
            Insulation = 0.30,
            Wetness = 0.5,
        };
        var bled = Bled("R08_cold_25pct_48h", new() { DepressorStrength = 0.3 }, start, 0.25, 1800, 172800);
        return bled with
        {
            Changes =
            [
                .. bled.Changes,
                new(7200, c => c with { Insulation = 0.9, Wetness = 0, Warming = 40 }),
                new(10800, c => c with { Drinking = 100.0 / 3600 }),
                new(21600, c => c with { Warming = 0 }),
            ],
        };
    }

    public static Conditions Tied(Conditions c) => c with { ArterialOcclusion = 1, VenousOcclusion = 1 };

    public static Conditions Slack(Conditions c) => c with { ArterialOcclusion = 0, VenousOcclusion = 0 };

    /// <summary>Something on the first wound.</summary>
    public static Conditions Covered(Conditions c, double opening, double pressure, double clotRate) =>
        c with
        {
            Wounds = [c.Wounds[0] with { Opening = opening, OutsidePressure = pressure, ClotRate = clotRate }],
        };
}
