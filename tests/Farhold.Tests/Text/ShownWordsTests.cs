using System.Text.Json;
using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;

namespace Farhold.Tests.Text;

/// <summary>Words that mislead or puzzle a carer stay out of what they read. Documents speak to the trade.</summary>
public partial class ShownWordsTests
{
    /// <summary>From a review of the words by an emergency physician's and a tired layperson's eye.</summary>
    private static readonly (string Pattern, string Instead)[] Old =
    [
        (@"(?<!left |right |arm or a |arms, )(?<![\w-])legs?(?![\w.-])", "stage, of a way; left leg, right leg, of a body"),
        (@"\bwhen help comes$", "hands here; surgery or clinic"),
        (@"\bpulse (can be |was )?(felt )?beyond (it|the tourniquet)|^pulse beyond", "pulse below the tourniquet"),
        (@"^wound elsewhere$", "bleeding not on a limb"),
        (@"\bat each beat\b", "at each beep"),
        (@"\bhold time reached\b", "keep pressing; put the dressing on"),
        (@"\blike tears\b", "nothing: nobody tastes a mix at a sickbed"),
        (@"\bI have accepted\b", "I have read this"),
        (@"(?-i:^Skin cool$)", "Skin cool (chest, not hands)"),
        (@"\breleased since\b", "loosened {0} ago"),
        (@"\b(take|takes|taken|took) in\b", "import"),
        (@"^(seen|sustain)$", "looked at; care"),
        (@"\bshares? (their |one |its )?luck\b|\bluck shared\b|\bshares? of variance\b", "delays that hit all stages together"),
        (@"\brarely seen alive\b", "rarely survivable"),
        (@"entry\(s\)|\b1 entries\b", "1 entry, 2 entries"),
    ];

    public static TheoryData<string> Files =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(Repository.Root, "src", "Farhold.App", "Words"), "Texts.*.json")
                .Concat(Directory.EnumerateFiles(Path.Combine(Repository.Root, "protocols"), "farhold-*.json"))
                .Concat(TextFiles.All.Select(f => f.Path))
                .Select(f => Path.GetRelativePath(Repository.Root, f))
                .Order(StringComparer.Ordinal),
        ];

    [Theory, MemberData(nameof(Files))]
    public void No_text_of_a_file_says_it_the_old_way(string file)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, file)));
        Assert.Empty(Texts(json.RootElement, file.Contains("Texts.", StringComparison.Ordinal)).SelectMany(Faults));
    }

    [Fact]
    public void No_sentence_in_the_code_says_it_the_old_way() =>
        Assert.Empty(
            Repository
                .Files("*.cs")
                .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
                .Where(f =>
                    f.StartsWith("src/", StringComparison.Ordinal)
                    && !f.Contains("/obj/", StringComparison.Ordinal)
                    && !f.Contains(".Documents/", StringComparison.Ordinal)
                )
                .SelectMany(f => Sentences(File.ReadAllLines(Path.Combine(Repository.Root, f))).SelectMany(Faults).Select(t => $"{f}: {t}"))
        );

    [Theory]
    [InlineData("Keep this leg", true)]
    [InlineData("Leg by leg", true)]
    [InlineData("Look at the left leg", false)]
    [InlineData("An arm or a leg bleeds", false)]
    [InlineData("When help comes", true)]
    [InlineData("Say when help comes at the latest", false)]
    [InlineData("Pulse beyond", true)]
    [InlineData("cold or pale beyond it", false)]
    [InlineData("Skin cool", true)]
    [InlineData("Skin cool (chest, not hands)", false)]
    [InlineData("Nothing was taken in.", true)]
    public void The_old_way_is_known(string text, bool old) => Assert.Equal(old, Faults(text).Any());

    private static IEnumerable<string> Faults(string text) =>
        Old.Where(o => Regex.IsMatch(text, o.Pattern, RegexOptions.IgnoreCase)).Select(o => $"'{text}': {o.Instead}");

    /// <param name="words">Whether a single word is shown; else it is an id, or a value of the record.</param>
    private static IEnumerable<string> Texts(JsonElement json, bool words) =>
        json.ValueKind switch
        {
            JsonValueKind.Object => json.EnumerateObject().SelectMany(p => Texts(p.Value, words)),
            JsonValueKind.Array => json.EnumerateArray().SelectMany(i => Texts(i, words)),
            JsonValueKind.String when words || json.GetString()!.Contains(' ', StringComparison.Ordinal) => [json.GetString()!],
            _ => [],
        };

    /// <summary>Literals with a space in them, without what is filled in; a single word is a name.</summary>
    private static IEnumerable<string> Sentences(string[] lines) =>
        lines
            .Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .SelectMany(l => Literal().Matches(Filled().Replace(l, "…")))
            .Select(m => m.Groups[1].Value)
            .Where(t => t.Contains(' ', StringComparison.Ordinal));

    [GeneratedRegex("\"((?:[^\"\\\\]|\\\\.)*)\"")]
    private static partial Regex Literal();

    [GeneratedRegex(@"\{[^{}]*\}")]
    private static partial Regex Filled();
}
