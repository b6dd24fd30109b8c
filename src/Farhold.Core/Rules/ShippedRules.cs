namespace Farhold.Rules;

/// <summary>What ships with Farhold, for the edges where a program begins: everything else is handed its rules.</summary>
public static class ShippedRules
{
    private static readonly Lazy<Rulebook> Loaded = new(() =>
        new(
            ShippedProtocol.Protocol,
            () => ShippedFormulary.Formulary,
            () => ShippedKit.Kit,
            clock => clock == ShippedProtocol.Protocol.Clock ? ShippedWarningSigns.Rules : ShippedWarningSigns.By(clock)
        )
    );

    public static Rulebook Book => Loaded.Value;
}
