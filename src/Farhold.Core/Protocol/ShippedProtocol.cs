using System.Diagnostics;

namespace Farhold;

/// <summary>The protocol that ships with Farhold.</summary>
public static class ShippedProtocol
{
    public const string FileName = "farhold-base.json";

    private static readonly Lazy<Protocol> Loaded = new(Load);

    public static Protocol Protocol => Loaded.Value;

    /// <summary>The file itself, UTF-8.</summary>
    public static ReadOnlyMemory<byte> Json => Shipped.File(FileName);

    private static Protocol Load() => ProtocolReader.Read(Json, FileName) switch
    {
        Read<Protocol>.Usable usable => usable.Value,
        Read<Protocol>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
        _ => throw new UnreachableException(),
    };
}
