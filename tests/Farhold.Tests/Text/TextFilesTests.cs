using System.Text.RegularExpressions;

namespace Farhold.Tests.Text;

/// <summary>The files of texts of the core: what is there, and that a translation is whole.</summary>
public partial class TextFilesTests
{
    [Fact]
    public void No_two_classes_have_one_name() =>
        Assert.Equal(
            TextFiles.All.Count(f => f.Language == "en"),
            TextFiles.All.Where(f => f.Language == "en").Select(f => f.Class).Distinct().Count()
        );

    [Fact]
    public void A_language_has_a_file_of_every_class() =>
        Assert.Empty(
            from language in TextFiles.All.Select(f => f.Language).Distinct()
            from name in TextFiles.All.Select(f => f.Class).Distinct()
            where !TextFiles.All.Any(f => f.Class == name && f.Language == language)
            select $"{name}.{language}.json"
        );

    /// <summary>The build checks those of classes; words of enums are in no class.</summary>
    [Fact]
    public void A_translation_has_every_key_and_fits() =>
        Assert.Empty(
            TextFiles
                .All.Where(f => f.Language != "en")
                .SelectMany(f => Faults(Texts(f.Class, "en"), TextFiles.Read(f.Path)).Select(fault => $"{f.Path}: {fault}"))
        );

    /// <summary>So that two files can be read beside each other.</summary>
    [Fact]
    public void A_translation_has_its_keys_in_the_order_of_English() =>
        Assert.Empty(
            TextFiles
                .All.Where(f => f.Language != "en")
                .Where(f => !Texts(f.Class, "en").Keys.SequenceEqual(TextFiles.Read(f.Path).Keys))
                .Select(f => f.Path)
        );

    /// <summary>The files of a language are joined while the app is built, and what joins them reads a backslash as a path's.</summary>
    [Fact]
    public void No_translation_has_a_backslash() =>
        Assert.Empty(
            TextFiles
                .All.Where(f => f.Language != "en" && File.ReadAllText(f.Path).Contains('\\', StringComparison.Ordinal))
                .Select(f => f.Path)
        );

    [Fact]
    public void What_is_wrong_with_a_translation_is_told() =>
        Assert.Equal(
            ["Ago: {0} {1}", "Entries: eins", "Gone", "New"],
            Faults(
                new()
                {
                    ["Ago"] = "{0:time} ago",
                    ["Entries"] = "1 entry|{0:#count} entries",
                    ["Gone"] = "gone",
                    ["Same"] = "{0:a} of {1:b}",
                },
                new()
                {
                    ["Ago"] = "{0} {1}",
                    ["Entries"] = "eins",
                    ["New"] = "neu",
                    ["Same"] = "{1} aus {0}",
                }
            )
        );

    [Fact]
    public void Words_of_enums_are_all_there_as_English_shows_them()
    {
        var words = Texts(Translation.Words, "en");
        var enums = typeof(Say).Assembly.GetTypes().Where(t => t.IsEnum).ToLookup(t => t.Name);
        var said = typeof(Say).GetMethod(nameof(Say.Word))!;
        foreach (var name in words.Keys.Select(k => k.Split('.')[0]).Distinct())
        {
            var type = Assert.Single(enums[name]);
            var shown = Enum.GetValues(type)
                .Cast<object>()
                .ToDictionary(v => $"{name}.{v}", v => (string)said.MakeGenericMethod(type).Invoke(null, [v])!);
            Assert.Equal(
                shown.OrderBy(s => s.Key, StringComparer.Ordinal),
                words.Where(w => w.Key.Split('.')[0] == name).OrderBy(w => w.Key, StringComparer.Ordinal)
            );
        }
    }

    private static IEnumerable<string> Faults(Dictionary<string, string> english, Dictionary<string, string> other) =>
        english
            .Where(t => other.ContainsKey(t.Key) && !Fits(other[t.Key], t.Value))
            .Select(t => $"{t.Key}: {other[t.Key]}")
            .Concat(english.Keys.Except(other.Keys))
            .Concat(other.Keys.Except(english.Keys));

    private static bool Fits(string text, string english) =>
        TextLines.Fits(
            Placeholder().Replace(text, "{$1}"),
            Placeholder().Matches(english).Select(m => m.Groups[1].Value).Distinct().Count(),
            english.Contains('|', StringComparison.Ordinal)
        );

    private static Dictionary<string, string> Texts(string name, string language) =>
        TextFiles.Read(TextFiles.All.Single(f => f.Class == name && f.Language == language).Path);

    [GeneratedRegex(@"\{([0-9])(?::[^}]*)?\}")]
    private static partial Regex Placeholder();
}
