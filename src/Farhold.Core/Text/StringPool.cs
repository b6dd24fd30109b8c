using System.Text;

namespace Farhold.Text;

/// <summary>Gives one string for equal short ASCII bytes, so that a long record does not hold its names thousands of times.</summary>
internal sealed class StringPool
{
    private readonly string?[] slots = new string?[256];

    public string Get(ReadOnlySpan<byte> utf8)
    {
        if (utf8.Length is 0 or > 40)
            return Encoding.UTF8.GetString(utf8);
        unchecked
        {
            var slot = (utf8[0] + (utf8[^1] * 31) + (utf8[utf8.Length / 2] * 7) + (utf8.Length * 61)) & 255;
            var held = slots[slot];
            if (held is not null && Ascii.Equals(utf8, held))
                return held;
            return slots[slot] = Encoding.UTF8.GetString(utf8);
        }
    }
}
