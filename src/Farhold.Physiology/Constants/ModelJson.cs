using System.Text.Json;
using System.Text.Json.Serialization;

namespace Farhold.Physiology.Constants;

/// <summary>Reads a model's file without reflection, so that it can be trimmed.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false,
    Converters = [typeof(SourcedNumber)]
)]
[JsonSerializable(typeof(ModelConstants))]
internal sealed partial class ModelJson : JsonSerializerContext;

/// <summary>A constant with where it comes from: <c>[value, unit, standing, source]</c>. Points of a curve are plain numbers.</summary>
internal sealed class SourcedNumber : JsonConverter<double>
{
    /// <summary>How a constant is known: read in a publication, recalled, fitted to targets, or set by judgement.</summary>
    private static readonly string[] Standings = ["read", "memory", "fitted", "judgement"];

    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number)
            return reader.CurrentDepth == 3 ? reader.GetDouble() : throw new JsonException("A constant names unit, standing and source.");
        if (reader.TokenType != JsonTokenType.StartArray || !reader.Read() || reader.TokenType != JsonTokenType.Number)
            throw new JsonException("A constant is [value, unit, standing, source].");
        var value = reader.GetDouble();
        _ = Text(ref reader);
        if (!Standings.Contains(Text(ref reader)))
            throw new JsonException($"A standing is one of {string.Join(", ", Standings)}.");
        _ = Text(ref reader);
        if (!reader.Read() || reader.TokenType != JsonTokenType.EndArray)
            throw new JsonException("A constant is [value, unit, standing, source].");
        return value;
    }

    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options) =>
        throw new NotSupportedException("Models are read only.");

    private static string Text(ref Utf8JsonReader reader) =>
        reader.Read() && reader.TokenType == JsonTokenType.String && reader.GetString() is { Length: > 0 } text
            ? text
            : throw new JsonException("A constant names unit, standing and source.");
}
