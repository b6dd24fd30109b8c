namespace Farhold.Kit;

/// <summary>The kit list that ships with Farhold.</summary>
public static class ShippedKit
{
    public const string FileName = "farhold-kit.json";

    private static readonly Lazy<KitList> Loaded = new(() => Shipped.Load(FileName, KitReader.Read));

    public static KitList Kit => Loaded.Value;
}
