using System.Collections.Immutable;

namespace Farhold.WayOut.Ground;

/// <summary>Reads latitude and longitude in degrees, in any of their usual forms.</summary>
internal static class AnglePairText
{
    public static Read<GeoPoint> Parse(string text, string source)
    {
        var (tokens, badColumn) = AngleToken.Split(text);
        if (badColumn is { } column)
            return Refuse(column, Unreadable(text[column - 1]));
        if (tokens.Count == 0)
            return Refuse(1, GroundTexts.PlaceEmpty);
        if (DecimalCommas(text, tokens) is { } comma)
            return Refuse(comma, GroundTexts.CommaTight);

        var (first, second) = Halves(tokens);
        if (first.IsEmpty || second.IsEmpty)
            return Refuse(
                text.TrimEnd().Length + 1,
                tokens.Count(t => t.Kind == AngleTokenKind.Letter) == 1 ? GroundTexts.OneLetter : GroundTexts.TwoNumbers
            );
        return (AngleText.Read(first), AngleText.Read(second)) switch
        {
            ({ Fault: { } fault }, _) => Refuse(fault.Column, fault.Reason),
            (_, { Fault: { } fault }) => Refuse(fault.Column, fault.Reason),
            var (a, b) => Join(a, b),
        };

        Read<GeoPoint> Join(AngleText a, AngleText b)
        {
            if ((a.Letter is null) != (b.Letter is null))
                return Refuse((a.Letter is null ? a : b).Column, GroundTexts.OneHasLetter);
            if (a.Letter is not null && a.IsLatitude == b.IsLatitude)
                return Refuse(b.Column, a.IsLatitude ? GroundTexts.BothLatitudes : GroundTexts.BothLongitudes);
            var swapped = a.Letter is not null && !a.IsLatitude;
            var (latitude, longitude) = swapped ? (b, a) : (a, b);
            if (Math.Abs(latitude.Degrees) > 90)
                return Refuse(
                    latitude.Column,
                    Math.Abs(longitude.Degrees) <= 90 && a.Letter is null ? GroundTexts.LatitudeSwapped : GroundTexts.LatitudeMost
                );
            if (Math.Abs(longitude.Degrees) > 180)
                return Refuse(longitude.Column, GroundTexts.LongitudeMost);
            return new Read<GeoPoint>.Usable(new GeoPoint(latitude.Degrees, longitude.Degrees));
        }

        Read<GeoPoint> Refuse(int at, string reason) => new Read<GeoPoint>.Refused([new Refusal(source, 1, at, reason)]);
    }

    private static string Unreadable(char c) => c is 'O' or 'o' ? GroundTexts.LetterO : GroundTexts.NotOfDegrees(c.ToString());

    // 46,558 8,5615 and 46,558: without a point anywhere a tight comma can't be told from a decimal sign.
    private static int? DecimalCommas(string text, List<AngleToken> tokens)
    {
        if (text.Contains('.', StringComparison.Ordinal))
            return null;
        foreach (var token in tokens)
            if (
                token.Text == ","
                && token.Column < text.Length
                && char.IsAsciiDigit(text[token.Column])
                && token.Column >= 2
                && char.IsAsciiDigit(text[token.Column - 2])
            )
                return token.Column;
        return null;
    }

    private static (ImmutableArray<AngleToken> First, ImmutableArray<AngleToken> Second) Halves(List<AngleToken> tokens)
    {
        var cut = Cut(tokens);
        var first = tokens.Take(cut).ToList();
        var second = tokens.Skip(cut).ToList();
        if (second.Count > 0 && second[0].Kind == AngleTokenKind.Separator)
            second.RemoveAt(0);
        else if (first.Count > 0 && first[^1].Kind == AngleTokenKind.Separator)
            first.RemoveAt(first.Count - 1);
        return ([.. first], [.. second]);
    }

    /// <summary>Where the second angle begins, from the surest sign to the least.</summary>
    private static int Cut(List<AngleToken> tokens)
    {
        var separator = tokens.FindIndex(t => t.Kind == AngleTokenKind.Separator);
        if (separator > 0)
            return separator;
        var letters = Indices(tokens, t => t.Kind == AngleTokenKind.Letter);
        if (letters.Count >= 1 && letters[0] > 0)
            return letters[0] + 1; // letters after the numbers
        if (letters.Count >= 2)
            return letters[1]; // letters before them
        var sign = tokens.FindIndex(1, t => t.IsSigned);
        if (sign > 0)
            return sign;
        var degrees = Indices(tokens, t => t.Kind == AngleTokenKind.Degree);
        if (degrees.Count >= 2 && degrees[1] >= 1)
            return degrees[1] - 1; // before the number the second degree sign follows
        var numbers = Indices(tokens, t => t.Kind == AngleTokenKind.Number);
        if (tokens.Exists(t => t.Kind == AngleTokenKind.Colon))
            return numbers.Find(i => i > 0 && tokens[i - 1].Kind != AngleTokenKind.Colon) is > 0 and var i ? i : tokens.Count;
        return numbers.Count % 2 == 0 && numbers.Count > 0 ? numbers[numbers.Count / 2] : tokens.Count;
    }

    private static List<int> Indices(List<AngleToken> tokens, Predicate<AngleToken> match) =>
        [.. Enumerable.Range(0, tokens.Count).Where(i => match(tokens[i]))];
}
