using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Farhold.Xml;

namespace Farhold.Tests.WayOut.Reach;

/// <summary>What goes out is read back as someone else would read it.</summary>
public class ReachFilesTests
{
    private static readonly ReachProfile Demo = Forecast();

    private static ReachProfile Forecast()
    {
        var route = (
            (Read<Route>.Usable)
                RouteReader.Read(SomeRoute.Demo("skarvedal.route.json"), "skarvedal.route.json", XmlTracks.In(SomeRoute.DemoFile))
        ).Value;
        return ReachProfile.Of(
            route with
            {
                Title = "A < B & \"C\" \u0001",
                SpacingM = 400,
            },
            ReachProfile.NightsOf(route),
            SomeRoute.Limits,
            new Rng(1),
            200
        );
    }

    [Fact]
    public void The_gpx_reads_back_as_the_same_way_with_its_marks()
    {
        var track = Assert.IsType<Read<Track>.Usable>(XmlTracks.Parse(ReachGpx.Write(Demo), "out.gpx")).Value;
        Assert.Equal(Demo.Points.Length, track.Points.Count());
        Assert.All(track.Points.Zip(Demo.Points), p => Assert.True(Geodesic.Metres(p.First.Place, p.Second.Place) < 0.2));
        Assert.All(track.Points, p => Assert.NotNull(p.ElevationM));
        Assert.Equal(Demo.Ways.Length + (2 * Demo.Stretches.Length), track.Waypoints.Length);
        Assert.DoesNotContain(
            track.Warnings,
            w => w.Kind is TrackWarningKind.OtherVersion or TrackWarningKind.Jump or TrackWarningKind.NoElevation
        );
    }

    [Fact]
    public void The_gpx_names_the_program_and_its_version() =>
        Assert.Equal(Product.Named, (string?)XDocument.Parse(Encoding.UTF8.GetString(ReachGpx.Write(Demo))).Root!.Attribute("creator"));

    [Fact]
    public void The_geojson_has_the_form_of_rfc_7946()
    {
        using var json = JsonDocument.Parse(ReachGeoJson.Write(Demo).Utf8);
        var root = json.RootElement;
        Assert.Equal("FeatureCollection", root.GetProperty("type").GetString());
        Assert.False(root.TryGetProperty("crs", out _));
        var features = root.GetProperty("features").EnumerateArray().ToArray();
        Assert.Equal(Demo.Points.Length + Demo.Ways.Length + Demo.Stretches.Length, features.Length);
        Assert.All(
            features,
            feature =>
            {
                Assert.Equal("Feature", feature.GetProperty("type").GetString());
                Assert.Equal(JsonValueKind.Object, feature.GetProperty("properties").ValueKind);
                var (type, coordinates) = (
                    feature.GetProperty("geometry").GetProperty("type").GetString(),
                    feature.GetProperty("geometry").GetProperty("coordinates")
                );
                var positions = type == "Point" ? [coordinates] : coordinates.EnumerateArray().ToArray();
                Assert.Contains(type, (string[])["Point", "LineString"]);
                Assert.True(type == "Point" || positions.Length >= 2);
                // Longitude first: the demo lies near 3 east, 62.5 north.
                Assert.All(positions, p => Assert.True(p[0].GetDouble() is > 3 and < 4 && p[1].GetDouble() is > 62 and < 63));
            }
        );
    }

    [Fact]
    public void A_line_over_the_antimeridian_is_cut_there()
    {
        // 0.1 degree is about 11 km: the line runs from 179.95 to −179.96.
        var track = SomeRoute.Track(10, lonAtStart: 179.95);
        var profile = SomeRoute.Profile(SomeRoute.Walk($"\"end\":{{\"onward\":{SomeRoute.Just(300)}}}"), track);
        using var json = JsonDocument.Parse(ReachGeoJson.Write(profile).Utf8);
        var line = json.RootElement.GetProperty("features")[0].GetProperty("geometry");
        Assert.Equal("MultiLineString", line.GetProperty("type").GetString());
        var parts = line.GetProperty("coordinates")
            .EnumerateArray()
            .Select(part => part.EnumerateArray().Select(p => p[0].GetDouble()).ToArray())
            .ToArray();
        Assert.Equal((2, 180, -180), (parts.Length, parts[0][^1], parts[1][0]));
        Assert.All(parts, part => Assert.True(part.Max() - part.Min() < 1));
    }

    [Fact]
    public void The_picture_is_told_in_words_and_needs_no_colour()
    {
        var svg = XDocument.Parse(ReachSvg.Draw(Demo)).Root!;
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("t d", svg.Attribute("aria-labelledby")!.Value);
        Assert.Contains("A < B", svg.Element(ns + "title")!.Value, StringComparison.Ordinal);
        Assert.Contains("Higher care is furthest", svg.Element(ns + "desc")!.Value, StringComparison.Ordinal);
        var paints = svg.DescendantsAndSelf()
            .Attributes()
            .Where(a => a.Name == "fill" || a.Name == "stroke")
            .Select(a => a.Value)
            .Distinct();
        Assert.All(paints, paint => Assert.Contains(paint, (string[])["#000", "#fff", "none", "url(#over)"]));
        Assert.All(
            svg.Descendants().Attributes().Where(a => a.Name == "d" || a.Name == "x" || a.Name == "y"),
            a => Assert.DoesNotContain("NaN", a.Value, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_json_tells_every_point_and_way()
    {
        using var json = JsonDocument.Parse(ReachJson.Write(Demo).Utf8);
        Assert.Equal(Demo.Points.Length, json.RootElement.GetProperty("points").GetArrayLength());
        Assert.Equal(
            Demo.Ways.Select(w => w.Letter),
            json.RootElement.GetProperty("ways").EnumerateArray().Select(w => w.GetProperty("letter").GetString())
        );
        Assert.NotEmpty(Encoding.UTF8.GetString(ReachJson.Write(Demo).Utf8.Span));
    }
}
