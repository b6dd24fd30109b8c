using NodaTime;

namespace Farhold.App.WayOut;

/// <summary>Three times while they are being told, in minutes; null: not yet.</summary>
public readonly record struct ThreeTimes(double? Low, double? Likely, double? High)
{
    /// <summary>Whether they rise; null while one is missing.</summary>
    public bool? Rises => Low is { } low && Likely is { } likely && High is { } high ? low <= likely && likely <= high : null;

    /// <summary>Null unless all are told and rise.</summary>
    public ThreePoint? Points => Rises == true ? new(Length(Low), Length(Likely), Length(High)) : null;

    /// <summary>Of tenths; null unless all are told and rise from above zero.</summary>
    public Percentiles? Tenths => Rises == true && Low > 0 ? new(Length(Low), Length(Likely), Length(High)) : null;

    public static ThreeTimes Of(ThreePoint points) => new(points.Low.TotalMinutes, points.Likely.TotalMinutes, points.High.TotalMinutes);

    private static Duration Length(double? minutes) => Duration.FromMinutes(minutes!.Value);
}
