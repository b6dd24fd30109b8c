using System.Collections.Immutable;

namespace Farhold.WayOut.Pace;

/// <summary>How long bearers keep their pace, and how long they are counted on, by their number.</summary>
/// <remarks>
/// The guide's 6 to 10 h before replacements is for 18 to 25 people; more people relieve each other for longer in proportion, and for
/// fewer nothing shorter was read, though it is likely.
/// </remarks>
public static class BearerLimits
{
    private static readonly Figure Tire = PriorTable.Figure("bearers-tire-h");
    private static readonly Figure Tired = PriorTable.Figure("bearers-tired-pace");
    private static readonly Figure Last = PriorTable.Figure("bearers-last-h");

    public static ImmutableArray<Basis> Rests => [Tire.Basis, Tired.Basis, Last.Basis];

    /// <summary>Speed of tired bearers against their speed before.</summary>
    public static double TiredPace => Tired.Value;

    public static double TireSeconds(int bearers) => 3600 * Tire.Value * Relief(bearers);

    public static double LastSeconds(int bearers) => 3600 * Last.Value * Relief(bearers);

    private static double Relief(int bearers) => Math.Max(1, (double)bearers / LitterTeam.Full);
}
