using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Farhold.App.Words;

/// <summary>Every text on the screens, by key; the key is the name of the property or method that asks for it.</summary>
/// <remarks>A language is one file <c>Texts.xx.json</c>; what it lacks is shown in English (and fails a test).</remarks>
public sealed partial class Texts
{
    private readonly Dictionary<string, string> words;

    private Texts(string language, Dictionary<string, string> words) => (Language, this.words) = (language, words);

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
        if (language != "en")
            foreach (var (key, text) in Load(language))
                words[key] = text;
        return new Texts(language, words);
    }

    public static Dictionary<string, string> Load(string language)
    {
        using var file = typeof(Texts).Assembly.GetManifestResourceStream($"Texts.{language}.json")
            ?? throw new ArgumentException($"There is no file of texts for '{language}'.", nameof(language));
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        var json = new Utf8JsonReader(bytes);
        var words = new Dictionary<string, string>(1000);
        while (json.Read())
            if (json.TokenType == JsonTokenType.PropertyName)
            {
                var key = json.GetString()!;
                json.Read();
                words.Add(key, json.GetString()!);
            }

        return words;
    }

    private string Get([CallerMemberName] string key = "") => words[key];

    private string Fill(object first, object? second = null, object? third = null, [CallerMemberName] string key = "") =>
        string.Format(CultureInfo.InvariantCulture, words[key], Shown(first), Shown(second), Shown(third));

    /// <summary>A text of two forms with a bar between them: for one, and for any other number.</summary>
    private string Counted(int count, object first, object? second = null, object? third = null, [CallerMemberName] string key = "")
    {
        var forms = words[key].Split('|');
        return string.Format(CultureInfo.InvariantCulture, forms[count == 1 ? 0 : ^1], Shown(first), Shown(second), Shown(third));
    }

    /// <summary>What is filled in may come from a record or a file: nothing of it turns the writing or controls anything.</summary>
    private static object? Shown(object? value) => value is string text ? Plain.Line(text) : value;
}
