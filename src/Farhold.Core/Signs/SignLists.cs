using System.Collections.Immutable;

namespace Farhold.Signs;

/// <summary>Signs taken, sorted out by what they tell of: the last that tells of one thing may lie far behind the others.</summary>
/// <remarks>A list is made when it is first asked for, and grows with the record.</remarks>
internal sealed class SignLists(ImmutableArray<Dated> taken) : IGrowing
{
    private readonly ImmutableArray<Dated>[] lists = new ImmutableArray<Dated>[SignRead.All.Length];

    public ImmutableArray<Dated> Of(SignRead sign)
    {
        if (lists[sign.Index] is { IsDefault: false } known)
            return known;
        return lists[sign.Index] = [.. taken.Where(sign.Tells)];
    }

    public object Plus(Dated entry, State more)
    {
        if (entry.What is not Payload.SignsTaken)
            return this;
        var grown = new SignLists(more.Of(Kind.SignsTaken));
        foreach (var sign in SignRead.All)
            if (lists[sign.Index] is { IsDefault: false } known)
                grown.lists[sign.Index] = sign.Tells(entry) ? DatedOrder.Insert(known, entry) : known;
        return grown;
    }
}

internal static class SignState
{
    extension(State state)
    {
        /// <summary>Those of <see cref="Kind.SignsTaken"/> that say something of one sign, in order.</summary>
        public ImmutableArray<Dated> WithSign(SignRead sign) => state.Kept(static s => new SignLists(s.Of(Kind.SignsTaken))).Of(sign);
    }
}
