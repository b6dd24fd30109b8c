using System.Collections.Immutable;
using System.Text;

namespace Farhold.WayOut.Plans;

/// <summary>Gathers what is wrong with a file, by byte, and tells it by line and column.</summary>
internal sealed class Complaints(string file, ReadOnlyMemory<byte> utf8)
{
    private readonly List<(int At, string Reason)> all = [];

    public bool Any => all.Count > 0;

    public void Add(int at, string reason) => all.Add((at, reason));

    /// <summary>A reason as this part writes them: with a capital and a full stop.</summary>
    public static string Sentence(string reason) => char.ToUpperInvariant(reason[0]) + reason[1..] + (reason.EndsWith('.') ? "" : ".");

    public ImmutableArray<Refusal> InOrder() => [.. all.OrderBy(c => c.At).Select(c => Placed(c.At, c.Reason))];

    private Refusal Placed(int at, string reason)
    {
        var before = utf8.Span[..at];
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        var line = before.Count((byte)'\n') + 1;
        var text = Encoding.UTF8.GetString(before[lineStart..]).TrimStart('\uFEFF');
        return new(file, line, text.EnumerateRunes().Count() + 1, reason);
    }
}
