using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.App.Screens.SignsPlace;

public readonly record struct ChartPoint(Instant At, double Value);

/// <summary>Where points lie in a drawing <see cref="Width"/> by <see cref="Height"/>, time from left to right.</summary>
/// <remarks>Times run true; values from the least to the greatest seen, so that a small change is visible and the figures say how small.</remarks>
public sealed record ChartFrame(ImmutableArray<ChartPoint> Points)
{
    public const int Width = 320;
    public const int Height = 120;
    private const int Edge = 12;

    public double Least { get; } = Points.Min(p => p.Value);

    public double Most { get; } = Points.Max(p => p.Value);

    public string X(ChartPoint point)
    {
        var span = (Points[^1].At - Points[0].At).TotalSeconds;
        return Text(Edge + ((Width - (2 * Edge)) * (span > 0 ? (point.At - Points[0].At).TotalSeconds / span : 0.5)));
    }

    public string Y(ChartPoint point)
    {
        var span = Most - Least;
        return Text(Height - Edge - ((Height - (2 * Edge)) * (span > 0 ? (point.Value - Least) / span : 0.5)));
    }

    public string Line => string.Join(' ', Points.Select(p => $"{X(p)},{Y(p)}"));

    private static string Text(double d) => d.ToString("0.#", CultureInfo.InvariantCulture);
}
