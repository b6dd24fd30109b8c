using System.Collections.Immutable;

namespace Farhold.WayOut.Pictures;

/// <summary>A bare sketch of a track, north up: where it goes, from where to where, how long a kilometre is. No map.</summary>
public static class TrackSketch
{
    /// <summary>As many points as a small picture shows (design).</summary>
    private const int Most = 120;

    private const double Edge = 14;

    /// <summary>Evenly spaced points of a track, few enough to keep with a plan.</summary>
    public static ImmutableArray<GeoPoint> Thinned(Track track)
    {
        var points = track.Points.Select(p => p.Place).ToArray();
        return points.Length <= Most
            ? [.. points]
            : [.. Enumerable.Range(0, Most).Select(i => points[(int)((long)i * (points.Length - 1) / (Most - 1))])];
    }

    /// <param name="line">At least two points.</param>
    /// <param name="at">Where the casualty is; null where nobody noted it.</param>
    public static string Draw(ImmutableArray<GeoPoint> line, GeoPoint? at, string id, double width, double height, string label)
    {
        var middle = line.Average(p => p.Latitude);
        // A few kilometres: flat enough. Longitudes are taken from the first, so that the date line cuts nothing.
        double East(GeoPoint p) => Math.IEEERemainder(p.Longitude - line[0].Longitude, 360) * Math.Cos(middle * Math.PI / 180);
        var all = at is { } here ? line.Add(here) : line;
        var (west, east) = (all.Min(East), all.Max(East));
        var (south, north) = (all.Min(p => p.Latitude), all.Max(p => p.Latitude));
        var scale = Math.Min(
            (width - (2 * Edge)) / Math.Max(east - west, 1e-6),
            (height - (2 * Edge) - 16) / Math.Max(north - south, 1e-6)
        );
        (double X, double Y) Place(GeoPoint p) =>
            ((width / 2) + (scale * (East(p) - ((west + east) / 2))), ((height - 16) / 2) - (scale * (p.Latitude - ((south + north) / 2))));
        var svg = new ChartSvg(id, width, height, label);
        svg.Path(
            "line",
            string.Concat(line.Select((p, i) => $"{(i == 0 ? "M" : "L")}{SvgText.Number(Place(p).X)} {SvgText.Number(Place(p).Y)}"))
        );
        var (start, end) = (Place(line[0]), Place(line[^1]));
        svg.Circle("hollow", start.X, start.Y, 5);
        svg.Circle("clear", end.X, end.Y, 5);
        if (at is { } casualty)
            svg.Circle("ring", Place(casualty).X, Place(casualty).Y, 9);
        const double metresPerDegree = 111_200;
        var km = Math.Pow(10, Math.Floor(Math.Log10((width / 2) / scale * metresPerDegree / 1000)));
        var length = km * 1000 / metresPerDegree * scale;
        svg.Path("now", $"M{SvgText.Number(Edge)} {SvgText.Number(height - 8)}h{SvgText.Number(length)}");
        svg.Text(new(Edge + length + 6, height - 4, $"{Say.Number(km)} km", ChartText.Least, "faint"));
        svg.Text(new(width - Edge, height - 4, PictureTexts.NorthUp, ChartText.Least, "faint", Anchor.End));
        return svg.Whole();
    }
}
