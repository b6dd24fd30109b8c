namespace Farhold.WayOut.Ground;

/// <summary>One step between two neighbouring points of a track.</summary>
internal readonly record struct TrackStep(TrackPoint From, TrackPoint To, GeodesicPath Path)
{
    public static TrackStep Of(TrackPoint from, TrackPoint to) => new(from, to, Geodesic.Between(from.Place, to.Place));

    /// <summary>The point some metres along; height and time are shared out evenly, and unknown if either end's is.</summary>
    public TrackPoint At(double metres)
    {
        var part = Path.Metres > 0 ? metres / Path.Metres : 0;
        return new(
            Geodesic.From(From.Place, Path.StartAzimuth, metres).Place,
            From.ElevationM is { } low && To.ElevationM is { } high ? low + (part * (high - low)) : null,
            From.Time is { } start && To.Time is { } end ? start + ((end - start) * part) : null
        );
    }
}
