using System.Collections.Immutable;

namespace Farhold.Sync;

/// <summary>By what copies of one casualty's record know each other: first lines, and identities given at the opening.</summary>
/// <param name="Lines">SHA-256 of line 1 of each device, 64 hexadecimal digits.</param>
/// <param name="Identities">As in <c>casualty.opened</c>.</param>
public sealed record Roots(ImmutableSortedSet<string> Lines, ImmutableSortedSet<string> Identities)
{
    public static Roots Of(IEnumerable<HeldLine> lines)
    {
        var first = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        var given = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        var reader = new EntryReader();
        foreach (var line in lines)
        {
            if (line.Id?.Number == 1)
                first.Add(line.Hash.ToString());
            if (
                line.Bytes.Span.IndexOf("\"casualty.opened\""u8) >= 0
                && reader.Read(line.Bytes, "line", 1)
                    is Read<Entry>.Usable { Value.Payload: Payload.CasualtyOpened { Casualty: { } identity } }
            )
                given.Add(identity);
        }

        return new(first.ToImmutable(), given.ToImmutable());
    }
}
