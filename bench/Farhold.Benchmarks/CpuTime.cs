using System.Globalization;

namespace Farhold.Benchmarks;

/// <summary>Processor time of the same scenes, user and system, of the whole process.</summary>
internal static class CpuTime
{
    public static void Print()
    {
        var scenes = new RecordBenchmarks();
        scenes.Load();
        Print("Judge_from_cold_after_72_hours_of_2000_entries", 400, 1, () => scenes.Judge_from_cold_after_72_hours_of_2000_entries());
        Print("Judge_again_after_72_hours_of_2000_entries", 6_000, 1, () => scenes.Judge_again_after_72_hours_of_2000_entries());
        Print("One_more_entry_on_a_loaded_record", 200, 100, () => scenes.One_more_entry_on_a_loaded_record(), scenes.LoadAnew);
        Print("Load_100000_entries (per entry)", 8, 100_000, () => scenes.Load_100000_entries());
    }

    private static void Print(string name, int runs, int each, Action scene, Action? before = null)
    {
        for (var i = 0; i < runs / 2; i++)
            Run();
        Thread.Sleep(300); // lets the compiler finish its second pass
        for (var i = 0; i < runs / 4; i++)
            Run();
        var spent = TimeSpan.Zero;
        for (var i = 0; i < runs; i++)
            spent += Run();
        var micros = spent.TotalMicroseconds / runs / each;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name, -50} {micros, 10:0.00} µs of processor time"));

        TimeSpan Run()
        {
            before?.Invoke();
            var start = Environment.CpuUsage.TotalTime;
            scene();
            return Environment.CpuUsage.TotalTime - start;
        }
    }
}
