using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rules;

/// <summary>A local protocol with what stands behind it, laid over the rules it is meant for, as it stands at an instant.</summary>
/// <param name="signature">Null where nobody signed it.</param>
/// <param name="under">The rules that it is laid over.</param>
public sealed class LocalRules(ReadOnlyMemory<byte> utf8, ReadOnlyMemory<byte>? signature, string name, Proof proof, Rulebook under)
{
    private Laid? last;

    public ReadOnlyMemory<byte> Utf8 => utf8;

    /// <summary>Null where nobody signed it.</summary>
    public ReadOnlyMemory<byte>? Signature => signature;

    public string Name => name;

    public Proof Proof => proof;

    /// <summary>The same file by an emergency that began at an instant.</summary>
    public LocalRules InEmergency(Instant from) => new(utf8, null, name, Proof.Emergency(from), under);

    /// <summary>Read anew only where what stands behind it has changed.</summary>
    public Read<Rulebook> At(Instant now)
    {
        var standing = proof.Of(utf8.Span, now);
        if (last is { } known && known.Standing == standing)
            return known.Read;
        Read<Rulebook> read = LocalReader.Read(utf8, name, under.Protocol, proof, now, () => under.Formulary, () => under.Kit) switch
        {
            Read<Protocol>.Usable(var laid) => new Read<Rulebook>.Usable(under.By(laid)),
            Read<Protocol>.Refused(var why) => new Read<Rulebook>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        last = new(standing, read);
        return read;
    }

    /// <summary>Null where it is refused.</summary>
    public Rulebook? LaidAt(Instant now) => (At(now) as Read<Rulebook>.Usable)?.Value;

    public ImmutableArray<Refusal> RefusalsAt(Instant now) => (At(now) as Read<Rulebook>.Refused)?.Refusals ?? [];

    /// <summary>Checks a signature; without one, nothing stands behind the file.</summary>
    public static async ValueTask<Read<LocalRules>> OfAsync(
        ReadOnlyMemory<byte> utf8,
        ReadOnlyMemory<byte>? signature,
        string name,
        Keyring keyring,
        Rulebook under,
        Instant now,
        SignatureCheck check
    )
    {
        if (signature is not { } signed)
            return new Read<LocalRules>.Usable(new(utf8, null, name, Proof.None, under));
        return await Proof.OfAsync(utf8, signed, name + LocalSignature.Ending, keyring, under.Protocol.Named, now, check) switch
        {
            Read<Proof>.Usable(var proof) => new Read<LocalRules>.Usable(new(utf8, signed, name, proof, under)),
            Read<Proof>.Refused(var why) => new Read<LocalRules>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private sealed record Laid(Standing Standing, Read<Rulebook> Read);
}
