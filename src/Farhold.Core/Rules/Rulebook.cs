using System.Collections.Immutable;

namespace Farhold.Rules;

/// <summary>
/// All that care goes by, in one value: the protocol, with the local one that is laid over it, the formulary, the kit list and the
/// rules of warning signs. Whatever judges, doses, counts or prints is handed one, and asks for no other.
/// </summary>
/// <remarks>
/// Immutable. Parts that nobody asks for are not read: a slow phone starts without them. The warning signs are read by the clock
/// of the protocol, so that a shorter limit counts there too.
/// </remarks>
public sealed class Rulebook
{
    private readonly string shipped;
    private readonly Lazy<Formulary> shippedFormulary;
    private readonly Lazy<KitList> shippedKit;
    private readonly Lazy<Formulary> formulary;
    private readonly Lazy<KitList> kit;
    private readonly Func<ClockLimits, WarningRules> warningSigns;
    private readonly Lazy<WarningRules> readWarningSigns;

    /// <param name="protocol">The shipped one: any other in its place is told as one that nobody has proven.</param>
    /// <param name="warningSigns">By the limits of a protocol.</param>
    public Rulebook(Protocol protocol, Func<Formulary> formulary, Func<KitList> kit, Func<ClockLimits, WarningRules> warningSigns)
    {
        (Protocol, shipped, this.warningSigns) = (protocol, protocol.Hash, warningSigns);
        this.formulary = shippedFormulary = new(formulary);
        shippedKit = new(kit);
        this.kit = new(() => shippedKit.Value.Naming(this.formulary));
        readWarningSigns = new(() => warningSigns(protocol.Clock));
    }

    private Rulebook(Rulebook under, Protocol protocol)
    {
        (Protocol, shipped, warningSigns) = (protocol, under.shipped, under.warningSigns);
        (shippedFormulary, shippedKit) = (under.shippedFormulary, under.shippedKit);
        (formulary, kit) = (under.formulary, under.kit);
        if (StockNames(protocol) is var names && !ReferenceEquals(names, StockNames(under.Protocol)))
        {
            formulary = names.IsEmpty ? shippedFormulary : new(() => shippedFormulary.Value.With(names));
            kit = new(() => shippedKit.Value.With(names).Naming(formulary));
        }

        readWarningSigns = protocol.Clock == under.Protocol.Clock ? under.readWarningSigns : new(() => under.warningSigns(protocol.Clock));
    }

    private static ImmutableSortedDictionary<string, string> StockNames(Protocol protocol) =>
        (protocol.Local?.Service ?? LocalService.None).StockNames;

    /// <summary>The protocol in force, the local one laid over it where there is one.</summary>
    public Protocol Protocol { get; }

    public Formulary Formulary => formulary.Value;

    public KitList Kit => kit.Value;

    public WarningRules WarningSigns => readWarningSigns.Value;

    /// <summary>Whether the protocol, but for a local one over it, is the one that ships.</summary>
    public bool IsShipped => Protocol.Hash == shipped;

    /// <summary>The same by another protocol, or by this one with a local one laid over it.</summary>
    public Rulebook By(Protocol protocol) => ReferenceEquals(protocol, Protocol) ? this : new(this, protocol);
}
