using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>A measured sign that has a panel of its own.</summary>
/// <param name="Shown">The scale never opens wider than this for a limit or a usual range alone (design).</param>
/// <param name="LeastSpan">How much the scale holds at least, so that a small change looks small (design).</param>
/// <param name="SmallestChange">Less is not worth telling.</param>
/// <param name="InPercent">Whether a change is told in percent, and marked from a fifth on; else in its unit.</param>
public sealed record ChartedSign(
    FieldRange Range,
    Between Shown,
    double LeastSpan,
    double SmallestChange,
    bool InPercent,
    Func<Payload.SignsTaken, double?> Value
)
{
    /// <summary>In the order in which they are drawn, from the top.</summary>
    public static ImmutableArray<ChartedSign> All { get; } =
    [
        new(FieldRange.HeartRate, new(30, 190), 40, Signs.SmallestChange.HeartRate, true, s => s.HeartRate),
        new(FieldRange.RespiratoryRate, new(5, 60), 15, Signs.SmallestChange.RespiratoryRate, true, s => s.RespiratoryRate),
        new(FieldRange.Systolic, new(60, 150), 50, Signs.SmallestChange.Systolic, true, s => s.Systolic),
        new(FieldRange.Spo2, new(85, 100), 10, Signs.SmallestChange.Spo2, false, s => s.Spo2),
        new(FieldRange.TemperatureC, new(34, 40), 3, Signs.SmallestChange.TemperatureC, false, s => s.TemperatureC),
        new(FieldRange.Pain, new(0, 10), 10, Signs.SmallestChange.Pain, false, s => s.Pain),
    ];

    public string Field => Range.Field;
}
