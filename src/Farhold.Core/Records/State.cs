using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>Everything that counts, by kind, in order of time: a function of the set of entries.</summary>
/// <remarks>Immutable. Equality is identity: compare <see cref="All"/> for content.</remarks>
public sealed class State
{
    public static readonly State Empty = new([.. Enumerable.Repeat(ImmutableArray<Dated>.Empty, Kinds.Count)]);

    private readonly ImmutableArray<ImmutableArray<Dated>> byKind;
    private Dictionary<string, ImmutableArray<Dated>>? checks;
    private object[] kept = [];

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

    /// <summary>Those of <see cref="Kind.BleedingChecked"/> that are about one wound, in the same order.</summary>
    internal ImmutableArray<Dated> ChecksOf(string wound)
    {
        checks ??= Of(Kind.BleedingChecked)
            .GroupBy(d => d.As<Payload.BleedingChecked>().Wound)
            .ToDictionary(g => g.Key, g => g.ToImmutableArray());
        return checks.TryGetValue(wound, out var found) ? found : [];
    }

    /// <summary>
    /// What is worked out of a state once, when it is first asked for, and kept beside it; one that grows goes on to
    /// <see cref="Plus"/>.
    /// </summary>
    internal T Kept<T>(Func<State, T> make)
        where T : class
    {
        foreach (var one in kept)
            if (one is T known)
                return known;
        var made = make(this);
        kept = [.. kept, made];
        return made;
    }

    public State Plus(Dated entry)
    {
        var kind = Kinds.Of(entry.What);
        var more = new State(byKind.SetItem((int)kind, DatedOrder.Insert(Of(kind), entry)))
        {
            checks = kind == Kind.BleedingChecked ? null : checks,
        };
        more.kept = [.. kept.OfType<IGrowing>().Select(k => k.Plus(entry, more))];
        return more;
    }
}

/// <summary>Kept beside a state, and made for one entry more without beginning anew.</summary>
internal interface IGrowing
{
    /// <param name="more">The state with the entry.</param>
    object Plus(Dated entry, State more);
}
