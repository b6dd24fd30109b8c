using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Settings;

/// <summary>A local protocol with what stands behind it, laid over the shipped one as it stands at an instant.</summary>
public sealed class LocalFile(ReadOnlyMemory<byte> utf8, ReadOnlyMemory<byte>? signature, string name, Proof proof)
{
    private (Standing Standing, Read<Protocol> Read)? last;

    public ReadOnlyMemory<byte> Utf8 => utf8;

    /// <summary>Null where nobody signed it.</summary>
    public ReadOnlyMemory<byte>? Signature => signature;

    public string Name => name;

    public Proof Proof => proof;

    /// <summary>Read anew only where what stands behind it has changed.</summary>
    public Read<Protocol> At(Instant now)
    {
        var standing = proof.Of(utf8.Span, now);
        if (last is { } known && known.Standing == standing)
            return known.Read;
        var read = LocalReader.Read(utf8, name, ShippedProtocol.Protocol, proof, now);
        last = (standing, read);
        return read;
    }

    public Protocol? LaidAt(Instant now) => (At(now) as Read<Protocol>.Usable)?.Value;

    public ImmutableArray<Refusal> RefusalsAt(Instant now) => (At(now) as Read<Protocol>.Refused)?.Refusals ?? [];

    /// <summary>Checks a signature; without one, nothing stands behind the file.</summary>
    public static async Task<(LocalFile? File, ImmutableArray<Refusal> Refusals)> OfAsync(
        ReadOnlyMemory<byte> utf8, ReadOnlyMemory<byte>? signature, string name, Keyring keyring, Instant now, SignatureCheck check)
    {
        if (signature is not { } signed)
            return (new(utf8, null, name, Proof.None), []);
        return await Proof.OfAsync(utf8, signed, name + LocalSignature.Ending, keyring, ShippedProtocol.Protocol.Named, now, check) switch
        {
            Read<Proof>.Usable usable => (new(utf8, signed, name, usable.Value), []),
            Read<Proof>.Refused refused => (null, refused.Refusals),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
