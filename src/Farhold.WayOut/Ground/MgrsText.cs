using System.Globalization;

namespace Farhold.WayOut.Ground;

/// <summary>Reads a grid reference from left to right: zone, band, column and row of the square, digits.</summary>
internal sealed class MgrsText
{
    private readonly string source;
    private readonly List<(char Letter, int Column)> signs = [];
    private int next;

    private MgrsText(string text, string source)
    {
        this.source = source;
        for (var i = 0; i < text.Length; i++)
            if (!char.IsWhiteSpace(text[i]))
                signs.Add((char.ToUpperInvariant(text[i]), i + 1));
    }

    public static Read<MgrsSquare> Parse(string text, string source) => new MgrsText(text, source).Parse();

    /// <summary>Up to three digits, two letters or more, then only digits: meant as a grid reference.</summary>
    public static bool LooksLikeOne(string text)
    {
        var signs = text.Where(c => !char.IsWhiteSpace(c)).ToArray();
        var letters = signs.SkipWhile(char.IsAsciiDigit).TakeWhile(char.IsAsciiLetter).Count();
        var zoneDigits = signs.TakeWhile(char.IsAsciiDigit).Count();
        return letters >= 2 && zoneDigits <= 3 && signs.Any(char.IsAsciiDigit) && signs.Skip(zoneDigits + letters).All(char.IsAsciiDigit);
    }

    private Read<MgrsSquare> Parse()
    {
        var zoneDigits = TakeDigits();
        var zone = zoneDigits.Length is 0 or > 2 ? 0 : int.Parse(zoneDigits, CultureInfo.InvariantCulture);
        if (zoneDigits.Length > 0 && zone is < 1 or > 60)
            return Refuse(1, GroundTexts.ZoneRange(zoneDigits));
        return zone == 0 ? ParsePolar() : ParseZone(zone);
    }

    private Read<MgrsSquare> ParseZone(int zone)
    {
        if (!TakeIndex(MgrsLetters.Bands, out var band))
            return RefuseLetter(GroundTexts.BandLetter(zone));
        if (!TakeIndex(MgrsLetters.ColumnsOf(zone), out var column))
            return RefuseLetter(GroundTexts.ColumnOfZone(zone, MgrsLetters.ColumnsOf(zone)));
        if (!TakeIndex(MgrsLetters.Rows, out var rowLetter))
            return RefuseLetter(GroundTexts.RowLetter);
        column++;
        if (MgrsLetters.RowIn(band, column, (rowLetter + 20 - MgrsLetters.RowShift(zone)) % 20) is not { } row)
            return Refuse(next - 1, GroundTexts.NotInBand(MgrsLetters.Bands[band].ToString()));
        var north = band >= 10;
        return ParseDigits(zone, north, column, north ? row : row + 100);
    }

    private Read<MgrsSquare> ParsePolar()
    {
        if (!TakeIndex(MgrsLetters.PolarBands, out var band))
            return RefuseLetter(GroundTexts.ZoneOrPole);
        var north = band >= 2;
        if (!TakeIndex(MgrsLetters.PolarColumnsOf(band), out var column))
            return RefuseLetter(GroundTexts.PolarColumn(MgrsLetters.PolarColumnsOf(band)));
        if (!TakeIndex(MgrsLetters.PolarRowsOf(north), out var row))
            return RefuseLetter(GroundTexts.PolarRow(MgrsLetters.PolarRowsOf(north)));
        var origin = MgrsLetters.PolarOrigin(north);
        return ParseDigits(0, north, column + (band % 2 == 1 ? 20 : origin), row + origin);
    }

    private Read<MgrsSquare> ParseDigits(int zone, bool north, int column, int row)
    {
        var firstDigit = next + 1;
        var digits = TakeDigits();
        if (next < signs.Count)
            return Refuse(next + 1, GroundTexts.DigitsOnly(signs[next].Letter.ToString()));
        if (digits.Length == 0)
            return Refuse(next, GroundTexts.WholeSquare);
        if (digits.Length % 2 == 1)
            return Refuse(firstDigit, GroundTexts.DigitsOdd(digits.Length));
        if (digits.Length > 10)
            return Refuse(firstDigit, GroundTexts.DigitsMany(digits.Length));

        var half = digits.Length / 2;
        var size = (int)Math.Pow(10, 5 - half);
        var east = (column * 100_000.0) + ((Number(digits[..half]) + 0.5) * size);
        var northing = (row * 100_000.0) + ((Number(digits[half..]) + 0.5) * size);
        return new Read<MgrsSquare>.Usable(new(new GridPosition(zone, north, east, northing).ToGeoPoint(), size));
    }

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);

    private string TakeDigits()
    {
        var start = next;
        while (next < signs.Count && char.IsAsciiDigit(signs[next].Letter))
            next++;
        return string.Concat(signs.Skip(start).Take(next - start).Select(s => s.Letter));
    }

    private bool TakeIndex(string letters, out int index)
    {
        index = next < signs.Count ? letters.IndexOf(signs[next].Letter, StringComparison.Ordinal) : -1;
        if (index < 0)
            return false;
        next++;
        return true;
    }

    private Read<MgrsSquare>.Refused RefuseLetter(string expected) =>
        next < signs.Count
            ? Refuse(next + 1, GroundTexts.Belongs(expected, signs[next].Letter.ToString()))
            : Refuse(next + 1, GroundTexts.EndsEarly(expected));

    /// <param name="sign">Counted from 1, spaces left out; one past the last is the end.</param>
    private Read<MgrsSquare>.Refused Refuse(int sign, string reason)
    {
        var column =
            sign <= signs.Count ? signs[sign - 1].Column
            : signs.Count == 0 ? 1
            : signs[^1].Column + 1;
        return new([new Refusal(source, 1, column, reason)]);
    }
}
