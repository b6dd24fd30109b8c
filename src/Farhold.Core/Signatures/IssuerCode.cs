using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;

namespace Farhold.Signatures;

/// <summary>Who issues local protocols: a public key with the name and role it stands for.</summary>
public sealed record IssuerCode
{
    public const string First = "farhold issuer v1";

    public const int KeyBytes = 64;

    private static readonly UInt128 TenToTheTwentieth = (UInt128)10_000_000_000 * 10_000_000_000;

    private IssuerCode(string key, string name, string role) => (Key, Name, Role) = (key, name, role);

    /// <summary>The point of P-256, x before y, 64 bytes as base64url.</summary>
    public string Key { get; }

    public string Name { get; }

    public string Role { get; }

    /// <summary>
    /// Twenty digits over key, name and role, in groups of five, to be compared by voice: 66 bits, so that nobody finds another key, name
    /// or role with the same digits.
    /// </summary>
    public string Digits
    {
        get
        {
            var digits = (BinaryPrimitives.ReadUInt128BigEndian(SHA256.HashData(Write())) % TenToTheTwentieth).ToString(
                "D20",
                CultureInfo.InvariantCulture
            );
            return $"{digits[..5]} {digits[5..10]} {digits[10..15]} {digits[15..]}";
        }
    }

    public ReadOnlyMemory<byte> KeyPoint => Base64UrlText.Read(Key, KeyBytes);

    /// <summary>As it is given out: text, and what a QR code of it holds.</summary>
    public byte[] Write() => HeadLines.Write(First, ("key", Key), ("name", Name), ("role", Role));

    public static Read<IssuerCode> Read(ReadOnlySpan<byte> utf8, string file)
    {
        var (values, refusal) = HeadLines.Read(utf8, file, First, "key", "name", "role");
        return refusal is null ? Of(values[0], values[1], values[2], file) : new Read<IssuerCode>.Refused([refusal]);
    }

    public static Read<IssuerCode> Of(string key, string name, string role, string file)
    {
        var refusals = ImmutableArray.CreateBuilder<Refusal>();
        if (Base64UrlText.Read(key, KeyBytes) is null)
            refusals.Add(new(file, 2, 6, "the key has to be 64 bytes as base64url: a point of P-256"));
        if (LegibleName.Fault(name) is { } name1)
            refusals.Add(new(file, 3, 7, $"the name {name1}"));
        if (LegibleName.Fault(role) is { } role1)
            refusals.Add(new(file, 4, 7, $"the role {role1}"));
        return refusals.Count == 0
            ? new Read<IssuerCode>.Usable(new(key, name, role))
            : new Read<IssuerCode>.Refused(refusals.ToImmutable());
    }
}
