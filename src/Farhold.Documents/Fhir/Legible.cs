using System.Net;
using System.Text;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Words of a record as FHIR accepts them: no control characters, no unusual blanks, never empty.</summary>
internal static class Legible
{
    /// <summary>The text, or null if nothing legible is left. The line itself is carried beside it unchanged.</summary>
    public static string? Text(string? text)
    {
        if (text is null)
            return null;
        var clean = new StringBuilder(text.Length);
        foreach (var c in Plain.Line(text))
            if (c is not ('\uFFFE' or '\uFFFF'))
                clean.Append(char.IsWhiteSpace(c) ? ' ' : c);
        var trimmed = clean.ToString().Trim();
        return trimmed.Length == 0 ? null : trimmed;
    }

    public static Narrative Narrative(IEnumerable<string> lines)
    {
        var items = lines.Select(l => WebUtility.HtmlEncode(Text(l) ?? "(nothing legible)")).ToArray();
        var inner = items.Length == 1 ? $"<p>{items[0]}</p>" : $"<ul>{string.Concat(items.Select(i => $"<li>{i}</li>"))}</ul>";
        return new()
        {
            Status = Hl7.Fhir.Model.Narrative.NarrativeStatus.Generated,
            Div = $"""<div xmlns="http://www.w3.org/1999/xhtml" lang="en">{inner}</div>""",
        };
    }
}
