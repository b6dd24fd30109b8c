using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>What the next hands are asked for, what can't wait first.</summary>
public enum NeedKind
{
    StopBleeding,
    SecondTourniquet,
    Surgery,
    Blood,
    Warming,
    Advice,
}

/// <summary>One thing a casualty needs, does not need as far as was looked, or may need for all the record says.</summary>
/// <param name="Limb">Null where it is about the casualty.</param>
/// <param name="State">Met: needed. Not met: what was looked at shows no need. Unknown: nobody looked, or too long ago.</param>
/// <param name="What">Fit to stand after "needs": <c>surgery that can take the left leg</c>.</param>
/// <param name="Because">The fact it rests on, or what is missing.</param>
public sealed record Need(NeedKind Kind, Limb? Limb, Truth State, string What, string Because)
{
    /// <summary>Of a limb that is, or may be, tied: end of the window and time limit, from the earliest possible tightening.</summary>
    public (Instant Window, Instant Limit)? Until { get; init; }
}
