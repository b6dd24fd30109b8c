using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NodaTime;

namespace Farhold.Sync;

/// <summary>The first line of a message: what its sender holds, the lines it sends counted in.</summary>
/// <param name="Hashes">
/// Of devices in dispute, <see cref="LineHash.Short"/> of every line held: the other side sees what is lacking on either.
/// </param>
public sealed record Head(Vector Have, ImmutableSortedDictionary<string, ImmutableArray<ulong>> Hashes)
{
    /// <summary>The version of this form that is written here, and the only one that is read.</summary>
    public const int Version = 1;

    private static readonly ImmutableSortedDictionary<string, ImmutableArray<ulong>> NoHashes = ImmutableSortedDictionary.Create<
        string,
        ImmutableArray<ulong>
    >(StringComparer.Ordinal);

    private static readonly ImmutableSortedDictionary<string, int> NoNumbers = ImmutableSortedDictionary.Create<string, int>(
        StringComparer.Ordinal
    );

    /// <summary>Of a side that holds nothing.</summary>
    public static readonly Head Empty = new(Vector.Empty, NoHashes);

    /// <summary>The sender's clock; null where it has none to go by.</summary>
    public Instant? Now { get; init; }

    /// <summary>
    /// By device, the number up to which lines exist, as others have told the sender, where it does not hold all of them itself.
    /// </summary>
    public ImmutableSortedDictionary<string, int> Known { get; init; } = NoNumbers;

    /// <summary>One line of JSON, without the line's end.</summary>
    public byte[] Write()
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream))
        {
            w.WriteStartObject();
            w.WriteNumber("sync", Version);
            w.WriteStartObject("have");
            foreach (var (device, prefix) in Have.Have)
            {
                w.WriteStartArray(device);
                w.WriteNumberValue(prefix.Length);
                w.WriteStringValue(Hex(prefix.Running));
                w.WriteEndArray();
            }

            w.WriteEndObject();
            if (!Have.Odd.IsEmpty)
                Write(w, "odd", Have.Odd);
            if (!Hashes.IsEmpty)
            {
                w.WriteStartObject("hashes");
                foreach (var (device, hashes) in Hashes)
                    Write(w, device, hashes);
                w.WriteEndObject();
            }

            if (!Known.IsEmpty)
            {
                w.WriteStartObject("known");
                foreach (var (device, last) in Known)
                    w.WriteNumber(device, last);
                w.WriteEndObject();
            }

            if (Now is { } now)
                w.WriteString("now", WrittenInstant.Write(now));
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    /// <param name="line">The first line of a message, without its end.</param>
    /// <param name="file">Named in refusals.</param>
    public static Read<Head> Read(ReadOnlyMemory<byte> line, string file) =>
        new LocatedJson(line, file, SyncLimits.MaxLine, maxDepth: 4).Whole("the head of a message", Compose);

    private static Head? Compose(LocatedJson file, Located root)
    {
        if (file.Required(root, "sync", $"the number {Version}") is not { } version)
            return null;
        if (file.Number(version, "sync", Version, Version, whole: true) is null)
            return null;
        file.OnlyKnown(root, "sync", "have", "odd", "hashes", "known", "now");
        var have = ImmutableSortedDictionary.CreateBuilder<string, Prefix>(StringComparer.Ordinal);
        if (file.Required(root, "have", "an object") is { } all && file.IsObject(all, "have") && Fits(file, all, "have"))
            foreach (var member in all.Members)
                if (IsDevice(file, member) && PrefixOf(file, member) is { } prefix)
                    have[member.Name] = prefix;
        var hashes = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<ulong>>(StringComparer.Ordinal);
        if (root["hashes"] is { } listed && file.IsObject(listed, "hashes") && Fits(file, listed, "hashes"))
            foreach (var member in listed.Members)
                if (IsDevice(file, member))
                    hashes[member.Name] = HashesOf(file, member.Value, member.Name, SyncLimits.MaxHashes);
        if (hashes.Values.Sum(h => h.Length) > SyncLimits.MaxHashes)
            file.Refuse(root["hashes"]!.Offset, string.Create(CultureInfo.InvariantCulture, $"more than {SyncLimits.MaxHashes} hashes"));
        var known = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        if (root["known"] is { } others && file.IsObject(others, "known") && Fits(file, others, "known"))
            foreach (var member in others.Members)
                if (IsDevice(file, member) && file.Number(member.Value, member.Name, 1, int.MaxValue, whole: true) is { } last)
                    known[member.Name] = (int)last;
        return new(
            new(have.ToImmutable(), [.. root["odd"] is { } odd ? HashesOf(file, odd, "odd", SyncLimits.MaxOdd) : []]),
            hashes.ToImmutable()
        )
        {
            Now = root["now"] is { } now ? file.InstantOf(now, "now") : null,
            Known = known.ToImmutable(),
        };
    }

    private static bool Fits(LocatedJson file, Located devices, string what)
    {
        if (devices.Members.Length <= SyncLimits.MaxDevices)
            return true;
        file.Refuse(
            devices.Offset,
            string.Create(CultureInfo.InvariantCulture, $"{what} names {devices.Members.Length} devices; at most {SyncLimits.MaxDevices}")
        );
        return false;
    }

    private static bool IsDevice(LocatedJson file, LocatedMember member)
    {
        if (EntryId.TryParse(member.Name + "-1") is { } id && id.Device == member.Name)
            return true;
        file.Refuse(member.Offset, $"{Plain.Line(member.Name)} is no device: letters, digits, dots, dashes and low lines");
        return false;
    }

    private static Prefix? PrefixOf(LocatedJson file, LocatedMember member)
    {
        if (
            member.Value.Items is [var length, var running]
            && file.Number(length, member.Name, 1, int.MaxValue, whole: true) is { } number
            && HashOf(file, running, member.Name) is { } hash
        )
            return new((int)number, hash);
        if (member.Value.Items is not [_, _])
            file.RefuseValue(member.Value, member.Name, "a list of a number and a hash");
        return null;
    }

    private static ImmutableArray<ulong> HashesOf(LocatedJson file, Located list, string what, int most)
    {
        if (list.Kind != JsonValueKind.Array)
            file.RefuseValue(list, what, "a list of hashes");
        else if (list.Items.Length > most)
            file.Refuse(
                list.Offset,
                string.Create(CultureInfo.InvariantCulture, $"{what} lists {list.Items.Length} hashes; at most {most}")
            );
        else
            return [.. list.Items.Select(i => HashOf(file, i, what)).OfType<ulong>()];
        return [];
    }

    private static ulong? HashOf(LocatedJson file, Located value, string what)
    {
        if (
            value.Kind == JsonValueKind.String
            && value.Text.Length == 16
            && value.Text.All(char.IsAsciiHexDigitLower)
            && ulong.TryParse(value.Text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var hash)
        )
            return hash;
        file.RefuseValue(value, what, "a hash of 16 hexadecimal digits, lower case");
        return null;
    }

    private static void Write(Utf8JsonWriter w, string name, IEnumerable<ulong> hashes)
    {
        w.WriteStartArray(name);
        foreach (var hash in hashes)
            w.WriteStringValue(Hex(hash));
        w.WriteEndArray();
    }

    private static string Hex(ulong hash) => hash.ToString("x16", CultureInfo.InvariantCulture);
}
