using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Farhold.Signatures;

/// <summary>An issuer whose digits were compared, and the newest that was taken in from it.</summary>
/// <param name="Serial">0 where nothing was.</param>
/// <param name="File">Hash of the file with that serial; empty where nothing was.</param>
public sealed record PinnedIssuer(IssuerCode Code, long Serial, string File);

/// <summary>The issuers trusted on this device.</summary>
public sealed record Keyring(ImmutableArray<PinnedIssuer> Issuers)
{
    public static readonly Keyring Empty = new([]);

    public PinnedIssuer? Named(string digits) => Issuers.FirstOrDefault(i => i.Code.Digits == digits);

    /// <summary>Trusts an issuer. What was seen of the same one stays seen.</summary>
    public Keyring Pin(IssuerCode code) => Named(code.Digits) is not null ? this : new(Issuers.Add(new(code, 0, "")));

    public Keyring Without(string digits) => new(Issuers.RemoveAll(i => i.Code.Digits == digits));

    /// <summary>Remembers what was taken in, so that nothing older is taken after it.</summary>
    public Keyring Seen(Proof proof, ReadOnlySpan<byte> file)
    {
        if (proof.Head is not { } head || Named(head.Issuer) is not { } pinned || head.Serial <= pinned.Serial)
            return this;
        return new(Issuers.Replace(pinned, pinned with { Serial = head.Serial, File = FileHash.Of(file) }));
    }

    /// <summary>Puts another key in the place of a trusted one, if that one signed it.</summary>
    public async ValueTask<Read<Keyring>> RotateAsync(KeyRotation rotation, string name, SignatureCheck check)
    {
        if (Named(rotation.From) is not { } pinned)
            return Refuse(2, $"nobody with the digits {rotation.From} is trusted here");
        if (Named(rotation.To.Digits) is not null)
            return Refuse(3, "the new key is trusted here already");
        if (
            !await check(
                pinned.Code.KeyPoint,
                KeyRotation.Message(rotation.From, rotation.To),
                Base64UrlText.Read(rotation.Signature, LocalSignature.Bytes)
            )
        )
            return Refuse(6, "the signature does not fit: the old key did not sign this");
        return new Read<Keyring>.Usable(new(Issuers.Replace(pinned, pinned with { Code = rotation.To })));

        Read<Keyring> Refuse(int line, string reason) => new Read<Keyring>.Refused([new(name, line, 1, reason)]);
    }

    public byte[] Write()
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, new() { Indented = true }))
        {
            w.WriteStartObject();
            w.WriteStartArray("issuers");
            foreach (var issuer in Issuers)
            {
                w.WriteStartObject();
                w.WriteString("code", issuer.Code.Write());
                w.WriteNumber("serial", issuer.Serial);
                w.WriteString("file", issuer.File);
                w.WriteEndObject();
            }

            w.WriteEndArray();
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    /// <summary>As <see cref="Write"/> wrote it; one fault refuses it, since half a keyring would forget what was seen.</summary>
    public static Read<Keyring> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(
            utf8,
            file,
            "a list of trusted issuers",
            (json, root) =>
            {
                json.OnlyKnown(root, "issuers");
                var issuers = json.Items(root, "issuers").Select(i => Issuer(json, i)).OfType<PinnedIssuer>().ToImmutableArray();
                if (issuers.Select(i => i.Code.Digits).Distinct().Count() != issuers.Length)
                    json.Refuse(root.Offset, "an issuer is given twice");
                return new Keyring(issuers);
            }
        );

    private static PinnedIssuer? Issuer(LocatedJson json, Located item)
    {
        if (!json.IsObject(item, "an issuer"))
            return null;
        json.OnlyKnown(item, "code", "serial", "file");
        var code = IssuerCode.Read(Encoding.UTF8.GetBytes(json.Text(item, "code")), "code");
        if (code is Read<IssuerCode>.Refused refused)
            json.Refuse(item.Offset, refused.Refusals[0].Reason);
        if (
            item["serial"] is not { Kind: JsonValueKind.Number } given
            || !long.TryParse(given.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var serial)
        )
        {
            json.RefuseValue(item["serial"] ?? item, "serial", "a whole number");
            return null;
        }

        return code is Read<IssuerCode>.Usable usable ? new(usable.Value, serial, item["file"]?.Text ?? "") : null;
    }
}
