using System.Text.Json;
using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;

namespace Farhold.Tests.Text;

/// <summary>The files of texts of the parts that work without a screen: <c>VerdictTexts.en.json</c> and those beside it.</summary>
internal static partial class TextFiles
{
    public static string[] Parts { get; } =
    ["Farhold.Core", "Farhold.Exchange", "Farhold.WayOut", "Farhold.Documents", "Farhold.Rehearsal"];

    /// <summary>Full paths, by class and language.</summary>
    public static IEnumerable<(string Class, string Language, string Path)> All { get; } =
    [
        .. Parts
            .SelectMany(p => Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", p), "*.json", SearchOption.AllDirectories))
            .Select(path => (Parts: Path.GetFileName(path).Split('.'), path))
            .Where(f => f.Parts is [var name, _, "json"] && (name.EndsWith("Texts", StringComparison.Ordinal) || name == Translation.Words))
            .Select(f => (f.Parts[0], f.Parts[1], f.path))
            .Order(),
    ];

    /// <summary>A sign that stands in no text.</summary>
    public const char Mark = '›';

    /// <summary>The mark behind the first letter of each form, where it stands in no one's way.</summary>
    public static string Marked(string text) =>
        string.Join('|', text.Split('|').Select(form => FirstLetter().Replace(NamesOfThings().Replace(form, "{$1}"), $"$0{Mark}", 1)));

    public static Dictionary<string, string> Read(string path) =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(path))!;

    /// <summary>All files of a language as the one that <see cref="Translation.Add"/> takes.</summary>
    public static byte[] Together(string language, Func<string, string> each) =>
        JsonSerializer.SerializeToUtf8Bytes(
            All.Where(f => f.Language == language)
                .ToDictionary(f => f.Class, f => Read(f.Path).ToDictionary(t => t.Key, t => each(t.Value)))
        );

    [GeneratedRegex(@"\{([0-9]):[^}]*\}")]
    private static partial Regex NamesOfThings();

    [GeneratedRegex(@"\p{L}")]
    private static partial Regex FirstLetter();
}
