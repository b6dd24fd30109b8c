namespace Farhold.Hub.Access;

/// <summary>What small bodies have in common.</summary>
internal static class Bodies
{
    /// <summary>A text that may be missing or empty, as one line.</summary>
    public static string OptionalText(this LocatedJson file, Located root, string name, int longest) =>
        root[name] is { Text.Length: > 0 } value ? Plain.Line(file.TextOf(value, name, longest, mayBeBlank: true) ?? "") : "";
}
