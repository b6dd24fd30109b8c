using System.Collections.Immutable;
using System.Text;

namespace Farhold.Sync.Tests;

/// <summary>A phone or the hub in a history: what it holds, and what the hub last said.</summary>
internal sealed class Side(string device)
{
    public LineSet Lines { get; set; } = new();

    public Head? Hint { get; set; }

    public string Device { get; set; } = device;

    private int number;

    /// <summary>Goes on writing with a copy of another phone's state, as restored from a backup of it.</summary>
    public void CopyOf(Side other)
    {
        foreach (var line in other.Lines.Lines)
            Lines.Add(line.Bytes);
        (Device, number, last) = (other.Device, other.number, other.last);
    }

    private string? last;

    /// <summary>One more entry, chained as the app does it.</summary>
    public void Write(string text)
    {
        var link = last is null ? "" : $"\"previous\":\"{LineHash.Of(Encoding.UTF8.GetBytes(last))}\",";
        last = $$"""{"id":"{{Device}}-{{++number}}",{{link}}"kind":"note","text":"{{text}}"}""";
        Lines.Add(Encoding.UTF8.GetBytes(last));
    }

    public ImmutableArray<ulong> Held => [.. Lines.Lines.Select(l => l.Hash.Short)];
}
