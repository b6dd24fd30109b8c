namespace Farhold.Physiology.Arithmetic;

/// <summary>A hash of the bits of numbers: FNV-1a with 64 bits (Fowler, Noll, Vo), eight bytes a number, the lowest first.</summary>
/// <remarks>Not for numbers that are none: their bits differ between platforms.</remarks>
internal static class BitHash
{
    public const ulong Start = 0xCBF29CE484222325;
    private const ulong Prime = 0x100000001B3;

    public static ulong Add(ulong hash, double value)
    {
        var bits = BitConverter.DoubleToUInt64Bits(value);
        unchecked
        {
            for (var i = 0; i < 64; i += 8)
                hash = (hash ^ ((bits >> i) & 0xFF)) * Prime;
        }

        return hash;
    }

    public static ulong Add(ulong hash, ReadOnlySpan<double> values)
    {
        foreach (var value in values)
            hash = Add(hash, value);
        return hash;
    }

    /// <summary>Of a text in ASCII.</summary>
    public static ulong Of(ReadOnlySpan<char> text)
    {
        var hash = Start;
        unchecked
        {
            foreach (var c in text)
                hash = (hash ^ c) * Prime;
        }

        return hash;
    }
}
