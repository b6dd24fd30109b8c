using System.Text.Encodings.Web;
using System.Text.Json;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>An outlook on supplies as JSON; what is not known is null.</summary>
public static class SupplyJson
{
    public static byte[] Write(SupplyOutlook outlook)
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            w.WriteStartObject();
            w.WriteString("at", WrittenInstant.Write(outlook.At));
            w.WriteNumber("people", outlook.Around.People);
            w.WriteBoolean("helpKnown", outlook.HelpKnown);
            w.WriteStartArray("items");
            foreach (var item in outlook.Items)
                Item(w, item);
            w.WriteEndArray();
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Item(Utf8JsonWriter w, ItemOutlook item)
    {
        w.WriteStartObject();
        w.WriteString("item", item.Item.Id);
        w.WriteString("unit", item.Item.Unit);
        Range(w, "left", item.Stock.Left);
        Range(w, "usedPerHour", item.Rate.Past);
        Range(w, "plannedPerHour", item.Rate.Planned);
        if (item.RunsOut is not { } out_)
            w.WriteNull("runsOut");
        else
        {
            w.WriteStartObject("runsOut");
            Time(w, "earliest", out_.Earliest);
            Time(w, "latest", out_.Latest);
            w.WriteEndObject();
        }

        Range(w, "helpLater", item.HelpLater);
        w.WriteString(
            "short",
            item.Short switch
            {
                Truth.Met => "met",
                Truth.NotMet => "not-met",
                _ => "unknown",
            }
        );
        w.WriteStartArray("instead");
        foreach (var instead in item.Instead)
            w.WriteStringValue(instead);
        w.WriteEndArray();
        w.WriteEndObject();
    }

    private static void Time(Utf8JsonWriter w, string name, Instant? at)
    {
        if (at is { } known)
            w.WriteString(name, WrittenInstant.Write(known));
        else
            w.WriteNull(name);
    }

    private static void Range(Utf8JsonWriter w, string name, Between? range)
    {
        if (range is not { } known)
        {
            w.WriteNull(name);
            return;
        }

        w.WriteStartObject(name);
        w.WriteNumber("low", Math.Round(known.Low, 4));
        if (double.IsFinite(known.High))
            w.WriteNumber("high", Math.Round(known.High, 4));
        else
            w.WriteNull("high");
        w.WriteEndObject();
    }
}
