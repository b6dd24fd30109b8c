using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>
/// The casualty at one instant by one protocol: what several criteria and limbs ask about, each found out once and only if asked.
/// </summary>
/// <param name="doubts">Doubts about the record that nobody has settled.</param>
/// <param name="later">The same casualty at the instant judged, where this is an earlier one.</param>
public sealed class CasualtyView(
    State state, Protocol protocol, Instant now, ImmutableArray<Doubt> doubts, CasualtyView? later = null)
{
    public State State => state;

    public Protocol Protocol => protocol;

    public Instant Now => now;

    public ImmutableArray<Doubt> Doubts => doubts;

    /// <summary>Who the casualty is, as last said.</summary>
    internal Payload.CasualtyOpened? Person => person ??= Circumstances.Opened(state, now);

    internal AdviceStanding Advice => advice ??= AdviceStanding.At(state, protocol.Advice, now);

    internal LookHistory Looks => looks ??= new(this);

    internal SoftSigns Soft => soft ??= SoftSigns.At(this);

    /// <summary>Both arms carry a tourniquet that is, or may be, tight: no pulse can be felt at a wrist.</summary>
    internal bool BothArmsTied => bothArmsTied ??= IsTied(Limb.LeftArm) && IsTied(Limb.RightArm);

    /// <summary>Criteria that ask nothing of a limb, evaluated once for all limbs.</summary>
    internal Evaluating Evaluating => evaluating ??= new(protocol.Freshness, new Scene(this, null, []));

    /// <summary>The same casualty as last seen, however long ago.</summary>
    internal CasualtyView Ageless => ageless ??= new(
        state, protocol with { Freshness = ImmutableSortedDictionary<string, Duration>.Empty }, now, doubts, later);

    /// <summary>The same casualty with the same record, at an earlier instant.</summary>
    internal CasualtyView At(Instant earlier) => new(state, protocol, earlier, doubts, later ?? this);

    /// <summary>The instant judged: an age that was said only then holds for what was seen before, too.</summary>
    internal Instant Judged => later?.Judged ?? now;

    /// <summary>Values that can't be believed as they stand, as of the instant judged: what was settled since counts everywhere.</summary>
    internal ImmutableArray<Question> Questions => later?.Questions ?? state.Questions(now);

    private Payload.CasualtyOpened? person;
    private AdviceStanding? advice;
    private LookHistory? looks;
    private SoftSigns? soft;
    private CasualtyView? ageless;
    private bool? bothArmsTied;
    private Evaluating? evaluating;

    private bool IsTied(Limb limb) => LimbClock.Of(limb, state, now) is { Tight: not Truth.NotMet };
}
