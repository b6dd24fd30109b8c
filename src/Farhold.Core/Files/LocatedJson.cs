using System.Text;
using System.Text.Json;

namespace Farhold.Files;

/// <summary>Parses a hand-written JSON file, keeping places. Comments and trailing commas are refused, as in the standard.</summary>
/// <param name="maxFile">Largest file, in bytes.</param>
/// <param name="maxDepth">Deeper nesting is refused.</param>
public sealed class LocatedJson(
    ReadOnlyMemory<byte> utf8,
    string file,
    int maxFile = LocatedJson.MaxFile,
    int maxDepth = LocatedJson.MaxDepth
)
{
    public const int MaxFile = 4 * 1024 * 1024;
    public const int MaxDepth = 32;
    private const int MaxRefusals = 100;

    private readonly List<Refusal> refusals = [];

    public IReadOnlyList<Refusal> Refusals => refusals;

    /// <summary>The whole value, or null with at least one refusal.</summary>
    public Located? Parse()
    {
        if (utf8.Length == 0 || utf8.Length > maxFile)
            return Fail(0, utf8.Length == 0 ? "the file is empty" : $"the file is larger than {maxFile / (1024 * 1024)} MiB");
        var (value, at, reason) = LocatedText.Parse(utf8.Span, maxDepth);
        if (value is null)
            return Fail(at, reason!);
        RefuseTwice(value);
        return refusals.Count == 0 ? value : null;
    }

    /// <summary>Adds a refusal at a place; past the hundredth there is nothing new to learn.</summary>
    public void Refuse(int offset, string reason)
    {
        if (refusals.Count == MaxRefusals)
            return;
        var before = utf8.Span[..Math.Min(offset, utf8.Length)];
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        if (lineStart == 0 && before.StartsWith("\uFEFF"u8))
            lineStart = 3;
        refusals.Add(new(file, before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1, reason));
    }

    private void RefuseTwice(Located value)
    {
        var names = new HashSet<string>();
        foreach (var member in value.Members)
        {
            if (!names.Add(member.Name))
                Refuse(member.Offset, $"{member.Name} is given twice");
            RefuseTwice(member.Value);
        }

        foreach (var item in value.Items)
            RefuseTwice(item);
    }

    private Located? Fail(int offset, string reason)
    {
        Refuse(offset, reason);
        return null;
    }
}
