using System.Globalization;

namespace Farhold.App.Parts;

/// <summary>What has been typed on a number pad.</summary>
/// <param name="Digits">As typed, with at most one point, and a minus before them where the range goes below zero.</param>
public sealed record PadEntry(string Digits, double Min, double Max, int Decimals)
{
    private const int Least = 7;

    /// <summary>The number, if there is one within the range.</summary>
    public double? Value => Parsed is { } n && n >= Min && n <= Max ? n : null;

    /// <summary>There is a number, it is outside, and typing more can't bring it inside.</summary>
    public bool OutOfRange => Parsed is { } n && (n > Max || (n < Min && (n < 0 || Digits.Length >= Text(Max).Length)));

    private double? Parsed =>
        double.TryParse(Digits, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n)
            ? n
            : null;

    public static PadEntry Of(double? value, double min, double max, int decimals)
    {
        var empty = new PadEntry("", min, max, decimals);
        return value is { } n ? empty with { Digits = empty.Text(n) } : empty;
    }

    /// <summary>Signs that find room: never fewer than the range's longest number has.</summary>
    private int Longest => Math.Max(Least, Math.Max(Text(Max).Length, Text(Min).Length) + (Decimals > 0 ? Decimals + 1 : 0));

    /// <param name="key">A digit, a point, or a minus, which turns the sign.</param>
    public PadEntry Press(char key)
    {
        if (key == '-')
            return Min >= 0 ? this : this with { Digits = Digits.StartsWith('-') ? Digits[1..] : "-" + Digits };
        if (Digits.Length >= Longest)
            return this;
        var point = Digits.IndexOf('.', StringComparison.Ordinal);
        if (key == '.')
            return Decimals == 0 || point >= 0 ? this : this with { Digits = Digits is "" or "-" ? Digits + "0." : Digits + "." };
        if (point >= 0 && Digits.Length - point > Decimals)
            return this;
        return this with { Digits = (Digits is "0" or "-0" ? Digits[..^1] : Digits) + key };
    }

    public PadEntry Back() => this with { Digits = Digits.Length == 0 ? "" : Digits[..^1] };

    public PadEntry Clear() => this with { Digits = "" };

    public string Text(double number) => Math.Round(number, Decimals).ToString(CultureInfo.InvariantCulture);
}
