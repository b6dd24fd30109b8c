using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>Everything that counts, by kind, in order of time: a function of the set of entries.</summary>
/// <remarks>Immutable. Equality is identity: compare <see cref="All"/> for content.</remarks>
public sealed class State
{
    public static readonly State Empty = new([.. Enumerable.Repeat(ImmutableArray<Dated>.Empty, Kinds.Count)]);

    private readonly ImmutableArray<ImmutableArray<Dated>> byKind;
    private readonly SignLists signs;
    private Dictionary<string, ImmutableArray<Dated>>? checks;
    private Asked? asked;

    private State(ImmutableArray<ImmutableArray<Dated>> byKind, SignLists? signs = null) =>
        (this.byKind, this.signs) = (byKind, signs ?? new(byKind[(int)Kind.SignsTaken]));

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

    /// <summary>Those of <see cref="Kind.SignsTaken"/> that tell of one thing, in the same order.</summary>
    internal ImmutableArray<Dated> WithSign(SignRead sign) => signs.Of(sign);

    /// <summary>Those of <see cref="Kind.BleedingChecked"/> that are about one wound, in the same order.</summary>
    internal ImmutableArray<Dated> ChecksOf(string wound)
    {
        checks ??= Of(Kind.BleedingChecked).GroupBy(d => d.As<Payload.BleedingChecked>().Wound).ToDictionary(g => g.Key, g => g.ToImmutableArray());
        return checks.TryGetValue(wound, out var found) ? found : [];
    }

    /// <summary>Values that are asked back; made once for an instant.</summary>
    internal ImmutableArray<Question> Questions(Instant now)
    {
        if (asked is { } known && known.At == now)
            return known.Questions;
        var made = new Asked(now, Farhold.Questions.Of(this, now));
        asked = made;
        return made.Questions;
    }

    public State Plus(Dated entry)
    {
        var kind = Kinds.Of(entry.What);
        var list = DatedOrder.Insert(Of(kind), entry);
        return new(byKind.SetItem((int)kind, list), kind == Kind.SignsTaken ? signs.Plus(entry, list) : signs)
        {
            checks = kind == Kind.BleedingChecked ? null : checks,
        };
    }

    private sealed record Asked(Instant At, ImmutableArray<Question> Questions);
}
