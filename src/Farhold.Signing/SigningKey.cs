using System.Security.Cryptography;

namespace Farhold.Signing;

/// <summary>A private key with the name and role it stands for, as the service keeps it: the issuer's code above a PKCS 8 PEM.</summary>
public sealed class SigningKey : IDisposable
{
    private readonly ECDsa ecdsa;

    private SigningKey(ECDsa ecdsa, IssuerCode code) => (this.ecdsa, Code) = (ecdsa, code);

    /// <summary>What is given out: it holds no secret.</summary>
    public IssuerCode Code { get; }

    public static Read<SigningKey> New(string name, string role, string file)
    {
        var ecdsa = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        return Named(ecdsa, name, role, file);
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static Read<SigningKey> Read(string text, string file)
    {
        var at = text.IndexOf("-----BEGIN", StringComparison.Ordinal);
        if (at < 0)
            return Refuse("this is no signing key: there is no private key in it");
        if (IssuerCode.Read(System.Text.Encoding.UTF8.GetBytes(text[..at]), file) is not Read<IssuerCode>.Usable { Value: var code })
            return new Read<SigningKey>.Refused(
                ((Read<IssuerCode>.Refused)IssuerCode.Read(System.Text.Encoding.UTF8.GetBytes(text[..at]), file)).Refusals
            );
        var ecdsa = ECDsa.Create();
        try
        {
            ecdsa.ImportFromPem(text.AsSpan(at));
            if (ecdsa.ExportParameters(false).Curve.Oid.Value == ECCurve.NamedCurves.nistP256.Oid.Value && Point(ecdsa) == code.Key)
                return new Read<SigningKey>.Usable(new(ecdsa, code));
            ecdsa.Dispose();
            return Refuse("the private key is not the one that the code above it names");
        }
        catch (Exception e) when (e is CryptographicException or ArgumentException)
        {
            ecdsa.Dispose();
            return Refuse("the private key can't be read");
        }

        Read<SigningKey> Refuse(string reason) => new Read<SigningKey>.Refused([new(file, 1, 1, reason)]);
    }

    /// <summary>With the private key: for whoever signs, and nobody else.</summary>
    public string Write() => $"{System.Text.Encoding.UTF8.GetString(Code.Write())}{ecdsa.ExportPkcs8PrivateKeyPem()}\n";

    public LocalSignature Sign(SignatureHead head, ReadOnlySpan<byte> file) => new(head, Over(head.Message(file)));

    public KeyRotation Rotate(IssuerCode to) => new(Code.Digits, to, Over(KeyRotation.Message(Code.Digits, to)));

    public void Dispose() => ecdsa.Dispose();

    private string Over(ReadOnlySpan<byte> message) =>
        Base64UrlText.Write(
            ecdsa.SignData(message.ToArray(), HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation)
        );

    private static Read<SigningKey> Named(ECDsa ecdsa, string name, string role, string file)
    {
        if (IssuerCode.Of(Point(ecdsa), name, role, file) is Read<IssuerCode>.Usable { Value: var code })
            return new Read<SigningKey>.Usable(new(ecdsa, code));
        using (ecdsa)
            return new Read<SigningKey>.Refused(((Read<IssuerCode>.Refused)IssuerCode.Of(Point(ecdsa), name, role, file)).Refusals);
    }

    private static string Point(ECDsa ecdsa)
    {
        var q = ecdsa.ExportParameters(false).Q;
        return Base64UrlText.Write([.. q.X!, .. q.Y!]);
    }
}
