using System.Collections.Frozen;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Farhold.App.Words;

/// <summary>Every text on the screens, by key; the key is the name of the property or method that asks for it.</summary>
/// <remarks>A language is one file <c>Texts.xx.json</c>; what it lacks is shown in English (and fails a test).</remarks>
public sealed partial class Texts
{
    private readonly FrozenDictionary<string, string> words;

    private Texts(string language, FrozenDictionary<string, string> words) => (Language, this.words) = (language, words);

    public string Language { get; }

    public static IEnumerable<string> Languages =>
        from name in typeof(Texts).Assembly.GetManifestResourceNames()
        where name.StartsWith("Texts.", StringComparison.Ordinal)
        select name.Split('.')[1];

    /// <param name="tag">A language tag as the browser gives it, such as <c>en-NZ</c>.</param>
    public static Texts In(string tag)
    {
        var wanted = tag.Split('-')[0];
        var language = Languages.Contains(wanted, StringComparer.OrdinalIgnoreCase) ? wanted : "en";
        var words = Load("en");
        foreach (var (key, text) in Load(language))
            words[key] = text;
        return new Texts(language, words.ToFrozenDictionary());
    }

    public static Dictionary<string, string> Load(string language)
    {
        using var file = typeof(Texts).Assembly.GetManifestResourceStream($"Texts.{language}.json")
            ?? throw new ArgumentException($"There is no file of texts for '{language}'.", nameof(language));
        using var json = JsonDocument.Parse(file);
        return json.RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString()!);
    }

    private string Get([CallerMemberName] string key = "") => words[key];

    private string Fill(object first, object? second = null, object? third = null, [CallerMemberName] string key = "") =>
        string.Format(CultureInfo.InvariantCulture, words[key], first, second, third);
}
