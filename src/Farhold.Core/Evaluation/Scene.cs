using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>One limb at one instant, as the criteria look at it; or the casualty as a whole, where there is no clock.</summary>
/// <param name="Attempts">On this limb, in order.</param>
public sealed record Scene(CasualtyView Casualty, LimbClock? Clock, ImmutableArray<Attempt> Attempts)
{
    public State State => Casualty.State;

    public Instant Now => Casualty.Now;

    /// <summary>The limb that comes before this one, where one does.</summary>
    public FirstLimb? First { get; init; }

    /// <summary>The last attempt that showed the tourniquet is needed.</summary>
    public Attempt? LastFailed => Attempts.LastOrDefault(a => a.Result == AttemptResult.Bled);
}

/// <summary>Why another limb comes before this one.</summary>
/// <param name="Until">When it has held long enough; null while that is not known.</param>
public sealed record FirstLimb(Limb Limb, Instant? Until);
