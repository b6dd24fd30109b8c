using System.Text.RegularExpressions;
using Farhold.Tests.Architecture;

namespace Farhold.Tests.Text;

/// <summary>What a carer or a clinician reads is in files of texts, not in the code (docs/decisions/words-of-the-core.md).</summary>
public partial class SentencesTests
{
    /// <summary>Files and folders whose sentences stay in the code, and why.</summary>
    private static readonly (string Path, string Why)[] Allowed =
    [
        .. Refusals.Select(p => (p, "refusals of a file, for whoever wrote it")),
        .. Evidence.Select(p => (p, "written into the record or a document, the same in every language")),
        .. Found.Select(p => (p, "looked for in what people wrote")),
        .. Sources.Select(p => (p, "publications, fonts, and styles of drawings")),
    ];

    private static string[] Refusals =>
        [
            "Farhold.Core/Files/",
            "Farhold.Core/Signatures/",
            "Farhold.Core/Drugs/FormularyReader.cs",
            "Farhold.Core/Kit/KitReader.cs",
            "Farhold.Core/Prepare/TripReader.cs",
            "Farhold.Core/Protocols/CareTaskReader.cs",
            "Farhold.Core/Protocols/ConditionReader.cs",
            "Farhold.Core/Protocols/ProtocolParts.cs",
            "Farhold.Core/Protocols/ProtocolReader.cs",
            "Farhold.Core/Protocols/WarningSignReader.cs",
            "Farhold.Core/Records/EntryFields.cs",
            "Farhold.Core/Records/EntryReader.cs",
            "Farhold.Core/Records/EntryWriting.cs",
            "Farhold.Core/Records/FieldRange.cs",
            "Farhold.Core/Records/RecordReader.cs",
            "Farhold.Core/Records/Kinds/HelpExpected.cs",
            "Farhold.Core/Records/Kinds/RegionLooked.cs",
            "Farhold.Core/Records/Kinds/SignsTaken.cs",
            "Farhold.Core/Records/Kinds/WoundFound.cs",
            "Farhold.Exchange/Document/CarriedLine.cs",
            "Farhold.Exchange/Message/",
            "Farhold.Rehearsal/Debriefs/TraineeRecord.cs",
            "Farhold.Rehearsal/Runs/AskedLine.cs",
            "Farhold.Rehearsal/Runs/LineFile.cs",
            "Farhold.Rehearsal/Runs/Script.cs",
            "Farhold.Rehearsal/Runs/SharedRun.cs",
            "Farhold.Rehearsal/Runs/TruthFile.cs",
            "Farhold.Rehearsal/Scenarios/ActFields.cs",
            "Farhold.Rehearsal/Scenarios/ScenarioReader.cs",
            "Farhold.Rehearsal/Scenarios/ScenarioText.cs",
            "Farhold.Rehearsal/Scenarios/ShowFields.cs",
            "Farhold.Rehearsal/Scenarios/SpanFields.cs",
            "Farhold.WayOut/Ground/Gpx.cs",
            "Farhold.WayOut/Ground/GpxPointDraft.cs",
            "Farhold.WayOut/Ground/GpxReader.cs",
            "Farhold.WayOut/Ground/GpxTrack.cs",
            "Farhold.WayOut/Pace/PriorTable.cs",
            "Farhold.WayOut/Plans/LegReader.cs",
            "Farhold.WayOut/Plans/PlaceFields.cs",
            "Farhold.WayOut/Plans/PlanReader.cs",
            "Farhold.WayOut/Plans/TimeFields.cs",
            "Farhold.WayOut/Plans/TravelReader.cs",
            "Farhold.WayOut/Reach/RouteReader.cs",
        ];

    private static string[] Evidence =>
        [
            "Farhold.Core/Overlays/",
            "Farhold.Core/Protocols/DecisionRules.cs",
            "Farhold.Core/Respond/LookQuestions.cs",
            "Farhold.Core/Verdicts/MoveNote.cs",
            "Farhold.Exchange/Advice/ShortCall.cs",
            "Farhold.WayOut/Plans/HelpForecast.cs",
            "Farhold.Documents/Fhir/",
        ];

    private static string[] Found =>
        ["Farhold.Core/Records/MedicineClass.cs", "Farhold.Core/Records/Medicines.cs", "Farhold.Core/Signs/CasualtyProfile.cs"];

    private static string[] Sources =>
        [
            "Farhold.Core/Care/Exposure.cs",
            "Farhold.Core/Care/UrineTarget.cs",
            "Farhold.Core/Drawing/SvgText.cs",
            "Farhold.WayOut/Pace/PaceRules.cs",
            "Farhold.WayOut/Pace/Surfaces.cs",
            "Farhold.Documents/Card/CardFonts.cs",
        ];

    [Fact]
    public void No_sentence_is_in_the_code()
    {
        string[] found =
        [
            .. Files().Where(f => !IsAllowed(f)).SelectMany(f => Sentences(File.ReadAllText(Full(f))).Select(s => $"{f}: {s}")),
        ];
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    /// <summary>So that nothing stays allowed that no longer needs to be.</summary>
    [Fact]
    public void What_is_allowed_has_sentences() =>
        Assert.All(
            Allowed,
            a =>
                Assert.Contains(
                    Files().Where(f => f.StartsWith(a.Path, StringComparison.Ordinal)),
                    f => Sentences(File.ReadAllText(Full(f))).Any()
                )
        );

    [Theory]
    [InlineData("return \"Look again\";", true)]
    [InlineData("return $\"{limb} is tight\";", true)]
    [InlineData("return $\"Since {Say.Time(at)} tight\";", true)]
    [InlineData("return $\"no {x} now\";", true)]
    [InlineData("throw new ArgumentException(\"A mass is above 0.\");", false)]
    [InlineData("throw new ArgumentException(\n    $\"A mass is above {least}.\"\n);", false)]
    [InlineData("// \"Look again\"", false)]
    [InlineData("[InlineData(\"Look again\")]", false)]
    [InlineData("return \"heartRate\";", false)]
    [InlineData("Of(\"<path d=\\\"M0 0\\\"/>\");", false)]
    public void A_sentence_is_known(string code, bool sentence) => Assert.Equal(sentence, Sentences(code).Any());

    /// <summary>Literals that begin with a word, or with what is filled in and a word, and have another after it.</summary>
    private static IEnumerable<string> Sentences(string code)
    {
        var lines = code.Split('\n')
            .Where(l => l.TrimStart() is var t && !t.StartsWith("//", StringComparison.Ordinal) && !t.StartsWith('['));
        var bare = Filled().Replace(string.Join('\n', lines), "…");
        return Literal()
            .Matches(bare)
            .Where(l => Sentence().IsMatch(l.Groups[1].Value.Split('{')[0]) && !IsFault(bare[..l.Index]))
            .Select(l => l.Groups[1].Value);
    }

    /// <summary>Whether the statement that ends here makes an exception.</summary>
    private static bool IsFault(string before) =>
        before[(before.LastIndexOfAny([';', '{', '}']) + 1)..].Contains("Exception(", StringComparison.Ordinal);

    private static bool IsAllowed(string file) => Allowed.Any(a => file.StartsWith(a.Path, StringComparison.Ordinal));

    private static IEnumerable<string> Files() =>
        TextFiles
            .Parts.SelectMany(p => Directory.EnumerateFiles(Full(p), "*.cs", SearchOption.AllDirectories))
            .Select(f => Path.GetRelativePath(Full(""), f).Replace('\\', '/'))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal));

    private static string Full(string file) => Path.Combine(Repository.Root, "src", file);

    [GeneratedRegex("\"((?:[^\"\\\\\\n]|\\\\.)*)\"")]
    private static partial Regex Literal();

    /// <summary>What is filled in, without what is filled in there.</summary>
    [GeneratedRegex(@"\{[^{}\n]*\}")]
    private static partial Regex Filled();

    [GeneratedRegex(@"^(…|[^\w<]+)?[ ]?[A-Za-z][A-Za-z'’-]*[,:;]? (…|[A-Za-z]*[a-z])")]
    private static partial Regex Sentence();
}
