using System.Buffers;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Farhold.WayOut.Reach;

/// <summary>A reach profile as JSON: durations since the injury as ISO 8601, null where nothing comes within 60 days.</summary>
public static class ReachJson
{
    public static JsonText Write(ReachProfile profile)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true }))
            Write(json, profile);
        return new(buffer.WrittenMemory);
    }

    private static void Write(Utf8JsonWriter json, ReachProfile profile)
    {
        json.WriteStartObject();
        json.WriteString("route", profile.Route.Id);
        json.WriteString("start", profile.Route.Start is { } start ? InstantPattern.General.Format(start) : null);
        json.WriteString("generator", profile.Rng.ToString());
        json.WriteNumber("trials", profile.Trials);
        List("says", ReachWords.Sentences(profile), json.WriteStringValue);
        List(
            "ways",
            profile.Ways,
            way =>
            {
                json.WriteStartObject();
                json.WriteString("letter", way.Letter);
                json.WriteString("name", way.Name);
                json.WriteString("kind", ReachWords.Kind(way.Kind));
                json.WriteNumber("alongM", Math.Round(way.AlongM, 1));
                Place(json, way.Place);
                json.WriteEndObject();
            }
        );
        List(
            "points",
            profile.Points,
            point =>
            {
                json.WriteStartObject();
                json.WriteNumber("alongM", Math.Round(point.AlongM, 1));
                Place(json, point.Place);
                json.WriteString("way", profile.Ways[point.Way].Letter);
                json.WriteString("median", Iso(point.Median));
                json.WriteString("p90", Iso(point.P90));
                json.WriteEndObject();
            }
        );
        List(
            "overLimit",
            profile.Stretches,
            stretch =>
            {
                json.WriteStartObject();
                json.WriteString("limit", stretch.Limit.Id);
                json.WriteString("measure", ReachWords.Measure(stretch.Measure));
                json.WriteNumber("fromM", Math.Round(stretch.FromM, 1));
                json.WriteNumber("toM", Math.Round(stretch.ToM, 1));
                json.WriteEndObject();
            }
        );
        List(
            "restsOn",
            profile.Rests,
            rest =>
            {
                json.WriteStartObject();
                json.WriteString("what", rest.What);
                json.WriteString("mark", rest.Mark.ToString().ToLowerInvariant());
                json.WriteString("source", rest.Source);
                json.WriteEndObject();
            }
        );
        List("cautions", profile.Cautions, json.WriteStringValue);
        json.WriteEndObject();

        void List<T>(string name, IEnumerable<T> items, Action<T> write)
        {
            json.WriteStartArray(name);
            foreach (var item in items)
                write(item);
            json.WriteEndArray();
        }
    }

    private static void Place(Utf8JsonWriter json, GeoPoint place)
    {
        json.WriteNumber("lat", Math.Round(place.Latitude, 6));
        json.WriteNumber("lon", Math.Round(place.Longitude, 6));
    }

    private static string? Iso(Duration? time) => time is { } known ? IsoSpan.WriteNearest(known) : null;
}
