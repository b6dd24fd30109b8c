using static Farhold.Physiology.Reference.Courses;

namespace Farhold.Physiology.Tests.Reference;

/// <summary>The courses behind <c>tables/targets.csv</c>, each sign by the words of its row.</summary>
internal static class TargetCourses
{
    private static readonly ModelConstants Model = Models.Current;
    private static readonly Person Volunteer = new() { DepressorStrength = 0.5 };
    private static readonly Person Steady = new() { DepressorStrength = 0 };
    private static readonly Person Casualty = new() { DepressorStrength = 0.4 };
    private static readonly Conditions Injured = new()
    {
        NociceptiveBlock = 0.8,
        Pain = 5,
        Anxiety = 0.7,
    };
    private static readonly Conditions Anaesthetised = new() { NociceptiveBlock = 0.8 };
    private static readonly double[] Shares = [30, 35, 40, 45];
    private static readonly double[] Delays = [60, 120, 180];
    private static readonly double Volume = new Physique(Model, Volunteer).BloodVolume;

    /// <summary>By target, input and sign.</summary>
    public static double Measure(string target, string input, string sign) =>
        target switch
        {
            "1" => Change(sign, After(Volunteer, new(), 375 / 384.0, 384)),
            "2" => Change(sign, After(Volunteer, new(), 500.0 / 600, 600)),
            "3" => Change(sign, After(Volunteer, new(), 900.0 / 1080, 1080)),
            "4" => Change(sign, After(Volunteer, new(), 1000.0 / 1200, 1200)),
            "5" => Change(
                sign,
                After(Steady, new(), Volume / 6000, Percent(input[(input.IndexOf("at ", StringComparison.Ordinal) + 3)..]) * 60)
            ),
            "6" or "7" => Level(
                sign,
                Until(v => v.StrokeVolume < Rest.StrokeVolume * (target == "6" ? 0.55 : 0.47), Steady, Volume / 6000)
            ),
            "8" => Loss(input),
            "9" => Level(sign, After(new(), new(), Volume * 0.3 / 1800, 1800))
                - Level(sign, After(new(), Injured, Volume * 0.3 / 1800, 1800)),
            "10" or "11" => Level(sign, Bled20(input.StartsWith("nothing", StringComparison.Ordinal) ? 0 : Percent(input), 600)),
            "12" when sign == "base deficit" => Bled20(45, 7200).Vitals().BaseDeficit,
            "12" => LeastRise([.. Shares.Select(p => Bled20(p, 7200).Vitals().BaseDeficit)]),
            "13" => Bled60(0.3, input.EndsWith("5 h later", StringComparison.Ordinal) ? 5 * 3600 : 0) / 92,
            "14" => Bled60(0.5, 0) / 92,
            "15" => Refill(Volume * 0.3, 3600, 0, input.Contains("3 h", StringComparison.Ordinal) ? 10800 : 1800),
            "16" => Refill(500, 600, 100.0 / 3600, input.Contains("48 h", StringComparison.Ordinal) ? 172800 : 86400),
            "17" => Infused(input.EndsWith("later", StringComparison.Ordinal) ? 1800 : 0),
            "18" => Diluted(sign),
            "19" => Held(30, 6).First(h => h.Debt >= 115).Minute,
            "20" when sign == "most blood shed" => Held(40, 4).Max(h => h.Shed),
            "20" => Held(40, 4) is var held ? held.Max(h => h.Shed) - held[^1].Shed : 0,
            "21" => Arrest(double.Parse(input.Split(' ')[2]), null),
            "22" when sign == "arrest" => Arrest(1000, 240),
            "22" => LeastRise([.. Delays.Select(t => Tied1000(t).Levels.LostVolume / Volume * 100)]),
            "23" => Released(input.Contains("90", StringComparison.Ordinal) ? 1.5 : 2, new() { AirTemperature = 22 }, sign),
            "24" => Released(input.Contains("4 h", StringComparison.Ordinal) ? 4 : 6, new() { AirTemperature = 22 }, sign),
            "25" when input.Contains("80 less", StringComparison.Ordinal) => Resuscitated(80) - Resuscitated(60),
            "25" => Resuscitated(95) - Resuscitated(80),
            "26" => Cooled(input, sign),
            _ => throw new ArgumentOutOfRangeException(nameof(target), target, "No such target."),
        };

    private static Vitals Rest { get; } = new CasualtySimulation(Model, Volunteer).Vitals();

    private static double Percent(string text) => double.Parse(text[..text.IndexOf(" %", StringComparison.Ordinal)]);

    private static CasualtySimulation After(Person person, Conditions start, double rate, double seconds)
    {
        var simulation = new CasualtySimulation(Model, person) { Conditions = start with { Withdrawal = rate } };
        simulation.Advance((int)(seconds * 2));
        return simulation;
    }

    private static CasualtySimulation Until(Func<Vitals, bool> reached, Person person, double rate)
    {
        var simulation = After(person, new(), rate, 0);
        while (!reached(simulation.Vitals()))
            simulation.Advance(2);
        return simulation;
    }

    private static double Loss(string input)
    {
        var person = input.StartsWith("no ", StringComparison.Ordinal) ? Steady : new();
        var rate = Volume * 0.3 / 1800 * (input.Contains("three", StringComparison.Ordinal) ? 3 : 1);
        return Until(v => v.MeanArterialPressure < 62, person, rate).Levels.LostVolume / Volume * 100;
    }

    private static double Level(string sign, CasualtySimulation of) =>
        sign switch
        {
            "heart rate" => of.Vitals().HeartRate,
            "mean pressure" => of.Vitals().MeanArterialPressure,
            "systolic pressure" => of.Vitals().SystolicPressure,
            "central venous pressure" => of.Vitals().CentralVenousPressure,
            "pulse pressure" => of.Vitals().SystolicPressure - of.Vitals().DiastolicPressure,
            "stroke volume" => of.Vitals().StrokeVolume,
            "cardiac output" => of.Vitals().CardiacOutput,
            "breaths" => of.Vitals().RespiratoryRate,
            "urine" => of.Vitals().Urine,
            _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "No such sign."),
        };

    /// <summary>Against rest: volumes, flows and, in the first target, pulse pressure in per cent.</summary>
    private static double Change(string sign, CasualtySimulation of)
    {
        var (now, before) = (Level(sign, of), Level(sign, new CasualtySimulation(Model, of.Person)));
        var relative = sign is "stroke volume" or "cardiac output" || (sign == "pulse pressure" && of.Time == 384);
        return relative ? ((now / before) - 1) * 100 : now - before;
    }

    private static CasualtySimulation Bled20(double percent, double later)
    {
        var end = 1200 + later;
        return Bled("", Casualty, Injured, percent / 100, 1200, end).Run(Model, end, _ => { });
    }

    private static double Bled60(double share, double later) =>
        Bled("", Casualty, Anaesthetised, share, 3600, 3600 + later).Run(Model, 3600 + later, _ => { }).Vitals().MeanArterialPressure;

    private static double LeastRise(double[] values) => values.Zip(values.Skip(1), (a, b) => b - a).Min();

    /// <summary>Of the plasma lost, how much has come back since, in per cent.</summary>
    private static double Refill(double blood, double over, double drinking, double later)
    {
        var simulation = new CasualtySimulation(Model, Casualty) { Conditions = Anaesthetised with { Withdrawal = blood / over } };
        var (before, lost) = (simulation.Now().PlasmaVolume, 0.0);
        while (simulation.Time < over)
        {
            lost += blood / over * (1 - simulation.Now().Haematocrit);
            simulation.Advance(2);
        }

        simulation.Conditions = Anaesthetised with { Drinking = drinking };
        simulation.Advance((int)(later * 2));
        return (1 - ((before - simulation.Now().PlasmaVolume) / lost)) * 100;
    }

    private static double Infused(double later)
    {
        var simulation = new CasualtySimulation(Model, Volunteer);
        var (before, given) = (simulation.Now().PlasmaVolume, 25.0 * 75);
        simulation.Conditions = new() { Infusion = new(given / 1800) };
        simulation.Advance(3600);
        simulation.Conditions = new();
        simulation.Advance((int)(later * 2));
        return (simulation.Now().PlasmaVolume - before) / given * 100;
    }

    private static double Diluted(string sign)
    {
        var simulation = new CasualtySimulation(Model, Volunteer);
        var before = simulation.Vitals();
        // What is drawn off goes back as albumin of plasma's own strength, so that the volume stays.
        simulation.Conditions = new() { Withdrawal = 1, Infusion = new(1, 0, 0.07, 0, 37) };
        while (simulation.Vitals().Haemoglobin > 5)
            simulation.Advance(20);
        var after = simulation.Vitals();
        return sign == "lactate"
            ? simulation.Levels.Lactate
            : (after.HeartRate - before.HeartRate) / (before.Haemoglobin - after.Haemoglobin);
    }

    /// <summary>Each minute of a pressure held by drawing blood off and giving it back.</summary>
    private static List<(double Minute, double Debt, double Shed)> Held(double pressure, double hours)
    {
        var simulation = new CasualtySimulation(Model, Casualty) { Conditions = Anaesthetised };
        var (seen, given) = (new List<(double, double, double)>(), 0.0);
        while (!simulation.IsArrested && simulation.Time < hours * 3600)
        {
            var now = simulation.Now();
            var wanted = Math.Clamp((now.ArterialPressure - pressure) * 0.5, -4, 4);
            simulation.Conditions =
                wanted > 0
                    ? Anaesthetised with
                    {
                        Withdrawal = wanted,
                    }
                    : Anaesthetised with
                    {
                        Infusion = new(-wanted, 0.43, 0.07 * 0.57, 0.57),
                    };
            given += Math.Max(-wanted, 0);
            simulation.Advance(2);
            if (simulation.Time % 60 == 0)
                seen.Add(
                    (
                        simulation.Time / 60,
                        simulation.Levels.OxygenDebt / simulation.Person.MassKg,
                        (simulation.Levels.LostVolume - given) / Volume * 100
                    )
                );
        }

        return seen;
    }

    /// <summary>Minutes; not a number where the casualty lives for ten hours.</summary>
    private static double Arrest(double rate, double? tied)
    {
        var start = Injured with { Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, rate)] };
        var end = new Course("", Casualty, start, tied is { } at ? [new(at, Tied)] : [], 36000).Run(Model, 600, _ => { });
        return end.IsArrested ? end.Time / 60 : double.NaN;
    }

    private static CasualtySimulation Tied1000(double at)
    {
        var start = Injured with { Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 1000)] };
        return new Course("", Casualty, start, [new(at, Tied)], 1200).Run(Model, 600, _ => { });
    }

    /// <summary>Tied from the start, let out, and seen for an hour: peaks, or the lowest pressure, against what was before.</summary>
    private static double Released(double hours, Conditions start, string sign)
    {
        var simulation = new CasualtySimulation(Model, Volunteer) { Conditions = Tied(start) };
        simulation.Advance((int)(hours * 7200));
        var (before, pressure) = (simulation.Levels, simulation.Vitals().MeanArterialPressure);
        var (lactate, potassium, lowest) = (0.0, 0.0, pressure);
        simulation.Conditions = Slack(simulation.Conditions);
        for (var i = 0; i < 360; i++)
        {
            simulation.Advance(20);
            lactate = Math.Max(lactate, simulation.Levels.Lactate);
            potassium = Math.Max(potassium, simulation.Levels.Potassium);
            lowest = Math.Min(lowest, simulation.Vitals().MeanArterialPressure);
        }

        return sign switch
        {
            "lactate" => lactate - before.Lactate,
            "potassium" => hours > 3 ? potassium : potassium - before.Potassium,
            "mean pressure" => lowest - pressure,
            "dead muscle" => simulation.Levels.DeadMuscle * 100,
            _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "No such sign."),
        };
    }

    /// <summary>Blood lost by two hours, mL. Ringer while the pressure is below its aim, at most 10 L.</summary>
    private static double Resuscitated(double aim)
    {
        var bleeding = Injured with { Wounds = [WoundConditions.Bleeding(WoundKind.TrunkArtery, 300)] };
        var simulation = new CasualtySimulation(Model, Casualty) { Conditions = bleeding };
        simulation.Advance(2400);
        var (before, given) = (simulation.Levels.LostVolume, 0.0);
        while (!simulation.IsArrested && simulation.Time < 7200)
        {
            var rate = simulation.Now().ArterialPressure < aim && given < 10_000 ? 200.0 / 60 : 0;
            simulation.Conditions = bleeding with { Infusion = new(rate) };
            given += rate;
            simulation.Advance(2);
        }

        return simulation.Levels.LostVolume - before;
    }

    private static double Cooled(string input, string sign)
    {
        var cold = new Conditions
        {
            AirTemperature = 5,
            Insulation = 0.2,
            Wetness = 1,
        };
        if (input.StartsWith("healthy", StringComparison.Ordinal))
        {
            var most = 0.0;
            var end = new Course("", new(), cold, [], 3 * 3600).Run(
                Model,
                60,
                now => most = Math.Max(most, 1 + now.Now().ShiveringMultiple)
            );
            return sign == "core" ? end.Levels.CoreTemperature : most;
        }

        var bled = Bled("", Casualty, cold with { NociceptiveBlock = 0.8, Pain = 5, Anxiety = 0.7 }, 0.35, 1200, 1200);
        var simulation = bled.Run(Model, 1200, _ => { });
        var before = simulation.Levels.CoreTemperature;
        simulation.Conditions = simulation.Conditions with { Withdrawal = 0 };
        simulation.Advance(2 * 7200);
        return (before - simulation.Levels.CoreTemperature) / 2;
    }
}
