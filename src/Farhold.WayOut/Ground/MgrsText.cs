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
            return Refuse(1, $"A grid zone is a number from 1 to 60, not {zoneDigits}.");
        return zone == 0 ? ParsePolar() : ParseZone(zone);
    }

    private Read<MgrsSquare> ParseZone(int zone)
    {
        if (!TakeIndex(MgrsLetters.Bands, out var band))
            return RefuseLetter($"the letter of the band, C to X without I and O, after zone {zone}");
        if (!TakeIndex(MgrsLetters.ColumnsOf(zone), out var column))
            return RefuseLetter($"a column letter of zone {zone}, one of {MgrsLetters.ColumnsOf(zone)}");
        if (!TakeIndex(MgrsLetters.Rows, out var rowLetter))
            return RefuseLetter("a row letter, A to V without I and O");
        column++;
        if (MgrsLetters.RowIn(band, column, (rowLetter + 20 - MgrsLetters.RowShift(zone)) % 20) is not { } row)
            return Refuse(next - 1, $"No part of this square lies in band {MgrsLetters.Bands[band]}; check the three letters.");
        var north = band >= 10;
        return ParseDigits(zone, north, column, north ? row : row + 100);
    }

    private Read<MgrsSquare> ParsePolar()
    {
        if (!TakeIndex(MgrsLetters.PolarBands, out var band))
            return RefuseLetter("a zone from 1 to 60 or, near a pole, one of the letters A, B, Y, Z");
        var north = band >= 2;
        if (!TakeIndex(MgrsLetters.PolarColumnsOf(band), out var column))
            return RefuseLetter($"a column letter, one of {MgrsLetters.PolarColumnsOf(band)}");
        if (!TakeIndex(MgrsLetters.PolarRowsOf(north), out var row))
            return RefuseLetter($"a row letter, one of {MgrsLetters.PolarRowsOf(north)}");
        var origin = MgrsLetters.PolarOrigin(north);
        return ParseDigits(0, north, column + (band % 2 == 1 ? 20 : origin), row + origin);
    }

    private Read<MgrsSquare> ParseDigits(int zone, bool north, int column, int row)
    {
        var firstDigit = next + 1;
        var digits = TakeDigits();
        if (next < signs.Count)
            return Refuse(next + 1, $"After the three letters only digits follow, not “{signs[next].Letter}”.");
        if (digits.Length == 0)
            return Refuse(next, "This names a whole square of 100 km; add digits, as many for east as for north.");
        if (digits.Length % 2 == 1)
            return Refuse(firstDigit, $"There are {digits.Length} digits; a reference has as many for east as for north.");
        if (digits.Length > 10)
            return Refuse(firstDigit, $"There are {digits.Length} digits; at most 10 are used, which name a square of 1 m.");

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
            ? Refuse(next + 1, $"Here belongs {expected}, not “{signs[next].Letter}”.")
            : Refuse(next + 1, $"The reference ends too early: here belongs {expected}.");

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
