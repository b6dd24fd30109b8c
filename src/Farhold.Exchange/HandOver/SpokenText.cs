using System.Globalization;
using System.Text;

namespace Farhold.Exchange.HandOver;

/// <summary>Text as it is said over a bad radio.</summary>
/// <remarks>Spelling alphabet: ICAO Annex 10, volume II (from memory). Digits are said one by one (common practice).</remarks>
public static class SpokenText
{
    private static string[] Digits =>
        [
            HandOverTexts.Digit0,
            HandOverTexts.Digit1,
            HandOverTexts.Digit2,
            HandOverTexts.Digit3,
            HandOverTexts.Digit4,
            HandOverTexts.Digit5,
            HandOverTexts.Digit6,
            HandOverTexts.Digit7,
            HandOverTexts.Digit8,
            HandOverTexts.Digit9,
        ];

    private static readonly string[] Letters =
    [
        "Alfa",
        "Bravo",
        "Charlie",
        "Delta",
        "Echo",
        "Foxtrot",
        "Golf",
        "Hotel",
        "India",
        "Juliett",
        "Kilo",
        "Lima",
        "Mike",
        "November",
        "Oscar",
        "Papa",
        "Quebec",
        "Romeo",
        "Sierra",
        "Tango",
        "Uniform",
        "Victor",
        "Whiskey",
        "X-ray",
        "Yankee",
        "Zulu",
    ];

    /// <summary>Longest first, so that <c>min</c> is not read as metres.</summary>
    private static (string Unit, string One, string Many)[] Units =>
        [
            ("/min", HandOverTexts.PerMinute, HandOverTexts.PerMinute),
            ("mmHg", HandOverTexts.MmHgOne, HandOverTexts.MmHgMany),
            ("min", HandOverTexts.MinuteOne, HandOverTexts.MinuteMany),
            ("°C", HandOverTexts.CelsiusOne, HandOverTexts.CelsiusMany),
            ("mL", HandOverTexts.MillilitreOne, HandOverTexts.MillilitreMany),
            ("kg", HandOverTexts.KilogramOne, HandOverTexts.KilogramMany),
            ("mg", HandOverTexts.MilligramOne, HandOverTexts.MilligramMany),
            ("%", HandOverTexts.PerCent, HandOverTexts.PerCent),
            ("h", HandOverTexts.HourOne, HandOverTexts.HourMany),
            ("d", HandOverTexts.DayOne, HandOverTexts.DayMany),
            ("g", HandOverTexts.GramOne, HandOverTexts.GramMany),
            ("s", HandOverTexts.SecondOne, HandOverTexts.SecondMany),
        ];

    /// <summary>
    /// No digit is left: <c>128 /min</c> becomes <c>one two eight per minute</c>, <c>04:10</c> becomes <c>zero four one zero</c>.
    /// </summary>
    public static string Of(string line)
    {
        var said = new StringBuilder(line.Length * 2);
        for (var i = 0; i < line.Length; )
        {
            if (!char.IsAsciiDigit(line[i]))
            {
                said.Append(line[i++]);
                continue;
            }

            if (said.Length > 0 && said[^1] is not (' ' or '('))
                said.Append(' ');
            var end = Number(line, i, said);
            i = Unit(line, end, said, one: end - i == 1 && line[i] == '1');
            if (i < line.Length && (char.IsLetterOrDigit(line[i]) || line[i] is '-' or '/'))
                said.Append(' ');
        }

        return said.Replace("UTC", "U T C").ToString();
    }

    /// <summary>Letter by letter; what has no code word is named as it stands.</summary>
    public static string Spelled(string name)
    {
        var plain = name.Normalize(NormalizationForm.FormC);
        return string.Join(' ', plain.EnumerateRunes().Select(Spelled).Where(s => s.Length > 0));
    }

    private static string Spelled(Rune rune) =>
        rune.Value switch
        {
            >= 'a' and <= 'z' => Letters[rune.Value - 'a'],
            >= 'A' and <= 'Z' => Letters[rune.Value - 'A'],
            >= '0' and <= '9' => Digits[rune.Value - '0'],
            ' ' => HandOverTexts.SpelledSpace,
            '-' => HandOverTexts.SpelledDash,
            _ when Rune.GetUnicodeCategory(rune) == UnicodeCategory.Control => "",
            _ => rune.ToString(),
        };

    /// <summary>Digits, a decimal point between them, or the colon of a clock time, which is not said.</summary>
    private static int Number(string line, int at, StringBuilder said)
    {
        var from = at;
        for (; at < line.Length; at++)
        {
            var inside = at > from && at + 1 < line.Length && char.IsAsciiDigit(line[at + 1]);
            if (char.IsAsciiDigit(line[at]))
                said.Append(at > from ? " " : "").Append(Digits[line[at] - '0']);
            else if (inside && line[at] == '.')
                said.Append(HandOverTexts.DecimalPoint);
            else if (!(inside && line[at] == ':'))
                break;
        }

        return at;
    }

    private static int Unit(string line, int at, StringBuilder said, bool one)
    {
        var unit = at < line.Length && line[at] == ' ' ? at + 1 : at;
        foreach (var (written, single, many) in Units)
        {
            if (string.CompareOrdinal(line, unit, written, 0, written.Length) != 0)
                continue;
            var end = unit + written.Length;
            if (end < line.Length && char.IsLetterOrDigit(line[end]))
                continue;
            said.Append(' ').Append(one ? single : many);
            return end;
        }

        return at;
    }
}
