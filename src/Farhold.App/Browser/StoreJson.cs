using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Browser;

/// <summary>The JSON that passes between store.js and the app.</summary>
internal static class StoreJson
{
    public static string Head(CasualtyHead head) =>
        Json.Text(w =>
        {
            w.WriteString("id", head.Id);
            w.WriteString("alias", head.Alias);
            w.WriteBoolean("practice", head.Practice);
            w.WriteString("opened", WrittenInstant.Write(head.Opened));
        });

    public static ImmutableArray<CasualtyHead> Heads(string json) =>
        Json.Each(
            json,
            e => new CasualtyHead(
                e.Text("id"),
                e.Text("alias"),
                e.GetProperty("practice").GetBoolean(),
                WrittenInstant.TryParse(e.Text("opened")) ?? default,
                e.Number("entries")
            )
        );

    /// <param name="text">Lines, each ended by a line feed, then as JSON what is aside and which lines came in before they say they were
    /// written.</param>
    public static ImmutableArray<StoredLine> Lines(string text)
    {
        var lines = text.Split('\n');
        using var rest = JsonDocument.Parse(lines[^1]);
        var asides = rest
            .RootElement.GetProperty("asides")
            .EnumerateArray()
            .Select(a => new StoredLine(
                a.Text("text"),
                a.Text("why") switch
                {
                    "conflicting" => LineState.Conflicting,
                    "claimed" => LineState.Claimed,
                    _ => LineState.Unreadable,
                }
            ));
        var early = rest
            .RootElement.GetProperty("early")
            .EnumerateArray()
            .DistinctBy(e => e.Text("id"))
            .ToDictionary(e => e.Text("id"), e => WrittenInstant.TryParse(e.Text("at")));
        return [.. lines[..^1].Select(l => new StoredLine(l, LineState.Kept, early.Count == 0 ? null : Received(l, early))), .. asides];
    }

    public static ImmutableArray<TakenBatch> Batches(string json) =>
        Json.Each(
            json,
            b => new TakenBatch(b.Text("id"), WrittenInstant.TryParse(b.Text("at")) ?? default, b.Text("source"), b.Number("count"))
        );

    private static NodaTime.Instant? Received(string line, Dictionary<string, NodaTime.Instant?> early) =>
        IncomingFile.IdOf(line) is { } id ? early.GetValueOrDefault(id.ToString()) : null;

    public static Appended Appended(string casualty, string body, CasualtyHead? opens, string json)
    {
        using var document = JsonDocument.Parse(json);
        var answer = document.RootElement;
        return answer.GetProperty("ok").GetBoolean()
            ? new Appended.Stored(answer.Text("line"), answer.Number("number"))
            : new Appended.NotStored(
                answer.Text("key"),
                casualty,
                body,
                answer.Text("reason"),
                answer.GetProperty("rescued").GetBoolean(),
                opens
            );
    }

    public static ImmutableArray<Appended.NotStored> StillNotStored(string json) =>
        Json.Each(json, e => new Appended.NotStored(e.Text("key"), e.Text("casualty"), e.Text("body"), e.Text("reason"), true));

    public static string Incoming(ImmutableArray<IncomingLine> lines) =>
        Json.List(
            lines,
            (w, line) =>
            {
                if (line.Id is { } id)
                {
                    w.WriteString("device", id.Device);
                    w.WriteNumber("number", id.Number);
                }
                w.WriteBase64String("base64", line.Bytes.Span);
            }
        );

    public static MergeCount Merged(string json)
    {
        using var document = JsonDocument.Parse(json);
        var e = document.RootElement;
        return new MergeCount(
            e.Number("added"),
            e.Number("same"),
            e.Number("conflicting"),
            e.Number("unreadable") + e.Number("claimed"),
            e.Text("batch")
        );
    }

    public static StorageHealth Health(string json)
    {
        using var document = JsonDocument.Parse(json);
        var e = document.RootElement;
        return new StorageHealth(
            e.GetProperty("persisted").GetBoolean(),
            (long)e.GetProperty("usage").GetDouble(),
            (long)e.GetProperty("quota").GetDouble(),
            [
                .. e.GetProperty("shorter")
                    .EnumerateArray()
                    .Select(s => new ShorterRecord(s.Text("casualty"), s.Number("expected"), s.Number("found"))),
            ],
            e.Number("broughtBack")
        );
    }
}
