namespace Farhold.WayOut.Ground;

internal enum AngleTokenKind
{
    Number,
    Degree,
    Minute,
    Second,
    Colon,
    Letter,
    Separator,
}

/// <summary>A piece of a written coordinate.</summary>
/// <param name="Text">A number with its sign, or a letter N, S, E, W in upper case; otherwise as written.</param>
/// <param name="Column">From 1.</param>
internal readonly record struct AngleToken(AngleTokenKind Kind, string Text, int Column)
{
    public bool IsSigned => Kind == AngleTokenKind.Number && Text[0] is '+' or '-';

    /// <summary>Cuts a text into pieces, or says at which column it stops making sense.</summary>
    public static (List<AngleToken> Tokens, int? BadColumn) Split(string text)
    {
        var tokens = new List<AngleToken>();
        for (var i = 0; i < text.Length; )
        {
            var start = i;
            var c = text[i] == '−' ? '-' : text[i];
            if (char.IsWhiteSpace(c))
            {
                i++;
                continue;
            }

            if (char.IsAsciiDigit(c) || (c is '+' or '-' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1])))
            {
                i++;
                while (i < text.Length && char.IsAsciiDigit(text[i]))
                    i++;
                if (i + 1 < text.Length && text[i] == '.' && char.IsAsciiDigit(text[i + 1]))
                    for (i++; i < text.Length && char.IsAsciiDigit(text[i]); )
                        i++;
                tokens.Add(new(AngleTokenKind.Number, text[start..i].Replace('−', '-'), start + 1));
                continue;
            }

            if (KindOf(c) is not { } kind)
                return (tokens, start + 1);
            i++;
            if (kind == AngleTokenKind.Minute && i < text.Length && text[i] == text[start])
            {
                kind = AngleTokenKind.Second; // two single primes
                i++;
            }

            tokens.Add(new(kind, char.ToUpperInvariant(c).ToString(), start + 1));
        }

        return (tokens, null);
    }

    private static AngleTokenKind? KindOf(char c) =>
        c switch
        {
            '°' or 'º' or '˚' or 'd' or 'D' => AngleTokenKind.Degree,
            '\'' or '′' or '’' or '‘' => AngleTokenKind.Minute,
            '"' or '″' or '”' or '“' => AngleTokenKind.Second,
            ':' => AngleTokenKind.Colon,
            ',' or ';' or '/' => AngleTokenKind.Separator,
            _ when "NSEWnsew".Contains(c, StringComparison.Ordinal) => AngleTokenKind.Letter,
            _ => null,
        };
}
