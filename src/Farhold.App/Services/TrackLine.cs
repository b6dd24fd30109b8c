using System.Collections.Immutable;

namespace Farhold.App.Services;

/// <summary>A track as kept with a plan: thinned, to be sketched and to tell how far along it somebody is.</summary>
/// <param name="Points">Empty where there was none.</param>
/// <param name="Km">Of the whole track, before it was thinned.</param>
public sealed record TrackLine(ImmutableArray<GeoPoint> Points, double Km)
{
    /// <summary>A stage whose length was changed by hand goes by other ground (design).</summary>
    private const double SameLength = 0.01;

    public static TrackLine None { get; } = new([], 0);

    public static TrackLine Of(TrackFile track) => new(TrackSketch.Thinned(track.Track), track.Metres / 1000);

    /// <summary>The track behind a stage; null where the stage was not made from it.</summary>
    public Track? Behind(Measured ground) =>
        Points.Length > 1 && ground.Stretch is { } stretch && Math.Abs(stretch.DistanceKm - Km) <= SameLength * Km
            ? new(null, [new([.. Points.Select(p => new TrackPoint(p, null, null))])], [], [])
            : null;
}
