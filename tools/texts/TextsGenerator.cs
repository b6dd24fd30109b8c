using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace Farhold.TextGenerator;

/// <summary>
/// Makes a class of texts from the files <c>Anything.xx.json</c> that are given as AdditionalFiles with <c>TextsClass</c>, its full name;
/// with <c>TextsAre="ambient"</c> a static one, for which other languages than English are checked, but not compiled in.
/// </summary>
[Generator]
public sealed class TextsGenerator : IIncrementalGenerator
{
    private const string English = "en";
    private const string ClassOption = "build_metadata.AdditionalFiles.TextsClass";
    private const string FetchedOption = "build_metadata.AdditionalFiles.TextsFetched";
    private const string KindOption = "build_metadata.AdditionalFiles.TextsAre";

    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var files = context
            .AdditionalTextsProvider.Combine(context.AnalyzerConfigOptionsProvider)
            .Select(
                (pair, _) =>
                    new Given(
                        Option(ClassOption, pair.Left, pair.Right),
                        Option(FetchedOption, pair.Left, pair.Right) == "true",
                        Option(KindOption, pair.Left, pair.Right) == "ambient",
                        pair.Left
                    )
            )
            .Where(f => f.Class.Length > 0)
            .Collect();
        context.RegisterSourceOutput(files, Produce);
    }

    private static string Option(string option, AdditionalText file, AnalyzerConfigOptionsProvider options) =>
        options.GetOptions(file).TryGetValue(option, out var said) ? said : "";

    private static void Produce(SourceProductionContext context, ImmutableArray<Given> files)
    {
        foreach (var ofClass in files.GroupBy(f => f.Class, StringComparer.Ordinal))
        {
            var languages = ofClass
                .Select(f => new TextFile(f.File.Path, f.File.GetText(context.CancellationToken) ?? SourceText.From(""), f.Fetched))
                .OrderBy(f => f.Language, StringComparer.Ordinal)
                .ToList();
            var ambient = ofClass.Any(f => f.Ambient);
            if (WrongName(ofClass.Key, languages) is { } wrong)
                context.ReportDiagnostic(wrong);
            else
                context.AddSource($"{ofClass.Key}.g.cs", Source(ofClass.Key, languages, ambient, context.ReportDiagnostic));
        }
    }

    private static Diagnostic? WrongName(string name, List<TextFile> languages) =>
        languages.FirstOrDefault(f => f.Language.Length is < 2 or > 3 || !f.Language.All(c => c is >= 'a' and <= 'z')) is { } odd
            ? odd.Fault(Faults.Name, default, odd.Name, "a file of texts is named with its language, as Texts.en.json is")
        : languages.Select(f => f.Language).Distinct(StringComparer.Ordinal).Count() < languages.Count
            ? languages[0].Fault(Faults.Name, default, name, "two files are of one language")
        : languages.All(f => f.Language != English || f.Fetched) ? languages[0].Fault(Faults.Name, default, name, "no file is in English")
        : null;

    private static string Source(string name, List<TextFile> languages, bool ambient, Action<Diagnostic> report)
    {
        var english = languages.Single(f => f.Language == English);
        ImmutableArray<string> reserved = [.. ambient ? AmbientSource.Members : TextsSource.Members, name.Split('.').Last()];
        var texts = english
            .Entries(reserved, report)
            .Select(e => (Entry: e, Wording: english.Wording(e, null, report)))
            .Where(t => t.Wording is not null)
            .Select(t => new Text(t.Entry, t.Wording!))
            .ToList();
        var translations = languages
            .Where(f => f != english)
            .ToDictionary(f => f, f => Translated(f, texts, english.Name, reserved, report));
        if (ambient)
            return new AmbientSource(name, texts).ToString();
        return new TextsSource(
            name,
            texts,
            translations.Where(t => !t.Key.Fetched).ToDictionary(t => t.Key.Language, t => t.Value, StringComparer.Ordinal),
            [.. translations.Keys.Where(f => f.Fetched).Select(f => f.Language)]
        ).ToString();
    }

    /// <returns>In the order of the English texts; where one is missing or wrong, which is reported, the English one.</returns>
    private static List<string> Translated(
        TextFile file,
        List<Text> texts,
        string english,
        ICollection<string> reserved,
        Action<Diagnostic> report
    )
    {
        var inOrder = file.Entries(reserved, report);
        var entries = inOrder.ToDictionary(e => e.Key, StringComparer.Ordinal);
        foreach (var extra in entries.Values.Where(e => texts.TrueForAll(t => t.Entry.Key != e.Key)))
            report(file.Fault(Faults.Extra, extra.At, extra.Key, english));
        if (file.Fetched && OutOfOrder(inOrder, texts) is { } odd)
            report(file.Fault(Faults.Order, odd.At, odd.Key, english));
        return [.. texts.Select(Translate)];

        string Translate(Text text)
        {
            if (entries.TryGetValue(text.Entry.Key, out var entry))
                return file.Wording(entry, text.Wording, report)?.Format ?? text.Wording.Format;
            report(file.Fault(Faults.Missing, default, text.Entry.Key, english));
            return text.Wording.Format;
        }
    }

    /// <summary>What is fetched is read by the place of each text, without looking anything up by its name.</summary>
    private static Entry? OutOfOrder(IReadOnlyList<Entry> entries, List<Text> texts)
    {
        var places = texts.Select((t, n) => (t.Entry.Key, n)).ToDictionary(t => t.Key, t => t.n, StringComparer.Ordinal);
        var known = entries.Where(e => places.ContainsKey(e.Key)).ToList();
        return known.Skip(1).Where((e, n) => places[e.Key] < places[known[n].Key]).FirstOrDefault();
    }

    /// <summary>A file that is given to the build, and the class that it belongs to.</summary>
    private sealed class Given(string @class, bool fetched, bool ambient, AdditionalText file)
    {
        public string Class { get; } = @class;

        public bool Fetched { get; } = fetched;

        public bool Ambient { get; } = ambient;

        public AdditionalText File { get; } = file;
    }
}
