using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>A casualty's plan as this phone keeps it, with the shape of its last forecast.</summary>
/// <param name="Cautions">What is doubtful of the tracks it was made from.</param>
/// <param name="Arrival">Of the plan as it stands; null before its forecast.</param>
public sealed record KeptWay(Plan Plan, ImmutableArray<string> Cautions, Arrival? Arrival)
{
    /// <summary>The track it was made from.</summary>
    public TrackLine Line { get; init; } = TrackLine.None;

    /// <summary>Plans that stood here before, the newest first: none is thrown away by loading another.</summary>
    public ImmutableArray<Plan> Earlier { get; init; } = [];

    /// <summary>Under which the phone keeps a casualty's plan.</summary>
    public static string Key(string casualty) => "way-" + casualty;

    public string Write() =>
        Json.Text(w =>
        {
            w.WritePropertyName("plan");
            w.WriteRawValue(PlanWriter.Write(Plan).Utf8.Span);
            w.WriteStartArray("cautions");
            foreach (var caution in Cautions)
                w.WriteStringValue(caution);
            w.WriteEndArray();
            w.WriteStartArray("line");
            foreach (var point in Line.Points)
            {
                w.WriteNumberValue(point.Latitude);
                w.WriteNumberValue(point.Longitude);
            }

            w.WriteEndArray();
            w.WriteNumber("lineKm", Line.Km);
            w.WriteStartArray("earlier");
            foreach (var plan in Earlier)
                w.WriteRawValue(PlanWriter.Write(plan).Utf8.Span);
            w.WriteEndArray();
            if (Arrival is { } arrival)
                Shape(w, arrival);
        });

    /// <summary>Null where nothing was kept, or nothing that can be read.</summary>
    public static KeptWay? Read(string text) =>
        Json.Kept(
            text,
            root =>
                PlanReader.Read(Encoding.UTF8.GetBytes(root.GetProperty("plan").GetRawText()), "kept plan") is Read<Plan>.Usable(var plan)
                    ? new KeptWay(
                        plan,
                        [.. root.GetProperty("cautions").EnumerateArray().Select(c => c.GetString()!)],
                        root.TryGetProperty("arrival", out var arrival) ? Shape(arrival) : null
                    )
                    {
                        Line = root.TryGetProperty("line", out var line)
                            ? new(Points(line), root.TryGetProperty("lineKm", out var km) ? km.GetDouble() : 0)
                            : TrackLine.None,
                        Earlier = root.TryGetProperty("earlier", out var earlier) ? Plans(earlier) : [],
                    }
                    : null
        );

    private static ImmutableArray<GeoPoint> Points(JsonElement line) =>
        [.. line.EnumerateArray().Chunk(2).Select(pair => new GeoPoint(pair[0].GetDouble(), pair[1].GetDouble()))];

    private static ImmutableArray<Plan> Plans(JsonElement plans) =>
        [
            .. plans
                .EnumerateArray()
                .Select(plan => PlanReader.Read(Encoding.UTF8.GetBytes(plan.GetRawText()), "kept plan"))
                .OfType<Read<Plan>.Usable>()
                .Select(read => read.Value),
        ];

    private static void Shape(Utf8JsonWriter w, Arrival arrival)
    {
        w.WriteStartObject("arrival");
        w.WriteNumber("early", arrival.Early.ToUnixTimeSeconds());
        w.WriteNumber("middle", arrival.Middle.ToUnixTimeSeconds());
        w.WriteNumber("late", arrival.Late.ToUnixTimeSeconds());
        w.WriteString("source", arrival.Source);
        w.WriteStartArray("density");
        foreach (var (at, weight) in arrival.Density)
        {
            w.WriteNumberValue(at.ToUnixTimeSeconds());
            w.WriteNumberValue(weight);
        }

        w.WriteEndArray();
        w.WriteEndObject();
    }

    private static Arrival Shape(JsonElement json)
    {
        Instant At(string name) => Instant.FromUnixTimeSeconds(json.GetProperty(name).GetInt64());
        return new(At("early"), At("middle"), At("late"), json.Text("source"))
        {
            Names = ArrivalShape.Names,
            Density =
            [
                .. json.GetProperty("density")
                    .EnumerateArray()
                    .Chunk(2)
                    .Select(pair => (Instant.FromUnixTimeSeconds(pair[0].GetInt64()), pair[1].GetDouble())),
            ],
        };
    }
}
