using System.Collections;

namespace Farhold.Limbs;

/// <summary>Names of wounds, each once, in the order in which they were first mentioned.</summary>
/// <remarks>Whether one is among them is answered quickly however many there are.</remarks>
public sealed class WoundNames : IReadOnlyList<string>
{
    /// <summary>Up to so many a list is quicker than a table.</summary>
    private const int Few = 8;

    public static readonly WoundNames None = new([]);

    private readonly List<string> inOrder = [];
    private readonly HashSet<string>? table;

    /// <param name="names">Any may come several times.</param>
    internal WoundNames(IEnumerable<string> names)
    {
        foreach (var name in names)
        {
            if (inOrder.Count > Few)
                table ??= new(inOrder, StringComparer.Ordinal);
            if (table is null ? !inOrder.Contains(name) : table.Add(name))
                inOrder.Add(name);
        }
    }

    public int Count => inOrder.Count;

    public bool IsEmpty => inOrder.Count == 0;

    public string this[int index] => inOrder[index];

    public bool Contains(string name) => table is null ? inOrder.Contains(name) : table.Contains(name);

    public IEnumerator<string> GetEnumerator() => inOrder.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
