using System.Text;

namespace Farhold.Text;

/// <summary>The words of an enum as they stand in files: the name's parts in lower case, joined by dashes.</summary>
public static class Wire
{
    public static string Word<T>(T value)
        where T : struct, Enum => Table<T>.Words[Array.IndexOf(Table<T>.Values, value)];

    /// <summary>All words, in the order of the enum's values.</summary>
    public static IReadOnlyList<string> Words<T>()
        where T : struct, Enum => Table<T>.Words;

    public static T? Parse<T>(ReadOnlySpan<byte> utf8)
        where T : struct, Enum
    {
        var index = Table<T>.Names.IndexOf(utf8);
        return index < 0 ? null : Table<T>.Values[index];
    }

    public static T? Parse<T>(string word)
        where T : struct, Enum => Parse<T>(Encoding.UTF8.GetBytes(word));

    /// <summary><c>PartialAmputation</c> becomes <c>partial-amputation</c>.</summary>
    public static string Dashed(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        foreach (var c in name)
        {
            if (char.IsAsciiLetterUpper(c) && text.Length > 0)
                text.Append('-');
            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly T[] Values = Enum.GetValues<T>();
        public static readonly string[] Words = [.. Enum.GetNames<T>().Select(Dashed)];
        public static readonly Utf8Names Names = new(Words);
    }
}
