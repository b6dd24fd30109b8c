using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Farhold.TextGenerator;

/// <summary>One language: <c>Anything.xx.json</c>.</summary>
/// <param name="fetched">It is checked here and shown by the class, but fetched when the app runs, not compiled in.</param>
internal sealed class TextFile(string path, SourceText source, bool fetched)
{
    public bool Fetched => fetched;

    public string Name { get; } = Path.GetFileName(path);

    public string Language { get; } = Path.GetExtension(Path.GetFileNameWithoutExtension(path)).TrimStart('.');

    /// <summary>Those that can be used, in the order of the file; what is wrong with the others is reported.</summary>
    /// <param name="reserved">Names that the class has for something else.</param>
    public IReadOnlyList<Entry> Entries(ICollection<string> reserved, Action<Diagnostic> report)
    {
        try
        {
            var known = new HashSet<string>(StringComparer.Ordinal);
            return [.. JsonTexts.Read(source.ToString()).Where(e => Usable(e, known, reserved, report))];
        }
        catch (UnreadableException unreadable)
        {
            report(Fault(Faults.Unreadable, unreadable.At, unreadable.Message, ""));
            return [];
        }
    }

    /// <returns>Nothing where the text can't be used, which is reported.</returns>
    public Wording? Wording(Entry entry, Wording? english, Action<Diagnostic> report)
    {
        try
        {
            return TextGenerator.Wording.Of(entry.Text, english);
        }
        catch (WordingException wrong)
        {
            report(Fault(wrong.Fault, entry.At, entry.Key, wrong.Message));
            return null;
        }
    }

    public Diagnostic Fault(DiagnosticDescriptor fault, TextSpan at, string key, string what) =>
        Diagnostic.Create(fault, Location.Create(path, at, source.Lines.GetLinePositionSpan(at)), key, what);

    private bool Usable(Entry entry, HashSet<string> known, ICollection<string> reserved, Action<Diagnostic> report)
    {
        var why =
            !SyntaxFacts.IsValidIdentifier(entry.Key) || !char.IsUpper(entry.Key[0])
                ? "it names a property, so a capital and letters or digits"
            : reserved.Contains(entry.Key) ? "the class has a member of that name"
            : !known.Add(entry.Key) ? "it is there twice"
            : null;
        if (why is not null)
            report(Fault(Faults.Key, entry.At, entry.Key, why));
        return why is null;
    }
}
