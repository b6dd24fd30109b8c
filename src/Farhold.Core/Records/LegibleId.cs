using System.Text;

namespace Farhold.Records;

/// <summary>The id in a line that is otherwise broken, if it can still be made out.</summary>
internal static class LegibleId
{
    public static EntryId? In(JsonText line)
    {
        var text = line.Utf8.Span;
        var at = text.IndexOf("\"id\":\""u8);
        if (at < 0)
            return null;
        text = text[(at + 6)..];
        var end = text.IndexOf((byte)'"');
        return end is > 0 and <= 80 ? EntryId.TryParse(Encoding.UTF8.GetString(text[..end])) : null;
    }
}
