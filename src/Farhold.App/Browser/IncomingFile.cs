using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Farhold.App.Browser;

/// <summary>A record file from outside, split into lines with their ids; every byte that is not a line end is kept.</summary>
/// <param name="Alias">From the line that opens the casualty; empty if there is none.</param>
/// <param name="Practice">At least one line is marked as practice.</param>
public sealed record IncomingFile(ImmutableArray<IncomingLine> Lines, string Alias, bool Practice)
{
    /// <summary>Design: lines read between two breaths.</summary>
    internal const int Piece = 100;

    public static IncomingFile Split(ReadOnlyMemory<byte> file)
    {
        var splitting = SplitAsync(file, () => Task.CompletedTask);
        return splitting.IsCompleted ? splitting.Result : throw new System.Diagnostics.UnreachableException();
    }

    /// <summary>The same in pieces.</summary>
    /// <param name="breathe">Lets touches through in between.</param>
    public static async Task<IncomingFile> SplitAsync(ReadOnlyMemory<byte> file, Func<Task> breathe)
    {
        if (file.Span.StartsWith("\uFEFF"u8))
            file = file[3..];
        var lines = ImmutableArray.CreateBuilder<IncomingLine>();
        string alias = "";
        var practice = false;
        while (!file.IsEmpty)
        {
            var end = file.Span.IndexOf((byte)'\n');
            var line = end < 0 ? file : file[..end];
            file = end < 0 ? default : file[(end + 1)..];
            if (line.Span.EndsWith("\r"u8))
                line = line[..^1];
            if (line.Span.IndexOfAnyExcept(" \t"u8) < 0)
                continue;
            var (id, opens, drill) = Look(line);
            lines.Add(new IncomingLine(id, line));
            if (lines.Count % Piece == 0)
                await breathe();
            alias = opens ?? alias;
            practice |= drill;
        }
        return new IncomingFile(lines.ToImmutable(), alias, practice);
    }

    /// <summary>The id of one line; null where it has none that can be used.</summary>
    public static EntryId? IdOf(string line) => Look(System.Text.Encoding.UTF8.GetBytes(line)).Id;

    /// <summary>Whether any line of this file already stands, letter for letter, in a record.</summary>
    public bool Shares(ImmutableArray<StoredLine> record)
    {
        var known = record.Select(l => l.Text).ToHashSet(StringComparer.Ordinal);
        return Lines.Any(l => l.Id is not null && known.Contains(System.Text.Encoding.UTF8.GetString(l.Bytes.Span)));
    }

    /// <summary>A name for a record's file that sorts by date and says if it is practice.</summary>
    public static string NameFor(CasualtyHead head, Instant at)
    {
        var safe = string.Concat(head.Alias.Where(c => char.IsLetterOrDigit(c) || c == '-'));
        var day = InstantPattern.CreateWithInvariantCulture("uuuuMMdd-HHmm").Format(at);
        return string.Create(CultureInfo.InvariantCulture, $"{(head.Practice ? "PRACTICE-" : "")}farhold-{safe}-{day}Z.jsonl");
    }

    private static (EntryId? Id, string? Opens, bool Practice) Look(ReadOnlyMemory<byte> line)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            if (json.RootElement.ValueKind != JsonValueKind.Object)
                return default;
            var id = EntryId.TryParse(Field(json.RootElement, "id"));
            var opens = Field(json.RootElement, "kind") == "casualty.opened" ? Field(json.RootElement, "alias") : null;
            var practice = json.RootElement.TryGetProperty("practice", out var p) && p.ValueKind == JsonValueKind.True;
            return (id, opens, practice);
        }
        catch (Exception none) when (none is JsonException or InvalidOperationException) // the second: half of a surrogate pair
        {
            return default;
        }
    }

    private static string? Field(JsonElement e, string name) =>
        e.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
