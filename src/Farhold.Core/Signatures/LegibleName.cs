using System.Globalization;
using System.Text;

namespace Farhold.Signatures;

/// <summary>Names and roles of those who answer for a protocol: every character of them is seen, and none turns the writing.</summary>
public static class LegibleName
{
    public const int Longest = 80;

    /// <summary>Letters by their category that show nothing.</summary>
    private static readonly HashSet<int> Fillers = [0x115F, 0x1160, 0x3164, 0xFFA0, 0x17B4, 0x17B5];

    /// <summary>Why a text can't be a name, or null.</summary>
    /// <param name="least">Letters that it takes at the least.</param>
    public static string? Fault(string text, int longest = Longest, int least = 2)
    {
        if (text.Length == 0 || text.Length > longest)
            return string.Create(CultureInfo.InvariantCulture, $"has to have 1 to {longest} characters");
        if (text[0] == ' ' || text[^1] == ' ' || text.Contains("  ", StringComparison.Ordinal))
            return "may have no spaces at its ends, and none doubled";
        var letters = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune == Rune.ReplacementChar || !Seen(rune))
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"holds a character that can't be seen or read by everybody (U+{rune.Value:X4})"
                );
            letters += Rune.IsLetter(rune) ? 1 : 0;
        }

        return letters >= least ? null
            : least == 2 ? "has to have at least two letters"
            : "has to have a letter";
    }

    private static bool Seen(Rune rune) =>
        rune.Value == ' '
        || Rune.GetUnicodeCategory(rune) switch
        {
            UnicodeCategory.UppercaseLetter
            or UnicodeCategory.LowercaseLetter
            or UnicodeCategory.TitlecaseLetter
            or UnicodeCategory.OtherLetter
            or UnicodeCategory.DecimalDigitNumber => !Fillers.Contains(rune.Value),
            UnicodeCategory.DashPunctuation
            or UnicodeCategory.OtherPunctuation
            or UnicodeCategory.OpenPunctuation
            or UnicodeCategory.ClosePunctuation => rune.Value <= 0x7E || rune.Value is 0x2013 or 0x2019,
            UnicodeCategory.FinalQuotePunctuation => rune.Value == 0x2019,
            _ => false,
        };
}
