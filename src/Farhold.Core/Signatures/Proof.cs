using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signatures;

/// <summary>What stands behind a local protocol.</summary>
public enum Standing
{
    /// <summary>Nobody: it may tighten numbers within bounds and says nothing.</summary>
    Unsigned,

    /// <summary>An issuer pinned on this device signed these very bytes, for this protocol and this time.</summary>
    Verified,

    /// <summary>So it was, but not for this time: what it holds back counts, what it allows does not.</summary>
    Expired,

    /// <summary>Nobody has proven it; a person took it for one casualty and some hours, with a reason that was logged.</summary>
    Emergency,
}

/// <summary>The proof of a local protocol. There is none that says more than was checked.</summary>
public sealed class Proof
{
    /// <summary>How long a local protocol that nobody has proven may be used (design).</summary>
    public static readonly Duration LongestEmergency = Duration.FromHours(12);

    private readonly string file;

    private Proof(string file, SignatureHead? head, IssuerCode? issuer, Instant? emergency) =>
        (this.file, Head, Issuer, EmergencyFrom) = (file, head, issuer, emergency);

    /// <summary>Nobody signed it.</summary>
    public static Proof None { get; } = new("", null, null, null);

    /// <summary>Null where nobody signed it.</summary>
    public SignatureHead? Head { get; }

    public IssuerCode? Issuer { get; }

    public Instant? EmergencyFrom { get; }

    /// <summary>Taken without proof by a person who said why.</summary>
    public static Proof Emergency(Instant from) => new("", null, null, from);

    /// <summary>What stands behind a file with these bytes at an instant.</summary>
    public Standing Of(ReadOnlySpan<byte> utf8, Instant at) =>
        (Head, EmergencyFrom) switch
        {
            ({ } head, _) when file == FileHash.Of(utf8) => head.Holds(at) ? Standing.Verified : Standing.Expired,
            (null, { } from) when at >= from && at < from + LongestEmergency => Standing.Emergency,
            _ => Standing.Unsigned,
        };

    /// <summary>Checks a signature: by whom, for what, since when, and whether something newer was seen already.</summary>
    /// <param name="name">Of the signature, for refusals.</param>
    /// <param name="under">Id and version of the protocol in force.</param>
    public static async ValueTask<Read<Proof>> OfAsync(
        ReadOnlyMemory<byte> file,
        ReadOnlyMemory<byte> signature,
        string name,
        Keyring keyring,
        string under,
        Instant now,
        SignatureCheck check
    )
    {
        if (LocalSignature.Read(signature.Span, name) is not Read<LocalSignature>.Usable { Value: var read })
            return new Read<Proof>.Refused(((Read<LocalSignature>.Refused)LocalSignature.Read(signature.Span, name)).Refusals);
        var (head, hash) = (read.Head, FileHash.Of(file.Span));
        if (keyring.Named(head.Issuer) is not { } pinned)
            return Refuse(
                2,
                $"nobody with the digits {head.Issuer} is trusted here: import the issuer's code first, and compare its digits by voice"
            );
        if (!await check(pinned.Code.KeyPoint, head.Message(file.Span), Base64UrlText.Read(read.Value, LocalSignature.Bytes)))
            return Refuse(7, "the signature does not fit: the file or the signature was changed, or another key signed it");
        if (head.Over != under)
            return Refuse(3, $"it is made for {head.Over}, but {under} is in force");
        if (head.Serial < pinned.Serial)
            return Refuse(4, $"serial {head.Serial} is older than {pinned.Serial}, which was imported before");
        if (head.Serial == pinned.Serial && hash != pinned.File)
            return Refuse(4, $"serial {head.Serial} was imported before with another file");
        if (now < head.NotBefore)
            return Refuse(5, $"it is not valid before {Say.Time(head.NotBefore)}");
        return new Read<Proof>.Usable(new(hash, head, pinned.Code, null));

        Read<Proof> Refuse(int line, string reason) => new Read<Proof>.Refused([new(name, line, 1, reason)]);
    }
}
