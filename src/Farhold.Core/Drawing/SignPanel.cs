using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>A point of a chart, px.</summary>
internal readonly record struct ChartPoint(double X, double Y);

/// <summary>A stretch along one direction of a chart, px.</summary>
internal readonly record struct ChartSpan(double From, double To);

/// <summary>A reading whose time is only known to lie between two.</summary>
internal readonly record struct ChartBar(double From, double To, double Y);

/// <summary>One panel as it is laid out: a plot from <paramref name="Top"/> to <paramref name="Bottom"/>.</summary>
internal sealed record SignPanel(double Top, double Bottom)
{
    /// <summary>Usual values, from above to below.</summary>
    public ChartSpan? Usual { get; init; }

    /// <summary>Values past a limit.</summary>
    public ImmutableArray<ChartSpan> Past { get; init; } = [];

    public ImmutableArray<double> LimitLines { get; init; } = [];

    /// <summary>Lines without a gap.</summary>
    public ImmutableArray<ImmutableArray<ChartPoint>> Lines { get; init; } = [];

    public ImmutableArray<ChartPoint> Dots { get; init; } = [];

    public ImmutableArray<ChartBar> Bars { get; init; } = [];

    /// <summary>Values only known to lie between two, from above to below.</summary>
    public ImmutableArray<(double X, ChartSpan Y)> Ranges { get; init; } = [];

    /// <summary>Looks at which it was not taken.</summary>
    public ImmutableArray<double> Hollow { get; init; } = [];

    /// <summary>Around the last value, where it changed by much.</summary>
    public ChartPoint? Ring { get; init; }
}

/// <summary>Values from below to above.</summary>
internal readonly record struct ChartScale(double Low, double High, double Top, double Bottom)
{
    private const double Margin = 0.12;

    public double Y(double value) => Bottom - ((Bottom - Top) * (value - Low) / (High - Low));

    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>Wide enough for every reading, and for what is usual and the limits as far as these are shown.</summary>
    public static ChartScale For(SignCurve curve, double top, double bottom)
    {
        var (sign, limits) = (curve.Sign, curve.Limits);
        var values = curve.Readings.Select(r => r.Value).ToList();
        if (limits.Usual is { } usual)
            values.AddRange([
                Math.Clamp(usual.Low, sign.Shown.Low, sign.Shown.High),
                Math.Clamp(usual.High, sign.Shown.Low, sign.Shown.High),
            ]);
        foreach (var limit in new[] { limits.Low, limits.High })
            if (limit is { } at && at >= sign.Shown.Low && at <= sign.Shown.High)
                values.Add(at);
        var (low, high) = (values.Min(), values.Max());
        var more = Math.Max(0, sign.LeastSpan - (high - low)) / 2;
        (low, high) = Within(sign.Range, low - more, high + more);
        var margin = Margin * (high - low);
        return new(low - margin, high + margin, top, bottom);
    }

    /// <summary>As wide, but nothing is shown that can't be.</summary>
    private static (double Low, double High) Within(FieldRange range, double low, double high) =>
        low < range.Min ? (range.Min, Math.Max(high, Math.Min(range.Max, high + range.Min - low)))
        : high > range.Max ? (Math.Max(range.Min, low + range.Max - high), range.Max)
        : (low, high);
}
