using System.Text;
using System.Text.Json;

namespace Farhold.Cli;

internal enum Content
{
    Record,
    Protocol,
    Local,
    Trip,
    Kit,
    Formulary,
    WarningSigns,
    Plan,
    Route,
    Track,
    Document,
    Issuer,
    Rotation,
    Signature,
    Scenario,
    Acts,
    Truth,
    Run,
    Study,
}

/// <summary>Tells what a file is meant to be, even where it is broken further down.</summary>
internal static class Contents
{
    /// <summary>By the names of the first object's members, as far as they can be read.</summary>
    public static Content Of(ReadOnlySpan<byte> utf8)
    {
        if (utf8.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        if (OfText(utf8.TrimStart(" \t\r\n"u8)) is { } text)
            return text;
        var reader = new Utf8JsonReader(utf8);
        var otherwise = Content.Record;
        try
        {
            while (reader.Read())
            {
                if (reader.CurrentDepth == 0 && reader.TokenType == JsonTokenType.EndObject)
                    break;
                if (reader.CurrentDepth != 1 || reader.TokenType != JsonTokenType.PropertyName)
                    continue;
                if (reader.ValueTextEquals("run"u8))
                    return Content.Run;
                if (reader.ValueTextEquals("scenario"u8))
                    return Content.Scenario;
                if (reader.ValueTextEquals("truth"u8))
                    return Content.Truth;
                if (OfActs(ref reader))
                    return Content.Acts;
                if (reader.ValueTextEquals("kind"u8) || reader.ValueTextEquals("happened"u8))
                    return Content.Record;
                if (reader.ValueTextEquals("study"u8) || reader.ValueTextEquals("cohorts"u8))
                    return Content.Study;
                if (reader.ValueTextEquals("local"u8) || reader.ValueTextEquals("over"u8))
                    return Content.Local;
                if (reader.ValueTextEquals("kit"u8) || reader.ValueTextEquals("items"u8))
                    return Content.Kit;
                if (reader.ValueTextEquals("formulary"u8) || reader.ValueTextEquals("drugs"u8))
                    return Content.Formulary;
                if (reader.ValueTextEquals("warningSigns"u8) || reader.ValueTextEquals("rules"u8))
                    return Content.WarningSigns;
                if (reader.ValueTextEquals("resourceType"u8))
                    return Content.Document;
                if (reader.ValueTextEquals("legs"u8))
                    return Content.Plan;
                if (OfARoute(ref reader))
                    return Content.Route;
                if (OfATrip(ref reader))
                    return Content.Trip;
                if (reader.ValueTextEquals("route"u8))
                    otherwise = Content.Trip; // an entry of a drug names one too, but also its kind
                if (reader.ValueTextEquals("protocol"u8) || reader.ValueTextEquals("criteria"u8))
                    return Content.Protocol;
            }
        }
        catch (JsonException)
        {
            // What could be read so far says nothing: taken as a record, whose reader names line and column.
            return Content.Record;
        }

        return otherwise;
    }

    /// <summary>Of what is no JSON.</summary>
    private static Content? OfText(ReadOnlySpan<byte> utf8) =>
        utf8.StartsWith("<"u8) ? Content.Track
        : LocalSignature.IsOne(utf8) ? Content.Signature
        : utf8.StartsWith(Encoding.UTF8.GetBytes(KeyRotation.First)) ? Content.Rotation
        : utf8.StartsWith(Encoding.UTF8.GetBytes(IssuerCode.First)) ? Content.Issuer
        : null;

    private static bool OfARoute(ref Utf8JsonReader name) =>
        name.ValueTextEquals("track"u8) || name.ValueTextEquals("spacingM"u8) || name.ValueTextEquals("exits"u8);

    private static bool OfActs(ref Utf8JsonReader name) =>
        name.ValueTextEquals("act"u8) || name.ValueTextEquals("look"u8) || name.ValueTextEquals("entry"u8);

    private static bool OfATrip(ref Utf8JsonReader name) =>
        name.ValueTextEquals("party"u8)
        || name.ValueTextEquals("packed"u8)
        || name.ValueTextEquals("hours"u8)
        || name.ValueTextEquals("days"u8)
        || name.ValueTextEquals("alarm"u8)
        || name.ValueTextEquals("contacts"u8);
}
