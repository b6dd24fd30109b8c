using System.Globalization;

namespace Farhold.Records;

/// <summary>Device id and the entry's number on that device, counted from 1 without gaps. Written <c>device-number</c>.</summary>
/// <remarks><c>default</c> has a null device and names no entry. Ordered by device (ordinal), then number.</remarks>
public readonly record struct EntryId(string Device, int Number) : IComparable<EntryId>
{
    /// <summary>The id written as <paramref name="text"/>, or null if it has not the form device, dash, number from 1.</summary>
    public static EntryId? TryParse(ReadOnlySpan<char> text)
    {
        var dash = text.LastIndexOf('-');
        if (dash is < 1 or > 64 || !IsDevice(text[..dash]))
            return null;
        var digits = text[(dash + 1)..];
        return
            digits.Length is > 0 and < 11
            && digits[0] != '0'
            && int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? new EntryId(text[..dash].ToString(), number)
            : null;
    }

    public int CompareTo(EntryId other)
    {
        var byDevice = string.CompareOrdinal(Device, other.Device);
        return byDevice != 0 ? byDevice : Number.CompareTo(other.Number);
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Device}-{Number}");

    public static bool operator <(EntryId left, EntryId right) => left.CompareTo(right) < 0;

    public static bool operator >(EntryId left, EntryId right) => left.CompareTo(right) > 0;

    public static bool operator <=(EntryId left, EntryId right) => left.CompareTo(right) <= 0;

    public static bool operator >=(EntryId left, EntryId right) => left.CompareTo(right) >= 0;

    private static bool IsDevice(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
            if (!char.IsAsciiLetterOrDigit(c) && c is not ('_' or '-' or '.'))
                return false;
        return true;
    }
}
