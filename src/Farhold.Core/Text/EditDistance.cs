namespace Farhold.Text;

/// <summary>How far one word is from another, to find which was meant.</summary>
public static class EditDistance
{
    /// <summary>Letters to change, add or drop (Levenshtein 1966).</summary>
    public static int Between(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }

        return row[^1];
    }
}
