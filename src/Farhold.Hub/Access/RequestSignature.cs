using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>
/// A request signed by a device: the profile of RFC 9421 (HTTP Message Signatures) that Farhold speaks, with algorithm
/// <c>ecdsa-p256-sha256</c>.
/// </summary>
/// <remarks>
/// One signature named <c>sig</c>; its parameters <c>created</c>, <c>keyid</c>, <c>nonce</c> and <c>alg</c> in this order. What it covers
/// depends on the request and is not the sender's to choose: see <see cref="Expected"/>.
/// </remarks>
/// <param name="Parameters">The value of <c>@signature-params</c>, as it came.</param>
/// <param name="Value">r and s, 32 bytes each.</param>
internal sealed partial record RequestSignature(
    ImmutableArray<string> Covered,
    Instant Created,
    string Thumb,
    string Nonce,
    string Parameters,
    byte[] Value
)
{
    public const string InputHeader = "Signature-Input",
        Header = "Signature",
        DigestHeader = "Content-Digest",
        HeadHeader = "Farhold-Head";

    private static readonly ImmutableArray<string> Always = ["@method", "@authority", "@path"];

    /// <summary>Null where the request has none, or one of another form.</summary>
    public static RequestSignature? Of(HttpRequest request)
    {
        if (request.Headers[InputHeader] is not [{ } input] || request.Headers[Header] is not [{ } value])
            return null;
        var (parts, signature) = (Input().Match(input), Signature().Match(value));
        if (!parts.Success || !signature.Success)
            return null;
        var bytes = new byte[64];
        if (!Convert.TryFromBase64String(signature.Groups["value"].Value, bytes, out var length) || length != bytes.Length)
            return null;
        return new(
            [.. Name().Matches(parts.Groups["covered"].Value).Select(m => m.Groups["name"].Value)],
            Instant.FromUnixTimeSeconds(long.Parse(parts.Groups["created"].ValueSpan, CultureInfo.InvariantCulture)),
            parts.Groups["key"].Value,
            parts.Groups["nonce"].Value,
            parts.Groups["parameters"].Value,
            bytes
        );
    }

    /// <summary>What a signature of a request has to cover.</summary>
    /// <param name="body">The header that stands for the body; null where there is none.</param>
    public static ImmutableArray<string> Expected(string? body) => body is null ? Always : Always.Add(body.ToLowerInvariant());

    /// <summary>What is signed (RFC 9421, section 2.5).</summary>
    public string Base(HttpRequest request)
    {
        var text = new StringBuilder();
        foreach (var name in Covered)
        {
            var value = name switch
            {
                "@method" => request.Method,
                "@authority" => request.Host.Value!.ToLowerInvariant(),
                "@path" => request.PathBase.ToUriComponent() + request.Path.ToUriComponent(),
                _ => request.Headers[name].ToString().Trim(),
            };
            text.Append(CultureInfo.InvariantCulture, $"\"{name}\": {value}\n");
        }

        return text.Append(CultureInfo.InvariantCulture, $"\"@signature-params\": {Parameters}").ToString();
    }

    /// <param name="key">A point of P-256, uncompressed.</param>
    public bool IsBy(ReadOnlySpan<byte> key, string signed)
    {
        if (ImportOf(key) is not { } known)
            return false;
        using (known)
            return known.VerifyData(Encoding.UTF8.GetBytes(signed), Value, HashAlgorithmName.SHA256);
    }

    /// <summary>Null where the bytes are no point of the curve.</summary>
    public static ECDsa? ImportOf(ReadOnlySpan<byte> key)
    {
        if (key.Length != 65 || key[0] != 4)
            return null;
        try
        {
            return ECDsa.Create(
                new ECParameters
                {
                    Curve = ECCurve.NamedCurves.nistP256,
                    Q = new() { X = key[1..33].ToArray(), Y = key[33..].ToArray() },
                }
            );
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    /// <summary>The value of a digest header: <c>sha-256=:…:</c> (RFC 9530).</summary>
    public static string Digest(ReadOnlySpan<byte> bytes) => $"sha-256=:{Convert.ToBase64String(SHA256.HashData(bytes))}:";

    [GeneratedRegex(
        "^sig=(?<parameters>\\((?<covered>\"[a-z@-]{1,40}\"( \"[a-z@-]{1,40}\"){0,7})\\);created=(?<created>[0-9]{1,11})"
            + ";keyid=\"(?<key>[0-9a-f]{64})\";nonce=\"(?<nonce>[A-Za-z0-9_-]{16,64})\";alg=\"ecdsa-p256-sha256\")$"
    )]
    private static partial Regex Input();

    [GeneratedRegex("\"(?<name>[a-z@-]+)\"")]
    private static partial Regex Name();

    [GeneratedRegex("^sig=:(?<value>[A-Za-z0-9+/]{86}==):$")]
    private static partial Regex Signature();
}
