using System.Collections.Immutable;
using System.Text;

namespace Farhold.Signatures;

/// <summary>A short text of a first line that says what it is, and <c>name: value</c> lines in a fixed order.</summary>
/// <remarks>There is one way to write it, so that what is signed can be written anew from what was read.</remarks>
internal static class HeadLines
{
    public const int MaxBytes = 4096;

    public static byte[] Write(string first, params IEnumerable<(string Name, string Value)> lines)
    {
        var text = new StringBuilder(first).Append('\n');
        foreach (var (name, value) in lines)
            text.Append(name).Append(": ").Append(value).Append('\n');
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>The values in their order, or why not. White space around lines is lost, as pasting does it.</summary>
    public static (ImmutableArray<string> Values, Refusal? Refusal) Read(
        ReadOnlySpan<byte> utf8,
        string file,
        string first,
        params ReadOnlySpan<string> names
    )
    {
        if (utf8.Length > MaxBytes)
            return Refuse(1, "it is too long");
        if (!System.Text.Unicode.Utf8.IsValid(utf8))
            return Refuse(1, "it is not UTF-8");
        var lines = Encoding.UTF8.GetString(utf8).Trim('\uFEFF', ' ', '\r', '\n', '\t').Split('\n');
        if (lines[0].Trim(' ', '\r', '\t') != first)
            return Refuse(1, $"it has to begin with the line \"{first}\"");
        if (lines.Length != names.Length + 1)
            return Refuse(lines.Length, $"it has to have {names.Length + 1} lines: the first, then {string.Join(", ", names.ToArray())}");
        var values = ImmutableArray.CreateBuilder<string>(names.Length);
        for (var i = 0; i < names.Length; i++)
        {
            var line = lines[i + 1].Trim(' ', '\r', '\t');
            if (!line.StartsWith(names[i] + ": ", StringComparison.Ordinal))
                return Refuse(i + 2, $"this line has to be \"{names[i]}: …\"");
            values.Add(line[(names[i].Length + 2)..]);
        }

        return (values.ToImmutable(), null);

        (ImmutableArray<string>, Refusal?) Refuse(int line, string reason) => ([], new(file, line, 1, reason));
    }
}
