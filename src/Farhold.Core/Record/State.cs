using System.Collections.Immutable;

namespace Farhold;

/// <summary>Everything that counts, by kind, in order of time: a function of the set of entries.</summary>
/// <remarks>Immutable. Equality is identity: compare <see cref="All"/> for content.</remarks>
public sealed class State
{
    public static readonly State Empty = new([.. Enumerable.Repeat(ImmutableArray<Dated>.Empty, Kinds.Count)]);

    private readonly ImmutableArray<ImmutableArray<Dated>> byKind;

    private State(ImmutableArray<ImmutableArray<Dated>> byKind) => this.byKind = byKind;

    /// <summary>All that counts, kind by kind.</summary>
    public IEnumerable<Dated> All => byKind.SelectMany(k => k);

    public static State Of(IEnumerable<Dated> entries)
    {
        var lists = new List<Dated>?[Kinds.Count];
        foreach (var entry in entries)
            (lists[(int)Kinds.Of(entry.What)] ??= []).Add(entry);
        foreach (var list in lists)
            list?.Sort(DatedOrder.Instance);
        return new([.. lists.Select(l => l is null ? [] : l.ToImmutableArray())]);
    }

    /// <summary>The entries of one kind, sorted by <see cref="DatedOrder"/>.</summary>
    public ImmutableArray<Dated> Of(Kind kind) => byKind[(int)kind];

    public State Plus(Dated entry)
    {
        var kind = (int)Kinds.Of(entry.What);
        var list = byKind[kind];
        var at = list.BinarySearch(entry, DatedOrder.Instance);
        return new(byKind.SetItem(kind, list.Insert(at < 0 ? ~at : at, entry)));
    }
}
