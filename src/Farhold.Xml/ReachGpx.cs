using System.Globalization;
using System.Text;
using System.Xml;

namespace Farhold.Xml;

/// <summary>A reach profile as GPX 1.1: the route as a track, the ways out and the ends of what is over a limit as waypoints.</summary>
/// <remarks>Element order within a point is that of the GPX 1.1 schema, from memory: ele, name, desc.</remarks>
public static class ReachGpx
{
    private const string Namespace = "http://www.topografix.com/GPX/1/1";

    public static byte[] Write(ReachProfile profile)
    {
        using var stream = new MemoryStream();
        using (
            var xml = XmlWriter.Create(
                stream,
                new XmlWriterSettings
                {
                    Encoding = new UTF8Encoding(false),
                    Indent = true,
                    NewLineChars = "\n",
                }
            )
        )
        {
            xml.WriteStartElement("gpx", Namespace);
            xml.WriteAttributeString("version", "1.1");
            xml.WriteAttributeString("creator", Product.Named);
            foreach (var way in profile.Ways)
                Point(xml, "wpt", way.Place, null, $"{way.Letter}: {way.Name}", ReachWords.Kind(way.Kind));
            foreach (var stretch in profile.Stretches)
                Ends(xml, profile, stretch);
            Track(xml, profile);
            xml.WriteEndElement();
        }

        return stream.ToArray();
    }

    private static void Ends(XmlWriter xml, ReachProfile profile, ReachStretch stretch)
    {
        var reaching = ReachGeoJson.Reaching(profile, stretch).ToArray();
        var what = $"{ReachWords.Measure(stretch.Measure)} over {ArrivalWords.Length(stretch.Limit.After)}";
        Point(xml, "wpt", reaching[0].Place, reaching[0].ElevationM, $"{what}: from here", Km(stretch.FromM));
        Point(xml, "wpt", reaching[^1].Place, reaching[^1].ElevationM, $"{what}: to here", Km(stretch.ToM));
    }

    private static void Track(XmlWriter xml, ReachProfile profile)
    {
        xml.WriteStartElement("trk");
        Text(xml, "name", profile.Route.Title ?? profile.Route.Track.Track.Name ?? "route");
        xml.WriteStartElement("trkseg");
        foreach (var point in profile.Points)
            Point(
                xml,
                "trkpt",
                point.Place,
                point.ElevationM,
                null,
                $"{profile.Ways[point.Way].Letter}; median {Time(point.Median)}; p90 {Time(point.P90)}"
            );
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static string Time(NodaTime.Duration? time) => time is { } known ? IsoSpan.WriteNearest(known) : "never";

    private static string Km(double metres) => string.Create(CultureInfo.InvariantCulture, $"km {metres / 1000:0.0}");

    private static void Point(XmlWriter xml, string element, GeoPoint place, double? ele, string? name, string desc)
    {
        xml.WriteStartElement(element);
        xml.WriteAttributeString("lat", Number(place.Latitude, "0.000000"));
        xml.WriteAttributeString("lon", Number(place.Longitude, "0.000000"));
        if (ele is { } metres)
            Text(xml, "ele", Number(metres, "0.0"));
        if (name is not null)
            Text(xml, "name", name);
        Text(xml, "desc", desc);
        xml.WriteEndElement();
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    // What XML has no way to say is left out: names come from outside.
    private static void Text(XmlWriter xml, string name, string text) =>
        xml.WriteElementString(
            name,
            string.Concat(
                text.Where(
                    (c, i) =>
                        XmlConvert.IsXmlChar(c)
                        || (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                        || (char.IsLowSurrogate(c) && i > 0 && char.IsHighSurrogate(text[i - 1]))
                )
            )
        );
}
