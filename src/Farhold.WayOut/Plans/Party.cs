using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Who is under way, leg by leg.</summary>
/// <remarks>One party has one pace on all its legs by the same means, so that cutting a leg in pieces changes nothing.</remarks>
/// <param name="Slot">Of the choice whose way it takes; 0 for the plan itself.</param>
/// <param name="Way">Which way of that choice.</param>
/// <param name="Last">How it came here; null at the start.</param>
/// <param name="Carried">What it has carried so far.</param>
internal sealed record Party(int Slot, int Way, TravelMode? Last, ImmutableArray<Measured> Carried)
{
    public static Party Fresh { get; } = new(0, 0, null, []);

    /// <summary>Where its pace by some means stands among the random numbers of its slot.</summary>
    public int PaceOf(TravelMode mode) => TravelStep.FirstPace + (Way * Enum.GetValues<TravelMode>().Length) + (int)mode;

    /// <summary>Who takes one way of a choice: a party of its own where several set out, else the same.</summary>
    public Party On(Choice choice, int way) =>
        choice.Kind == ChoiceKind.Try && way == 1 ? choice.Ways[0].Legs.Aggregate(this, (party, leg) => party.After(leg))
        : choice.Kind is ChoiceKind.Branches or ChoiceKind.Try ? this
        : Fresh with { Slot = choice.Slot, Way = way };

    /// <remarks>What is carried within a choice is left out afterwards: it need not have been this party.</remarks>
    public Party After(Leg leg) =>
        this with
        {
            Last = (leg as Travel)?.Mode,
            Carried = leg is Travel { Mode: TravelMode.Carry, Extent: Measured { Stretch: not null } carried }
                ? Carried.Add(carried)
                : Carried,
        };
}
