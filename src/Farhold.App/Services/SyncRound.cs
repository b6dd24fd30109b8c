using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Farhold.Sync;
using NodaTime;
using Head = Farhold.Sync.Head;

namespace Farhold.App.Services;

/// <summary>A round by Farhold.Sync; named nowhere but in <see cref="Rounds"/>, since that assembly comes later than the app.</summary>
internal sealed class SyncRound : IRound
{
    /// <summary>Design: lines hashed between two breaths.</summary>
    private const int Piece = 50;

    /// <summary>Bytes of lines in one message: some ten seconds at 40 kbit/s, packed. What is left goes in the next.</summary>
    private const int MostInMessage = 256 * 1024;

    private readonly LineSet lines = new();
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private Head? hub;

    public SyncRound(string said) =>
        hub = said.Length > 0 && Head.Read(Encoding.UTF8.GetBytes(said), "kept") is Read<Head>.Usable(var head) ? head : null;

    public string Said => hub is null ? "" : Encoding.UTF8.GetString(hub.Write());

    public int Waiting => hub is null ? lines.Count : lines.LackedBy(hub).Count();

    public bool IsDone => hub is not null && hub.Have.Equals(lines.Vector);

    public async Task AddAsync(ImmutableArray<ReadOnlyMemory<byte>> all, Func<Task> breathe)
    {
        var done = 0;
        foreach (var line in all)
        {
            if (!known.Add(Convert.ToBase64String(line.Span)))
                continue;
            lines.Add(line);
            if (++done % Piece == 0)
                await breathe();
        }
    }

    public byte[] Roots()
    {
        var roots = Farhold.Sync.Roots.Of(lines.Lines);
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream))
        {
            w.WriteStartObject();
            Write(w, "lines", roots.Lines);
            Write(w, "identities", roots.Identities);
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    public byte[] Message(bool all)
    {
        using var stream = new MemoryStream();
        Outgoing.To(hub ?? (all ? Head.Empty : null), lines, MostInMessage).Write(stream);
        return stream.ToArray();
    }

    public ImmutableArray<ReadOnlyMemory<byte>> Take(ReadOnlyMemory<byte> answer)
    {
        var reader = new MessageReader(lines, "answer");
        reader.Push(answer.Span);
        if (reader.Head is { } head)
            hub = head;
        var fresh = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        foreach (var line in reader.TakeLines())
            if (lines.Add(line) == Addition.New)
            {
                known.Add(Convert.ToBase64String(line.Span));
                fresh.Add(line);
            }

        return fresh.ToImmutable();
    }

    public Instant? UpTo(string device)
    {
        if (hub is null || lines.Confirmed(device, hub.Have) is not (> 0 and var number))
            return null;
        var last = lines.Lines.FirstOrDefault(l => l.Id is { } id && id.Device == device && id.Number == number);
        return last is not null && new EntryReader().Read(last.Bytes, "line", 1) is Read<Entry>.Usable(var entry) ? entry.Recorded : null;
    }

    public KnownElsewhere Elsewhere()
    {
        if (hub is null || !KnownMissing.IsAny(lines, hub))
            return KnownElsewhere.Nothing;
        var known = KnownMissing.Here(lines, [hub]);
        return known with
        {
            Last = known.Last.RemoveRange(known.Last.Where(d => d.Value <= lines.Vector[d.Key].Length).Select(d => d.Key)),
        };
    }

    private static void Write(Utf8JsonWriter w, string name, IEnumerable<string> texts)
    {
        w.WriteStartArray(name);
        foreach (var text in texts)
            w.WriteStringValue(text);
        w.WriteEndArray();
    }
}
