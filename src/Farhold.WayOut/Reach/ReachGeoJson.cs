using System.Buffers;
using System.Text.Json;
using NodaTime;

namespace Farhold.WayOut.Reach;

/// <summary>A reach profile as GeoJSON (RFC 7946): the points, the stretches over each limit, and the ways out.</summary>
public static class ReachGeoJson
{
    public static JsonText Write(ReachProfile profile)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = false }))
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteStartArray("features");
            foreach (var stretch in profile.Stretches)
                Stretch(json, profile, stretch);
            foreach (var way in profile.Ways)
                Way(json, way);
            foreach (var point in profile.Points)
                Point(json, profile, point);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return new(buffer.WrittenMemory);
    }

    private static void Stretch(Utf8JsonWriter json, ReachProfile profile, ReachStretch stretch)
    {
        var parts = Parts([.. Reaching(profile, stretch)]);
        Begin(json, parts.Count == 1 ? "LineString" : "MultiLineString");
        if (parts.Count == 1)
            Line(json, parts[0]);
        else
        {
            json.WriteStartArray();
            foreach (var part in parts)
                Line(json, part);
            json.WriteEndArray();
        }

        Properties(json, "over-limit");
        json.WriteString("limit", stretch.Limit.Id);
        json.WriteString("measure", ReachWords.Measure(stretch.Measure));
        json.WriteNumber("fromM", Math.Round(stretch.FromM, 1));
        json.WriteNumber("toM", Math.Round(stretch.ToM, 1));
        End(json);
    }

    /// <summary>The points over the limit and the nearest one within it on either side.</summary>
    internal static IEnumerable<ReachPoint> Reaching(ReachProfile profile, ReachStretch stretch)
    {
        var (first, last) = (Math.Max(0, stretch.First - 1), Math.Min(stretch.Last + 1, profile.Points.Length - 1));
        return profile.Points.Skip(first).Take(last - first + 1);
    }

    private static void Way(Utf8JsonWriter json, ReachWay way)
    {
        Begin(json, "Point");
        Position(json, way.Place.Longitude, way.Place.Latitude, null);
        Properties(json, ReachWords.Kind(way.Kind));
        json.WriteString("letter", way.Letter);
        json.WriteString("name", way.Name);
        json.WriteNumber("alongM", Math.Round(way.AlongM, 1));
        End(json);
    }

    private static void Point(Utf8JsonWriter json, ReachProfile profile, ReachPoint point)
    {
        Begin(json, "Point");
        Position(json, point.Place.Longitude, point.Place.Latitude, point.ElevationM);
        Properties(json, "reach");
        json.WriteNumber("alongM", Math.Round(point.AlongM, 1));
        json.WriteString("way", profile.Ways[point.Way].Letter);
        Minutes(json, "medianMinutes", point.Median);
        Minutes(json, "p90Minutes", point.P90);
        End(json);
    }

    private static void Minutes(Utf8JsonWriter json, string name, Duration? time)
    {
        if (time is { } known)
            json.WriteNumber(name, Math.Round(known.TotalMinutes));
        else
            json.WriteNull(name);
    }

    private static void Begin(Utf8JsonWriter json, string type)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        json.WriteStartObject("geometry");
        json.WriteString("type", type);
        json.WritePropertyName("coordinates");
    }

    private static void Properties(Utf8JsonWriter json, string kind)
    {
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteString("kind", kind);
    }

    private static void End(Utf8JsonWriter json)
    {
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Line(Utf8JsonWriter json, List<(double Lon, double Lat, double? Ele)> line)
    {
        json.WriteStartArray();
        foreach (var (lon, lat, ele) in line)
            Position(json, lon, lat, ele);
        json.WriteEndArray();
    }

    /// <summary>Longitude first (section 3.1.1), to about a decimetre.</summary>
    private static void Position(Utf8JsonWriter json, double lon, double lat, double? ele)
    {
        json.WriteStartArray();
        json.WriteNumberValue(Math.Round(lon, 6));
        json.WriteNumberValue(Math.Round(lat, 6));
        if (ele is { } metres)
            json.WriteNumberValue(Math.Round(metres, 1));
        json.WriteEndArray();
    }

    /// <summary>Cut where it crosses the antimeridian (section 3.1.9).</summary>
    private static List<List<(double Lon, double Lat, double? Ele)>> Parts(ReachPoint[] points)
    {
        List<List<(double, double, double?)>> parts =
        [
            [],
        ];
        for (var i = 0; i < points.Length; i++)
        {
            var here = points[i];
            if (i > 0 && Math.Abs(here.Place.Longitude - points[i - 1].Place.Longitude) > 180)
            {
                var before = points[i - 1].Place;
                var side = before.Longitude < 0 ? -180.0 : 180;
                var (run, left) = (360 - Math.Abs(here.Place.Longitude - before.Longitude), 180 - Math.Abs(before.Longitude));
                var lat = before.Latitude + ((run > 0 ? left / run : 0) * (here.Place.Latitude - before.Latitude));
                parts[^1].Add((side, lat, null));
                parts.Add([(-side, lat, null)]);
            }

            parts[^1].Add((here.Place.Longitude, here.Place.Latitude, here.ElevationM));
        }

        // A line has two positions at least, also where the route is one.
        if (parts[^1].Count == 1)
            parts[^1].Add(parts[^1][0]);
        return parts;
    }
}
