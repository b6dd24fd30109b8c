using System.Globalization;
using Farhold.Physiology.Arithmetic;
using Farhold.Physiology.Body;
using Farhold.Physiology.Constants;
using Farhold.Physiology.Lanewise;

namespace Farhold.Benchmarks;

/// <summary>How many seconds of a casualty's time a second of processor time makes: one alone, and eight at once.</summary>
internal static class CasualtyCpuTime
{
    private const double Hours = 12;

    public static void Print()
    {
        foreach (var step in (double[])[0.5, 1, 2])
        {
            var steps = (int)(Hours * 3600 / step);
            Print($"one casualty, steps of {step} s", Hours * 3600, () => Alone(step).Advance(steps));
            Print($"eight at once, steps of {step} s", 8 * Hours * 3600, () => Eight(step).Advance(steps));
        }

        var sum = 0.0;
        PrintEach("ExactMath.Exp", () => Each(ExactMath.Exp));
        PrintEach("Math.Exp", () => Each(Math.Exp));
        PrintEach("LaneMath.Exp, a lane", EachLane);
        if (double.IsNaN(sum))
            Console.WriteLine();

        void Each(Func<double, double> of)
        {
            for (var i = 0; i < 1_000_000; i++)
                sum += of((i % 1000) * 0.013);
        }

        void EachLane()
        {
            Lanes all = 0;
            for (var i = 0; i < 125_000; i++)
                all += LaneMath.Exp((i % 1000) * 0.013);
            sum += all[0];
        }
    }

    /// <summary>A man whose leg bled by 700 mL/min for two and a half minutes and is tied: all of the equations is at work.</summary>
    private static readonly Conditions Bleeds = new()
    {
        NociceptiveBlock = 0.8,
        Pain = 6,
        Anxiety = 1,
        AirTemperature = 15,
        Wounds = [WoundConditions.Bleeding(WoundKind.LimbArtery, 700)],
    };

    private static readonly Conditions Tied = Bleeds with { ArterialOcclusion = 1, VenousOcclusion = 1 };

    private static CasualtySimulation Alone(double step)
    {
        var simulation = new CasualtySimulation(Models.Current, new(), step: step) { Conditions = Bleeds };
        simulation.Advance((int)(150 / step));
        simulation.Conditions = Tied;
        return simulation;
    }

    private static EightCasualties Eight(double step)
    {
        var all = new EightCasualties(Models.Current, [.. Enumerable.Repeat(new Person(), 8)], step: step);
        for (var i = 0; i < 8; i++)
            all.SetConditions(i, Bleeds);
        all.Advance((int)(150 / step));
        for (var i = 0; i < 8; i++)
            all.SetConditions(i, Tied);
        return all;
    }

    private static void Print(string name, double seconds, Action scene) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name, -36} {seconds / Least(scene), 12:#,##0} times real time"));

    private static void PrintEach(string name, Action scene) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name, -36} {Least(scene) * 1000, 12:0.00} ns each"));

    /// <summary>Processor seconds, the least of ten runs after three to warm up: what is above it is other work's.</summary>
    private static double Least(Action scene)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < 13; i++)
        {
            var start = Environment.CpuUsage.TotalTime;
            scene();
            var spent = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
            if (i >= 3)
                least = Math.Min(least, spent);
        }

        return least;
    }
}
