namespace Farhold.Drawing;

/// <summary>How wide a text is at most, without a font at hand.</summary>
/// <remarks>
/// Advances of the widest face in use (DejaVu Sans Bold), rounded up, in parts of the font size; other faces are narrower.
/// </remarks>
internal static class TextWidth
{
    public static double Of(string text, double size)
    {
        var em = 0.0;
        foreach (var c in text)
            em += c switch
            {
                ' ' or '.' or ',' or ':' or ';' or 'i' or 'j' or 'l' or '|' or '\'' or '·' => 0.42,
                'f' or 't' or 'r' or '(' or ')' or '-' or '/' or 'I' => 0.52,
                'm' or 'w' or 'M' or 'W' or '%' or '@' => 1.11,
                >= 'A' and <= 'Z' => 0.86,
                > '~' => 1.1,
                _ => 0.73,
            };
        return em * size;
    }
}
