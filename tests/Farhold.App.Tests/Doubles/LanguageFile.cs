using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;

namespace Farhold.App.Tests.Doubles;

/// <summary>The files of texts as they lie in the repository, and as wwwroot/phone.js gives them to the app.</summary>
internal static partial class LanguageFile
{
    private static readonly string Folder = Path.Combine(Repository.Root, "src", "Farhold.App", "Words");

    /// <summary>In the order of the file.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Read(string language)
    {
        using var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, $"Texts.{language}.json")));
        return [.. json.RootElement.EnumerateObject().Select(p => KeyValuePair.Create(p.Name, p.Value.GetString()!))];
    }

    /// <summary>Null for a language that there is no file of.</summary>
    public static FetchedTexts? Fetched(string language) =>
        File.Exists(Path.Combine(Folder, $"Texts.{language}.json")) ? Of(Read(language)) : null;

    public static FetchedTexts Of(IReadOnlyList<KeyValuePair<string, string>> texts) =>
        new(Mark(texts.Select(t => t.Key)), [.. texts.Select(t => Named().Replace(t.Value, "{$1}"))]);

    public static Texts Texts(string language)
    {
        var texts = Farhold.App.Words.Texts.In("en");
        if (language != "en")
            Assert.True(texts.Take(language, Fetched(language)!.Lines));
        return texts;
    }

    private static string Mark(IEnumerable<string> keys)
    {
        var hash = 2166136261u;
        foreach (var c in string.Concat(keys.Select(k => k + "\n")))
            hash = unchecked((hash ^ c) * 16777619u);
        return hash.ToString("x8", System.Globalization.CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"\{(\d):[^}]*\}")]
    private static partial Regex Named();
}
