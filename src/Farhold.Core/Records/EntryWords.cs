namespace Farhold.Records;

/// <summary>What the sentences of several kinds of entries share.</summary>
internal static class EntryWords
{
    public static string Word<T>(T value)
        where T : struct, Enum => Say.Word(value);

    public static string Place(Limb? limb, BodyRegion? region) =>
        limb is { } l ? Say.Limb(l)
        : region is { } r ? Word(r)
        : RecordTexts.PlaceUnknown;

    public static string Note(string? note) => note is null ? "" : $" ({note})";

    public static string Listed(IEnumerable<string?> parts, string between) =>
        string.Join(between, parts.Where(p => !string.IsNullOrEmpty(p)));
}
