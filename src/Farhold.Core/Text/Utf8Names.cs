using System.Text;

namespace Farhold.Text;

/// <summary>A fixed list of names looked up by their UTF-8 bytes, without allocation.</summary>
internal sealed class Utf8Names
{
    private readonly (byte[] Name, int Index)[][] byLength;

    public Utf8Names(IReadOnlyList<string> names)
    {
        var longest = names.Max(n => n.Length);
        byLength = new (byte[], int)[longest + 1][];
        for (var length = 0; length <= longest; length++)
            byLength[length] =
            [
                .. names.Index().Where(n => n.Item.Length == length).Select(n => (Encoding.ASCII.GetBytes(n.Item), n.Index)),
            ];
    }

    /// <returns>The position of the name in the list, or -1.</returns>
    public int IndexOf(ReadOnlySpan<byte> name)
    {
        if (name.Length < byLength.Length)
            foreach (var (known, index) in byLength[name.Length])
                if (name.SequenceEqual(known))
                    return index;
        return -1;
    }
}
