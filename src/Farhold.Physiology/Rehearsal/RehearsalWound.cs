namespace Farhold.Physiology.Rehearsal;

/// <summary>A wound of an invented casualty, with what nobody can see.</summary>
/// <param name="Bleed">Open and at rest, mL/min.</param>
/// <param name="NeedsTourniquet">Without one, packing may not hold it.</param>
/// <param name="Difficulty">Harder towards 1, easier towards 0, one for every attempt; drawn where it is not given.</param>
/// <param name="Limb">
/// Null: on the limb whose muscle and veins are modelled, or on the trunk. A name: on another limb, whose tourniquet stops its flow and
/// nothing else; it is fed from the great arteries whatever its kind (docs/decisions/two-tied-limbs.md).
/// </param>
public sealed record RehearsalWound(
    string Name,
    WoundKind Kind,
    double Bleed,
    bool NeedsTourniquet = true,
    double? Difficulty = null,
    string? Limb = null
)
{
    /// <summary>Whether what lies on it holds as the tourniquet is let out.</summary>
    /// <remarks>
    /// One latent difficulty decides at every attempt, with a part of chance that is the attempt's own; over all wounds the share that
    /// holds is <paramref name="share"/>. A multiplier on the wound's opening could not decide it: under a tourniquet nothing flows,
    /// any clot closes, and afterwards every dressing would hold.
    /// </remarks>
    /// <param name="share">That holds, of all such wounds.</param>
    /// <param name="attempt">The attempt's own chance, 0 to 1.</param>
    internal static bool Holds(double share, double difficulty, double attempt, double sameWound)
    {
        if (share <= 0 || share >= 1)
            return share >= 1;
        var own = Math.Sqrt(1 - (sameWound * sameWound));
        var strain = (sameWound * NamedDraws.Normal(difficulty)) + (own * NamedDraws.Normal(attempt));
        return strain < NamedDraws.Normal(share);
    }
}
