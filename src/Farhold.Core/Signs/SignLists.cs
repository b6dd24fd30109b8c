using System.Collections.Immutable;

namespace Farhold;

/// <summary>Signs taken, sorted out by what they tell of: the last that tells of one thing may lie far behind the others.</summary>
/// <remarks>A list is made when it is first asked for, and grows with the record.</remarks>
internal sealed class SignLists(ImmutableArray<Dated> taken)
{
    private readonly ImmutableArray<Dated>[] lists = new ImmutableArray<Dated>[SignRead.All.Length];

    public ImmutableArray<Dated> Of(SignRead sign)
    {
        if (lists[sign.Index] is { IsDefault: false } known)
            return known;
        return lists[sign.Index] = [.. taken.Where(sign.Tells)];
    }

    /// <param name="more">What was taken, with the entry.</param>
    public SignLists Plus(Dated entry, ImmutableArray<Dated> more)
    {
        var grown = new SignLists(more);
        foreach (var sign in SignRead.All)
            if (lists[sign.Index] is { IsDefault: false } known)
                grown.lists[sign.Index] = sign.Tells(entry) ? DatedOrder.Insert(known, entry) : known;
        return grown;
    }
}
