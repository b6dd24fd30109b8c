using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Farhold.Sync;

/// <summary>Roots on the wire: <c>{"lines":["…64 hex…"],"identities":["…"]}</c>.</summary>
public static class RootsReader
{
    private const int MostIdentities = 20,
        LongestIdentity = 64;

    public static Read<Roots> Read(ReadOnlyMemory<byte> body, string file) =>
        new LocatedJson(body, file, maxDepth: 3).Whole("roots", Compose);

    private static Roots? Compose(LocatedJson file, Located root)
    {
        file.OnlyKnown(root, "lines", "identities");
        var lines = file.Items(root, "lines", required: false);
        var identities = file.Items(root, "identities", required: false);
        if (lines.Length > SyncLimits.MaxDevices || identities.Length > MostIdentities)
            file.Refuse(
                root.Offset,
                string.Create(CultureInfo.InvariantCulture, $"at most {SyncLimits.MaxDevices} lines and {MostIdentities} identities")
            );
        if (lines.IsEmpty && identities.IsEmpty)
            file.Refuse(root.Offset, "there is no root: a first line or an identity");
        foreach (var line in lines.Where(l => LineHash.TryParse(Encoding.UTF8.GetBytes(l.Text)) is null))
            file.RefuseValue(line, "a line", "a hash of 64 hexadecimal digits, lower case");
        foreach (var identity in identities)
            file.TextOf(identity, "an identity", LongestIdentity);
        return new(
            lines.Select(l => l.Text).ToImmutableSortedSet(StringComparer.Ordinal),
            identities.Select(i => i.Text).ToImmutableSortedSet(StringComparer.Ordinal)
        );
    }
}
