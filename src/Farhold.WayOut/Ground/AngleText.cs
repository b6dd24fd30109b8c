using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.WayOut.Ground;

/// <summary>One angle as written: its value, the letter beside it, or what is wrong with it.</summary>
/// <param name="Degrees">With the sign the letter or the number gives it.</param>
internal sealed record AngleText(double Degrees, char? Letter, int Column, (int Column, string Reason)? Fault)
{
    public bool IsLatitude => Letter is 'N' or 'S';

    public static AngleText Read(ImmutableArray<AngleToken> tokens)
    {
        var letter = default(AngleToken?);
        var parts = new List<double>();
        var (start, unsplit) = (tokens[0].Column, default(AngleToken?));
        for (var i = 0; i < tokens.Length; i++)
        {
            var token = tokens[i];
            switch (token.Kind)
            {
                case AngleTokenKind.Letter when letter is null && (i == 0 || i == tokens.Length - 1):
                    letter = token;
                    break;
                case AngleTokenKind.Number when parts.Count == 3:
                    return Bad(token, GroundTexts.FourthNumber);
                case AngleTokenKind.Number when token.IsSigned && parts.Count > 0:
                    return Bad(token, GroundTexts.SignFirst);
                case AngleTokenKind.Number when unsplit is { } fraction:
                    return Bad(fraction, GroundTexts.DecimalsLast(fraction.Text));
                case AngleTokenKind.Number:
                    if (!double.TryParse(token.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
                        return Bad(token, GroundTexts.NotANumber(token.Text));
                    if (parts.Count > 0 && value >= 60)
                        return Bad(
                            token,
                            parts.Count == 1 ? GroundTexts.MinutesTooMany(token.Text) : GroundTexts.SecondsTooMany(token.Text)
                        );
                    if (token.Text.Contains('.', StringComparison.Ordinal))
                        unsplit = token;
                    parts.Add(value);
                    break;
                case AngleTokenKind.Degree when parts.Count == 1:
                case AngleTokenKind.Minute when parts.Count == 2:
                case AngleTokenKind.Second when parts.Count == 3:
                case AngleTokenKind.Colon when parts.Count is 1 or 2:
                    break;
                default:
                    return Bad(token, GroundTexts.NotHere(token.Text));
            }
        }

        var number = tokens.FirstOrDefault(t => t.Kind == AngleTokenKind.Number);
        if (parts.Count == 0)
            return Bad(tokens[0], GroundTexts.DegreesMissing);
        if (letter is not null && number.IsSigned)
            return Bad(number, GroundTexts.SignAndLetter);
        var size = Math.Abs(parts[0]) + (parts.ElementAtOrDefault(1) / 60) + (parts.ElementAtOrDefault(2) / 3600);
        var negative = letter?.Text is "S" or "W" || number.Text[0] == '-';
        return new(negative ? -size : size, letter?.Text[0], start, null);

        static AngleText Bad(AngleToken at, string reason) => new(0, null, at.Column, (at.Column, reason));
    }
}
