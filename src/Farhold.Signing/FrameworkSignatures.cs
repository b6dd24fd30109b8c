using System.Security.Cryptography;

namespace Farhold.Signing;

/// <summary>Signatures by the framework's own ECDSA, which the phone has not; there the browser checks.</summary>
public static class FrameworkSignatures
{
    /// <summary>The framework's <see cref="SignatureCheck"/>; it never waits.</summary>
    public static ValueTask<bool> CheckAsync(ReadOnlyMemory<byte> key, ReadOnlyMemory<byte> message, ReadOnlyMemory<byte> signature) =>
        new(Holds(key.Span, message.Span, signature.Span));

    private static bool Holds(ReadOnlySpan<byte> key, ReadOnlySpan<byte> message, ReadOnlySpan<byte> signature)
    {
        if (key.Length != IssuerCode.KeyBytes || signature.Length != LocalSignature.Bytes)
            return false;
        try
        {
            using var ecdsa = ECDsa.Create(
                new ECParameters
                {
                    Curve = ECCurve.NamedCurves.nistP256,
                    Q = new() { X = key[..32].ToArray(), Y = key[32..].ToArray() },
                }
            );
            return ecdsa.VerifyData(message, signature, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);
        }
        catch (CryptographicException)
        {
            return false; // no point of the curve
        }
    }
}
