using System.Collections.Immutable;
using System.Reflection;
using Farhold.TextGenerator;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace Farhold.App.Tests.Words;

/// <summary>The generator of texts over files of a test, and the class that it makes, compiled.</summary>
internal sealed class GeneratedTexts
{
    private const string Hand = """
        namespace Sample;

        public sealed partial class Words
        {
            private static partial string Shown(string value) => "<" + value + ">";
        }
        """;

    private readonly Compilation compilation;

    private GeneratedTexts(Compilation compilation, ImmutableArray<Diagnostic> faults) =>
        (this.compilation, Faults) = (compilation, faults);

    public ImmutableArray<Diagnostic> Faults { get; }

    /// <summary>What the compiler says of what was made.</summary>
    public IEnumerable<Diagnostic> Errors => compilation.GetDiagnostics().Where(d => d.Severity >= DiagnosticSeverity.Warning);

    public static GeneratedTexts Of(params (string Name, string Json)[] files) => Made(Hand, files);

    /// <summary>A static class, as the core has them.</summary>
    public static GeneratedTexts Ambient(params (string Name, string Json)[] files) =>
        Made("", [.. files.Select(f => ($"ambient/{f.Name}", f.Json))]);

    private static GeneratedTexts Made(string hand, (string Name, string Json)[] files)
    {
        AdditionalText[] texts = [.. files.Select(f => new InMemory(f.Name, f.Json))];
        var driver = CSharpGeneratorDriver.Create([new TextsGenerator().AsSourceGenerator()], texts, optionsProvider: new EveryFile());
        driver.RunGeneratorsAndUpdateCompilation(With(hand), out var made, out var faults);
        return new GeneratedTexts(made, faults);
    }

    /// <summary>A text as the class gives it: the property of that name, or the method where something is given.</summary>
    public string Ask(string language, string key, params object[] given)
    {
        using var image = new MemoryStream();
        Assert.True(compilation.Emit(image).Success);
        var type = Assembly.Load(image.ToArray()).GetType("Sample.Words")!;
        var words = type.GetMethod("In")!.Invoke(null, [language]);
        return (string)(given.Length == 0 ? type.GetProperty(key)!.GetValue(words)! : type.GetMethod(key)!.Invoke(words, given)!);
    }

    /// <summary>The same once lines of another language have been taken in.</summary>
    public (bool Taken, string Language, string Text) AskTaken(string language, string[] lines, string key)
    {
        using var image = new MemoryStream();
        Assert.True(compilation.Emit(image).Success);
        var type = Assembly.Load(image.ToArray()).GetType("Sample.Words")!;
        var words = type.GetMethod("In")!.Invoke(null, ["en"]);
        var taken = (bool)type.GetMethod("Take")!.Invoke(words, [language, lines])!;
        return (taken, (string)type.GetProperty("Language")!.GetValue(words)!, (string)type.GetProperty(key)!.GetValue(words)!);
    }

    /// <summary>The mark that the class has of its keys.</summary>
    public string KeysMark()
    {
        using var image = new MemoryStream();
        Assert.True(compilation.Emit(image).Success);
        return (string)Assembly.Load(image.ToArray()).GetType("Sample.Words")!.GetField("KeysMark")!.GetRawConstantValue()!;
    }

    /// <summary>A text of a static class.</summary>
    public string Said(string key, params object[] given)
    {
        using var image = new MemoryStream();
        Assert.True(compilation.Emit(image).Success);
        var type = Assembly.Load(image.ToArray()).GetType("Sample.Words")!;
        return (string)(given.Length == 0 ? type.GetProperty(key)!.GetValue(null)! : type.GetMethod(key)!.Invoke(null, given)!);
    }

    private static CSharpCompilation With(string hand) =>
        CSharpCompilation.Create(
            $"words-{Guid.NewGuid():n}",
            [CSharpSyntaxTree.ParseText(hand)],
            ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
                .Split(Path.PathSeparator)
                .Where(p =>
                    Path.GetFileName(p) is var name && (name.StartsWith("System.", StringComparison.Ordinal) || name == "Farhold.Core.dll")
                )
                .Select(p => MetadataReference.CreateFromFile(p)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable)
        );

    private sealed class InMemory(string path, string json) : AdditionalText
    {
        public override string Path => path;

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(json);
    }

    /// <summary>As the build does for <c>TextsClass="Sample.Words"</c>.</summary>
    private sealed class EveryFile : AnalyzerConfigOptionsProvider
    {
        public override AnalyzerConfigOptions GlobalOptions => new Options(null, "");

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => GlobalOptions;

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) =>
            new Options(textFile.Path.Contains("other", StringComparison.Ordinal) ? null : "Sample.Words", textFile.Path);
    }

    /// <summary>A file under <c>fetched/</c> is one that is not compiled in, one under <c>ambient/</c> makes a static class.</summary>
    private sealed class Options(string? textsClass, string path) : AnalyzerConfigOptions
    {
        public override bool TryGetValue(string key, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out string? value) =>
            (
                value = key switch
                {
                    "build_metadata.AdditionalFiles.TextsClass" => textsClass,
                    "build_metadata.AdditionalFiles.TextsFetched" => path.Contains("fetched/", StringComparison.Ordinal) ? "true" : null,
                    "build_metadata.AdditionalFiles.TextsAre" => path.Contains("ambient/", StringComparison.Ordinal) ? "ambient" : null,
                    _ => null,
                }
            )
                is not null;
    }
}
