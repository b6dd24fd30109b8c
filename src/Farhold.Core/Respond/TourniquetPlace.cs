using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Respond;

/// <summary>Whether a tourniquet is one that should be re-sited, from what is known of it.</summary>
/// <param name="Misplaced">Met: improvised, over clothing, over a joint or high on the limb. Unknown until all of that was looked at.</param>
/// <param name="Because">What is wrong with it, in words. One that took over from another may be improvised: it was what there was.</param>
/// <remarks>
/// Source: TCCC wording in Holcomb 2023, Table 2: directly on the skin, 5 to 7 cm (2 to 3 in) above the wound; not over a joint, as
/// commonly taught.
/// </remarks>
public sealed record TourniquetPlace(
    string Tourniquet,
    TourniquetSite? Site,
    bool? OnSkin,
    TourniquetMake? Make,
    Truth Misplaced,
    ImmutableArray<string> Because
)
{
    public static TourniquetPlace Of(string tourniquet, State state, Instant now)
    {
        TourniquetSite? site = null;
        bool? skin = null;
        TourniquetMake? make = null;
        var tookOver = false;
        foreach (var entry in state.Of(Kind.TourniquetTightened))
            if (entry.When.Earliest <= now && entry.As<Payload.TourniquetTightened>() is var said && said.Tourniquet == tourniquet)
                (site, skin, make, tookOver) = (
                    said.Site ?? site,
                    said.OnSkin ?? skin,
                    said.Make ?? make,
                    tookOver || said.Why == TighteningReason.ReSited
                );
        ImmutableArray<string> because =
        [
            .. make == TourniquetMake.Improvised && !tookOver ? [RespondTexts.PlacedImprovised] : (string[])[],
            .. skin == false ? [RespondTexts.PlacedOverClothing] : (string[])[],
            .. site == TourniquetSite.High ? [RespondTexts.PlacedHigh] : (string[])[],
            .. site == TourniquetSite.OverJoint ? [RespondTexts.PlacedOverJoint] : (string[])[],
        ];
        var misplaced =
            !because.IsEmpty ? Truth.Met
            : site is null || skin is null || (make is null && !tookOver) ? Truth.Unknown
            : Truth.NotMet;
        return new(tourniquet, site, skin, make, misplaced, because);
    }
}
