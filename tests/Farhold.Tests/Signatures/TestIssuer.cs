using System.Text;
using Farhold.Signing;

namespace Farhold.Tests.Signatures;

/// <summary>An invented service with a key made for this run, trusted here.</summary>
internal sealed class TestIssuer
{
    public static readonly TestIssuer Rescue = new("Skarvedal mountain rescue (invented)", "medical lead");

    public static readonly Instant From = Instant.FromUtc(2031, 1, 1, 0, 0);

    public static readonly Instant Until = Instant.FromUtc(2032, 1, 1, 0, 0);

    public static readonly Instant Now = Instant.FromUtc(2031, 5, 4, 2, 10);

    public TestIssuer(string name, string role) => Key = Assert.IsType<Read<SigningKey>.Usable>(SigningKey.New(name, role, "key")).Value;

    public SigningKey Key { get; }

    public Keyring Trusted => Keyring.Empty.Pin(Key.Code);

    public SignatureHead Head(long serial = 1, string? over = null) => new(Key.Code.Digits, over ?? Over, serial, From, Until);

    public byte[] Sign(ReadOnlySpan<byte> file, SignatureHead? head = null) => Key.Sign(head ?? Head(), file).Write();

    /// <summary>The proof of a file signed by this issuer.</summary>
    public Proof Proof(ReadOnlyMemory<byte> file, SignatureHead? head = null) =>
        Assert.IsType<Read<Proof>.Usable>(Check(file, Sign(file.Span, head))).Value;

    public Read<Proof> Check(ReadOnlyMemory<byte> file, ReadOnlyMemory<byte> signature, Keyring? keyring = null, Instant? now = null) =>
        Done(
            Farhold.Signatures.Proof.OfAsync(
                file,
                signature,
                "hut.json.sig",
                keyring ?? Trusted,
                ShippedProtocol.Protocol.Named,
                now ?? Now,
                FrameworkSignatures.CheckAsync
            )
        );

    public static T Done<T>(ValueTask<T> task)
    {
        Assert.True(task.IsCompleted);
        return task.GetAwaiter().GetResult();
    }

    private static string Over => $"{ShippedProtocol.Protocol.Id} {ShippedProtocol.Protocol.Version}";
}
