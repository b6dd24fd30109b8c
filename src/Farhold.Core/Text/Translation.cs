#pragma warning disable RS0030 // The language is the one thing that is not an argument (docs/decisions/words-of-the-core.md).
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Farhold.Text;

/// <summary>The languages besides English in which what is worked out can be said.</summary>
/// <remarks>
/// English is compiled in. Another language is one file for all parts, handed over when it is wanted:
/// <c>{"VerdictTexts": {"LeaveOn": "…"}}</c>, by class and key. It is spoken wherever <c>CultureInfo.CurrentUICulture</c> is of that
/// language; what it lacks, or says with other placeholders, is said in English.
/// </remarks>
public static class Translation
{
    /// <summary>Where the words of enums stand in a file.</summary>
    internal const string Words = "Words";

    /// <summary>Where sentences of the rules that ship stand, each by the English one.</summary>
    private const string Rules = "rules";

    /// <summary>Where sentences of the suggested times and figures stand, each by the English one.</summary>
    private const string Priors = "priors";

    /// <summary>Where sentences of the scenarios that ship stand, each by the English one.</summary>
    private const string Scenarios = "scenarios";

    private static ImmutableDictionary<string, ImmutableDictionary<string, ImmutableDictionary<string, string>>> known =
        ImmutableDictionary<string, ImmutableDictionary<string, ImmutableDictionary<string, string>>>.Empty;

    /// <summary>Nothing but English was handed over, so nobody needs to ask which language is spoken.</summary>
    internal static bool None => known.IsEmpty;

    /// <summary>Another object after each language that was handed over.</summary>
    internal static object Stage => known;

    /// <summary>Hands a language over, or replaces it.</summary>
    /// <param name="language">As a culture is named: <c>de</c>. A region behind it is left out.</param>
    /// <param name="file">
    /// UTF-8 JSON: an object for each class of texts, with a text for each key. Classes that nobody asks for do no harm.
    /// </param>
    /// <exception cref="JsonException">It is not JSON.</exception>
    /// <exception cref="InvalidOperationException">It is not an object of objects of strings.</exception>
    public static void Add(string language, ReadOnlyMemory<byte> file)
    {
        using var json = JsonDocument.Parse(file);
        var classes = json.RootElement.EnumerateObject().ToImmutableDictionary(c => c.Name, Texts, StringComparer.Ordinal);
        ImmutableInterlocked.AddOrUpdate(ref known, Of(language), classes, (_, _) => classes);
    }

    /// <summary>All that this program says from now on is in that language, as far as it was handed over.</summary>
    public static void Speak(string language) => CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.GetCultureInfo(language);

    /// <summary>What a text is when it is not shown but hashed or compared: the same on phones that speak different languages.</summary>
    public static T InEnglish<T>(Func<T> said)
    {
        if (None)
            return said();
        var spoken = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
            return said();
        }
        finally
        {
            CultureInfo.CurrentUICulture = spoken;
        }
    }

    /// <summary>A word of a file, such as <c>left-leg</c>, which in English is shown as it stands there, without its dashes.</summary>
    /// <param name="key">Its enum and name: <c>Limb.LeftLeg</c>.</param>
    /// <returns>Null where it is said in English.</returns>
    internal static string? Word(string key) => Texts(CultureInfo.CurrentUICulture.Name, Words)?.GetValueOrDefault(key);

    /// <summary>A sentence of the rules that ship.</summary>
    /// <returns>Null where it is said in English.</returns>
    internal static string? Rule(string english) => Texts(CultureInfo.CurrentUICulture.Name, Rules)?.GetValueOrDefault(english);

    /// <summary>What a suggested time or figure of the way out is of.</summary>
    /// <returns>Null where it is said in English.</returns>
    internal static string? Prior(string english) => Texts(CultureInfo.CurrentUICulture.Name, Priors)?.GetValueOrDefault(english);

    /// <summary>A title, a briefing or what somebody says in a scenario that ships.</summary>
    /// <returns>Itself where it is said in English, or is none of them.</returns>
    public static string Scenario(string english) =>
        None ? english : Texts(CultureInfo.CurrentUICulture.Name, Scenarios)?.GetValueOrDefault(english) ?? english;

    /// <returns>Null where nothing of that class was handed over in that language.</returns>
    internal static ImmutableDictionary<string, string>? Texts(string culture, string of) =>
        known.GetValueOrDefault(Of(culture))?.GetValueOrDefault(of);

    private static ImmutableDictionary<string, string> Texts(JsonProperty of) =>
        of.Value.EnumerateObject().ToImmutableDictionary(t => t.Name, t => t.Value.GetString() ?? "", StringComparer.Ordinal);

    /// <summary>By name, since cultures without data (InvariantGlobalization) all call their language <c>iv</c>.</summary>
    private static string Of(string culture) => culture.Split('-')[0].ToLowerInvariant();
}
