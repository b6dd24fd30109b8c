using System.Collections.Immutable;

namespace Farhold.Signatures;

/// <summary>An issuer's word, signed by its key, that another key takes the place of it.</summary>
/// <param name="From">Digits of the issuer as pinned so far.</param>
/// <param name="Signature">By the key so far, over all the rest; 64 bytes as base64url.</param>
public sealed record KeyRotation(string From, IssuerCode To, string Signature)
{
    public const string First = "farhold issuer rotation v1";

    public static byte[] Message(string from, IssuerCode to) => HeadLines.Write(First, Lines(from, to));

    public byte[] Write() => HeadLines.Write(First, Lines(From, To).Append(("signature", Signature)));

    public static Read<KeyRotation> Read(ReadOnlySpan<byte> utf8, string file)
    {
        var (values, refusal) = HeadLines.Read(utf8, file, First, "from", "key", "name", "role", "signature");
        if (refusal is not null)
            return new Read<KeyRotation>.Refused([refusal]);
        if (IssuerCode.Of(values[1], values[2], values[3], file) is not Read<IssuerCode>.Usable { Value: var to })
            return new Read<KeyRotation>.Refused(((Read<IssuerCode>.Refused)IssuerCode.Of(values[1], values[2], values[3], file)).Refusals);
        return Base64UrlText.Read(values[4], LocalSignature.Bytes) is null
            ? new Read<KeyRotation>.Refused([new(file, 6, 1, "signature has to be 64 bytes as base64url")])
            : new Read<KeyRotation>.Usable(new(values[0], to, values[4]));
    }

    private static IEnumerable<(string, string)> Lines(string from, IssuerCode to) =>
        [("from", from), ("key", to.Key), ("name", to.Name), ("role", to.Role)];
}
