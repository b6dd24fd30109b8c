using System.Collections.Immutable;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Exchange.Qr;

/// <summary>A whole record in few bytes, with its SHA-256 before it; unpacked, every line is the same byte for byte.</summary>
/// <remarks>
/// 32 bytes SHA-256 of what follows; one byte form; then the lines, deflated (RFC 1951). In form 1 links that follow from the
/// lines before are left empty, since random digits do not deflate; form 0 has the lines as they are.
/// </remarks>
public static class Pack
{
    /// <summary>Largest text that is unpacked, in bytes: some thirty thousand entries.</summary>
    public const int MaxText = 8 * 1024 * 1024;

    private const int HashLength = 32;
    private const byte Plain = 0;
    private const byte WithoutLinks = 1;

    public static byte[] Of(CareRecord record)
    {
        var lines = record.Entries.Select(e => e.Json.ToString()).Concat(record.Damaged.Select(d => d.Raw.ToString())).ToArray();
        var bare = Links.Empty(lines);
        var exact = Links.Fill(bare).SequenceEqual(lines, StringComparer.Ordinal);
        var body = Deflated(exact ? WithoutLinks : Plain, exact ? bare : lines);
        return [.. SHA256.HashData(body), .. body];
    }

    /// <summary>A text that is no record, such as a scenario.</summary>
    public static byte[] OfText(ReadOnlySpan<byte> utf8)
    {
        using var packed = new MemoryStream();
        packed.WriteByte(Plain);
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(utf8);
        var body = packed.ToArray();
        return [.. SHA256.HashData(body), .. body];
    }

    /// <summary>The record file's bytes, or null where the pack is damaged in any way.</summary>
    public static byte[]? Unpack(ReadOnlySpan<byte> pack)
    {
        if (pack.Length <= HashLength + 1 || !SHA256.HashData(pack[HashLength..]).AsSpan().SequenceEqual(pack[..HashLength]))
            return null;
        var form = pack[HashLength];
        if (form is not (Plain or WithoutLinks) || Inflated(pack[(HashLength + 1)..].ToArray()) is not { } text)
            return null;
        return form == Plain
            ? text
            : Encoding.UTF8.GetBytes(string.Concat(Links.Fill(Encoding.UTF8.GetString(text).Split('\n')[..^1]).Select(l => l + "\n")));
    }

    private static byte[] Deflated(byte form, IEnumerable<string> lines)
    {
        using var packed = new MemoryStream();
        packed.WriteByte(form);
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            foreach (var line in lines)
                deflate.Write(Encoding.UTF8.GetBytes(line + "\n"));
        return packed.ToArray();
    }

    private static byte[]? Inflated(byte[] packed)
    {
        using var text = new MemoryStream();
        using var inflate = new DeflateStream(new MemoryStream(packed), CompressionMode.Decompress);
        var buffer = new byte[64 * 1024];
        try
        {
            for (int n; (n = inflate.Read(buffer)) > 0; )
            {
                if (text.Length + n > MaxText)
                    return null;
                text.Write(buffer, 0, n);
            }
        }
        catch (InvalidDataException)
        {
            return null;
        }

        return text.ToArray();
    }
}

/// <summary>Takes out of lines the links that can be told from the lines before them, and puts them back.</summary>
internal static class Links
{
    private const string Mark = "\",\"" + EntryChain.Field + "\":\"";
    private const int Digits = 64;

    public static ImmutableArray<string> Empty(IEnumerable<string> lines) =>
        Changed(
            lines,
            (line, at, link) => link is not null && string.CompareOrdinal(line, at, link, 0, Digits) == 0 ? line.Remove(at, Digits) : line,
            keeps: true
        );

    public static ImmutableArray<string> Fill(IEnumerable<string> lines) =>
        Changed(
            lines,
            (line, at, link) => link is not null && at < line.Length && line[at] == '"' ? line.Insert(at, link) : line,
            keeps: false
        );

    /// <param name="keeps">Links are counted from the lines given; else from the changed ones.</param>
    private static ImmutableArray<string> Changed(IEnumerable<string> lines, Func<string, int, string?, string> change, bool keeps)
    {
        var last = new Dictionary<EntryId, string>();
        var changed = ImmutableArray.CreateBuilder<string>();
        foreach (var line in lines)
        {
            if (IdOf(line, out var at) is not { } id)
            {
                changed.Add(line);
                continue;
            }

            var before = last.GetValueOrDefault(id with { Number = id.Number - 1 });
            var now = at < 0 ? line : change(line, at, before);
            changed.Add(now);
            last[id] = EntryChain.LinkTo(JsonText.Of(keeps ? line : now));
        }

        return changed.ToImmutable();
    }

    /// <summary>The id a line begins with, and where its link's digits begin; −1 if it has none just there.</summary>
    private static EntryId? IdOf(string line, out int link)
    {
        const string begin = "{\"id\":\"";
        link = -1;
        if (!line.StartsWith(begin, StringComparison.Ordinal))
            return null;
        var end = line.IndexOf('"', begin.Length);
        if (end < 0 || EntryId.TryParse(line.AsSpan(begin.Length, end - begin.Length)) is not { } id)
            return null;
        if (string.CompareOrdinal(line, end, Mark, 0, Mark.Length) == 0)
            link = end + Mark.Length;
        return id;
    }
}
