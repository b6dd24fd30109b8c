using System.Globalization;
using System.Text;

namespace Farhold.Exchange.HandOver;

/// <summary>Text as it is said over a bad radio.</summary>
/// <remarks>Spelling alphabet: ICAO Annex 10, volume II (from memory). Digits are said one by one (common practice).</remarks>
public static class SpokenText
{
    private static readonly string[] Digits = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    private static readonly string[] Letters =
    [
        "Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo", "Lima", "Mike", "November",
        "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor", "Whiskey", "X-ray", "Yankee", "Zulu",
    ];

    /// <summary>Longest first, so that <c>min</c> is not read as metres.</summary>
    private static readonly (string Unit, string One, string Many)[] Units =
    [
        ("/min", "per minute", "per minute"), ("mmHg", "millimetre of mercury", "millimetres of mercury"), ("min", "minute", "minutes"),
        ("°C", "degree Celsius", "degrees Celsius"), ("mL", "millilitre", "millilitres"), ("kg", "kilogram", "kilograms"),
        ("mg", "milligram", "milligrams"), ("%", "per cent", "per cent"), ("h", "hour", "hours"), ("d", "day", "days"),
        ("g", "gram", "grams"), ("s", "second", "seconds"),
    ];

    /// <summary>No digit is left: <c>128 /min</c> becomes <c>one two eight per minute</c>, <c>04:10</c> becomes <c>zero four one zero</c>.</summary>
    public static string Of(string line)
    {
        var said = new StringBuilder(line.Length * 2);
        for (var i = 0; i < line.Length;)
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

    private static string Spelled(Rune rune) => rune.Value switch
    {
        >= 'a' and <= 'z' => Letters[rune.Value - 'a'],
        >= 'A' and <= 'Z' => Letters[rune.Value - 'A'],
        >= '0' and <= '9' => Digits[rune.Value - '0'],
        ' ' => "space",
        '-' => "dash",
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
                said.Append(" decimal");
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
