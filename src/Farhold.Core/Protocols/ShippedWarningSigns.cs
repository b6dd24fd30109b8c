namespace Farhold.Protocols;

/// <summary>The rules of warning signs that ship with Farhold.</summary>
public static class ShippedWarningSigns
{
    public const string FileName = "farhold-warning-signs.json";

    private static readonly Lazy<WarningRules> Loaded = new(() => By(ShippedProtocol.Protocol.Clock));

    /// <summary>By the limits of the protocol that ships.</summary>
    public static WarningRules Rules => Loaded.Value;

    public static WarningRules By(ClockLimits clock) => Shipped.Load(FileName, (utf8, file) => WarningSignReader.Read(utf8, file, clock));
}
