using System.Globalization;
using Farhold.Tools.Fit;

// Fits the pace of a litter to the published carries and prints how the forecasts stand beside what happened.
// From the root: dotnet run -c Release --project tools/fit
var tables = args.Length > 0 ? args[0] : Path.Combine("tests", "Farhold.Tests", "tables");
var ground = CaseRow.Of(Path.Combine(tables, "ground_cases.csv"));
var speeds = Calibration.TrailSpeeds(ground);
foreach (var (id, kmh) in speeds)
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{id}: {kmh:0.00} km/h by day, full party, no snow"));
Console.WriteLine(
    string.Create(
        CultureInfo.InvariantCulture,
        $"median {Calibration.Median(speeds.Select(s => s.Kmh)):0.00} km/h; shipped {LitterCarry.OnTrailKmh.Median:0.00}"
    )
);
foreach (
    var line in Calibration
        .Table("on the ground", Calibration.Ground(ground))
        .Append("")
        .Concat(Calibration.Table("by air", Calibration.Air(CaseRow.Of(Path.Combine(tables, "air_cases.csv")))))
)
    Console.WriteLine(line);
