using System.Text.Json;

namespace Farhold.App.First;

/// <summary>Keeps the last picture of each casualty where index.html finds it.</summary>
public sealed class Glance(IPhone phone, Texts texts)
{
    private const string Key = "glance";
    private const int Version = 1;

    /// <summary>Call with every new picture; it takes the place of the casualty's last one.</summary>
    public void Save(GlancePicture picture) => Write(picture.Casualty, w => Write(w, picture));

    /// <summary>Care has ended: the casualty is no longer shown at start.</summary>
    public void Forget(string casualty) => Write(casualty, null);

    private void Write(string casualty, Action<Utf8JsonWriter>? fields) =>
        phone.Set(
            Key,
            Json.Text(w =>
            {
                w.WriteNumber("v", Version);
                w.WriteStartObject("words");
                w.WriteString("asOf", texts.GlanceAsOf);
                w.WriteString("since", texts.GlanceSince);
                w.WriteString("limit", texts.GlanceLimit);
                w.WriteString("passed", texts.GlancePassed);
                w.WriteString("practice", texts.Practice);
                w.WriteEndObject();
                w.WriteStartArray("casualties");
                WriteOthers(w, casualty);
                if (fields is not null)
                {
                    w.WriteStartObject();
                    fields(w);
                    w.WriteEndObject();
                }
                w.WriteEndArray();
            })
        );

    private void WriteOthers(Utf8JsonWriter w, string casualty)
    {
        if (phone.Get(Key) is not { Length: > 0 } old)
            return;
        using var json = JsonDocument.Parse(old);
        if (json.RootElement.Number("v") != Version)
            return;
        foreach (var other in json.RootElement.GetProperty("casualties").EnumerateArray())
            if (other.Text("id") != casualty)
                other.WriteTo(w);
    }

    private static void Write(Utf8JsonWriter w, GlancePicture picture)
    {
        w.WriteString("id", picture.Casualty);
        w.WriteString("alias", picture.Alias);
        w.WriteBoolean("practice", picture.Practice);
        w.WriteNumber("at", picture.At.ToUnixTimeMilliseconds());
        w.WriteStartArray("limbs");
        foreach (var limb in picture.Limbs)
        {
            w.WriteStartObject();
            w.WriteString("limb", limb.Limb);
            w.WriteString("limbText", limb.LimbText);
            w.WriteString("verdict", limb.Verdict);
            w.WriteString("verdictText", limb.VerdictText);
            w.WriteNumber("tightenedEarliest", limb.FirstTightened.Earliest.ToUnixTimeMilliseconds());
            w.WriteNumber("tightenedLatest", limb.FirstTightened.Latest.ToUnixTimeMilliseconds());
            if (limb.Limit is { } limit)
                w.WriteNumber("limit", limit.ToUnixTimeMilliseconds());
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("cautions");
        foreach (var caution in picture.Cautions)
            w.WriteStringValue(caution);
        w.WriteEndArray();
    }
}
