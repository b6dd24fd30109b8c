using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Farhold.Hub.Tests.Harness;

/// <summary>
/// Languages that nobody speaks, made from the English texts where tests are run, and no part of what is published. What stays in plain
/// English letters on a screen is no text of the app's.
/// </summary>
internal static partial class PseudoLanguage
{
    /// <summary>
    /// Longer: doubled up to ten characters, 40 % more above, in accented letters. (Short words grow by 100 to 200 % in other languages,
    /// long lines by 30 to 40: IBM, read.)
    /// </summary>
    public const string Long = "qps-long";

    /// <summary>Runs from right to left, in letters that do.</summary>
    public const string RightToLeft = "qps-rtl";

    private const string Plain = "abcdefghijklmnopqrstuvwxyz";
    private const string Accented = "áƀçđéƒǧĥíĵķĺɱñóƥɋŕšťúṽŵẋýž";
    private const string Hebrew = "אבגדהוזחטיכלמנסעפצקרשתםןףץ";

    /// <summary>Read by machines, not by people.</summary>
    private static readonly string[] Data = ["Direction", "DecimalMark", "Months", "DayOfMonth", "DayOfYear"];

    /// <summary>Puts the language's file beside those of a copy of the published app.</summary>
    public static void Write(string folder, string language)
    {
        using var english = JsonDocument.Parse(
            File.ReadAllBytes(Path.Combine(Published.Root, "src", "Farhold.App", "Words", "Texts.en.json"))
        );
        using var file = File.Create(Path.Combine(folder, $"texts.{language}.json"));
        using var json = new Utf8JsonWriter(file, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        json.WriteStartObject();
        foreach (var text in english.RootElement.EnumerateObject())
            json.WriteString(text.Name, Of(text.Name, text.Value.GetString()!, language));
        json.WriteEndObject();
    }

    public static string Of(string key, string english, string language) =>
        key == "Direction" ? (language == RightToLeft ? "rtl" : "ltr")
        : Data.Contains(key) ? english
        : string.Join('|', english.Split('|').Select(f => language == Long ? Longer(f) : Spelled(f, Hebrew)));

    private static string Longer(string form)
    {
        // What is filled in does not grow with the language.
        var own = Filled().Replace(form, "").Length;
        var more = own < 10 ? own : (int)Math.Ceiling(own * 0.4);
        var padding = new StringBuilder();
        var letters = Spelled(Filled().Replace(form, ""), Accented).Trim();
        while (letters.Length > 0 && padding.Length < more)
            padding.Append(' ').Append(letters);
        return Spelled(form, Accented) + (padding.Length > more ? padding.ToString(0, Math.Max(more, 2)) : padding.ToString());
    }

    private static string Spelled(string form, string letters)
    {
        var (text, at) = (new StringBuilder(), 0);
        foreach (Match filled in Filled().Matches(form))
        {
            text.Append(Letters(form[at..filled.Index], letters)).Append(filled.Value);
            at = filled.Index + filled.Length;
        }
        return text.Append(Letters(form[at..], letters)).ToString();
    }

    private static string Letters(string text, string letters) =>
        string.Concat(
            text.Select(c =>
                Plain.IndexOf(char.ToLowerInvariant(c), StringComparison.Ordinal) is >= 0 and var n
                    ? char.IsAsciiLetterUpper(c)
                        ? char.ToUpperInvariant(letters[n])
                        : letters[n]
                    : c
            )
        );

    [GeneratedRegex(@"\{\d:[^}]*\}")]
    private static partial Regex Filled();
}
