using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Rehearsal.Pictures;

/// <summary>Time since the start from left to right.</summary>
/// <param name="Until">In seconds.</param>
/// <param name="Left">In pixels, as is <paramref name="Right"/>.</param>
internal sealed record ClockScale(double Until, double Left, double Right)
{
    private static readonly ImmutableArray<int> Steps =
    [
        60,
        300,
        900,
        1_800,
        3_600,
        7_200,
        10_800,
        21_600,
        43_200,
        86_400,
        172_800,
        432_000,
    ];

    public double X(double seconds) => Left + ((Right - Left) * Math.Clamp(seconds / Until, 0, 1));

    /// <summary>In seconds: even, and far enough apart for their labels.</summary>
    public IEnumerable<double> Ticks()
    {
        var room = TextWidth.Of(Label(Until), ChartText.Least) + 12;
        var step = Steps.FirstOrDefault(s => s * (Right - Left) / Until >= room, Steps[^1]);
        for (var at = 0.0; at <= Until; at += step)
            yield return at;
    }

    /// <summary>Hours and minutes: <c>1:05</c>.</summary>
    public static string Label(double seconds) =>
        string.Create(CultureInfo.InvariantCulture, $"{(long)seconds / 3_600}:{(long)seconds / 60 % 60:00}");
}
