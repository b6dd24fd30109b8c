using System.Collections.Immutable;

namespace Farhold.Rehearsal.Runs;

/// <summary>Files of one JSON object a line, read wholly or not at all.</summary>
internal static class LineFile
{
    private const int MaxLine = 1024 * 1024;
    private const int MaxRefusals = 100;

    /// <summary>A week of truth with a key frame a minute has about 20,000 lines.</summary>
    private const int MaxLines = 1_000_000;

    /// <param name="read">Turns one line into a value, or refuses it at its place.</param>
    public static Read<T> Read<T, TLine>(
        ReadOnlyMemory<byte> utf8,
        string file,
        string what,
        Func<LocatedObject, ReadOnlyMemory<byte>, TLine?> read,
        Func<ImmutableArray<(int Number, TLine Line)>, Action<int, string>, T?> whole
    )
        where T : class
        where TLine : class
    {
        var refusals = new List<Refusal>();
        var lines = ImmutableArray.CreateBuilder<(int, TLine)>();
        if (utf8.Span.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        for (var number = 1; !utf8.IsEmpty && refusals.Count < MaxRefusals; number++)
        {
            var end = utf8.Span.IndexOf((byte)'\n');
            var line = (end < 0 ? utf8 : utf8[..end]).TrimEnd("\r"u8);
            utf8 = end < 0 ? default : utf8[(end + 1)..];
            if (line.Span.IndexOfAnyExcept(" \t"u8) < 0)
                continue;
            if (number > MaxLines)
            {
                refusals.Add(new(file, number, 1, $"more than {MaxLines} lines: this is no {what}"));
                break;
            }

            if (One(line, file, number, what, read, refusals) is { } value)
                lines.Add((number, value));
        }

        if (lines.Count == 0 && refusals.Count == 0)
            refusals.Add(new(file, 1, 1, $"there is no line in the file: this is no {what}"));
        var all = refusals.Count > 0 ? null : whole(lines.ToImmutable(), (number, why) => refusals.Add(new(file, number, 1, why)));
        return all is not null && refusals.Count == 0
            ? new Read<T>.Usable(all)
            : new Read<T>.Refused([.. refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)]);
    }

    private static TLine? One<TLine>(
        ReadOnlyMemory<byte> line,
        string file,
        int number,
        string what,
        Func<LocatedObject, ReadOnlyMemory<byte>, TLine?> read,
        List<Refusal> refusals
    )
        where TLine : class
    {
        var json = new LocatedJson(line, file, MaxLine);
        var value = json.Parse() is { } root && json.IsObject(root, $"a line of {what}") ? read(new(json, root, what), line) : null;
        if (value is null && json.Refusals.Count == 0)
            json.Refuse(0, $"this is no line of {what}");
        refusals.AddRange(json.Refusals.Select(r => r with { Line = number }));
        return json.Refusals.Count == 0 ? value : null;
    }
}
