namespace Farhold.Protocols;

/// <summary>The protocol that ships with Farhold.</summary>
public static class ShippedProtocol
{
    public const string FileName = "farhold-base.json";

    private static readonly Lazy<Protocol> Loaded = new(() => Shipped.Load(FileName, ProtocolReader.Read));

    public static Protocol Protocol => Loaded.Value;

    /// <summary>The file itself, UTF-8.</summary>
    public static ReadOnlyMemory<byte> Json => Shipped.File(FileName);
}
