namespace Farhold.Records;

/// <summary>A part of a line that this version can't make anything of: a field, or the kind of the entry itself.</summary>
/// <param name="Name">The field as it is written, after a dot where it stands within another (<c>gcs.eyf</c>); or the kind.</param>
/// <param name="Says">The field's value as it is written, cut where it is long; empty for a kind.</param>
/// <param name="Offset">Where the name, or the word for the kind, begins: bytes from the line's start.</param>
public sealed record NotUnderstood(string Name, string Says, int Offset, bool IsKind = false)
{
    /// <summary>Design: characters of a name or a value that are shown.</summary>
    internal const int MaxShown = 80;

    /// <summary>Where it stands, and why it counts for nothing.</summary>
    /// <param name="line">Of the entry in its file, from 1.</param>
    public Refusal In(Entry entry, string file, int line) =>
        new(
            file,
            line,
            EntryReader.Column(entry.Json.Utf8.Span, Offset),
            IsKind ? RecordTexts.NotKnownKind(Name) : RecordTexts.NotKnownField(Name, Kinds.Wire(Kinds.Of(entry.Payload)))
        );

    internal static string Cut(string text, int most = MaxShown) => text.Length > most ? text[..most] + " …" : text;
}
