namespace Farhold.Records;

/// <summary>Different entries under one id, each once, whatever order they came in.</summary>
internal sealed class Variants
{
    private readonly Dictionary<JsonText, Entry> byMeaning;
    private JsonText least;
    private Entry[]? sorted;

    /// <param name="meaning">The canonical form of the entry.</param>
    public Variants(JsonText meaning, Entry entry) => (byMeaning, least) = (new() { [meaning] = entry }, meaning);

    public int Count => byMeaning.Count;

    /// <summary>The one whose canonical form comes first.</summary>
    public Entry First => byMeaning[least];

    /// <summary>By the bytes of their canonical forms.</summary>
    public Entry[] Sorted
    {
        get
        {
            if (sorted is null)
            {
                var keys = byMeaning.Keys.ToArray();
                Array.Sort(keys, (a, b) => a.Utf8.Span.SequenceCompareTo(b.Utf8.Span));
                sorted = [.. keys.Select(k => byMeaning[k])];
            }

            return sorted;
        }
    }

    /// <returns>False if one of the same meaning is here already.</returns>
    public bool Add(JsonText meaning, Entry entry)
    {
        if (!byMeaning.TryAdd(meaning, entry))
            return false;
        if (meaning.Utf8.Span.SequenceCompareTo(least.Utf8.Span) < 0)
            least = meaning;
        sorted = null;
        return true;
    }
}
