namespace Farhold.WayOut.Ground;

/// <summary>Tells line and column of places in a text that comes piece by piece. Lines end as XML has it: LF, CR LF or CR.</summary>
internal sealed class XmlLines
{
    private readonly List<int> starts = [0];
    private int line = 1;
    private int length;
    private int afterReturn = -1;

    public void Add(ReadOnlySpan<char> text)
    {
        for (int at = 0, found; (found = text[at..].IndexOfAny('\r', '\n')) >= 0; )
        {
            at += found + 1;
            var start = length + at;
            if (text[at - 1] == '\n' && afterReturn == start - 1)
                starts[^1] = start;
            else
                starts.Add(start);
            if (text[at - 1] == '\r')
                afterReturn = start;
        }

        length += text.Length;
    }

    /// <param name="at">UTF-16 units from the beginning; never less than the time before.</param>
    /// <returns>Both from 1; columns in UTF-16 units.</returns>
    public (int Line, int Column) Place(int at)
    {
        at = Math.Min(at, length);
        while (line < starts.Count && starts[line] <= at)
            line++;
        return (line, at - starts[line - 1] + 1);
    }
}
