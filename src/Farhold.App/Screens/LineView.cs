using System.Text.Json;
using Farhold.App.Store;
using NodaTime;

namespace Farhold.App.Screens;

/// <summary>What the log shows of a line, as far as it can be read.</summary>
/// <param name="Id">Empty if the line has none.</param>
/// <param name="Said">The rest of the line: its own fields, as written.</param>
/// <param name="Withdraws">Id of the entry it withdraws; null if it withdraws none.</param>
public sealed record LineView(string Id, Happened? Happened, string By, string Kind, string Said, string? Withdraws)
{
    private static readonly string[] Common = ["id", "happened", "recorded", "by", "kind", "practice", "previous"];

    public static LineView Of(StoredLine line) =>
        line.State == LineState.Unreadable ? new LineView("", null, "", "", line.Text, null) : Of(line.Text);

    public static LineView Of(string line)
    {
        using var json = JsonDocument.Parse(line);
        var e = json.RootElement;
        var said = e.EnumerateObject().Where(p => !Common.Contains(p.Name)).Select(p => $"{p.Name}: {p.Value}");
        var kind = Text(e, "kind");
        return new LineView(
            Text(e, "id"),
            e.TryGetProperty("happened", out var at) ? Read(at) : null,
            Text(e, "by"),
            kind,
            string.Join(", ", said),
            kind == "entry.withdrawn" ? Text(e, "target") : null);
    }

    private static Happened? Read(JsonElement at) => at.ValueKind switch
    {
        JsonValueKind.String => Iso(at.GetString()) is { } instant ? Farhold.Values.Happened.At(instant) : null,
        JsonValueKind.Object => Iso(Text(at, "earliest")) is { } from && Iso(Text(at, "latest")) is { } to && from <= to
            ? new Happened(from, to)
            : null,
        _ => null,
    };

    private static Instant? Iso(string? text) =>
        text is null ? null : WrittenInstant.TryParse(text);

    private static string Text(JsonElement e, string name) =>
        e.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
}
