using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>One limb at one instant, as the criteria look at it; or the casualty as a whole, where there is no clock.</summary>
/// <param name="Doubts">Doubts about the record that nobody has settled.</param>
public sealed record Scene(
    State State, Instant Now, LimbClock? Clock, ImmutableArray<Attempt> Attempts, ImmutableArray<Doubt> Doubts)
{
    /// <summary>The last attempt that showed the tourniquet is needed.</summary>
    public Attempt? LastFailed => Attempts.LastOrDefault(a => a.Result == AttemptResult.Bled);
}
