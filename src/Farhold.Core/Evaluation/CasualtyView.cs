using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>
/// The casualty at one instant by one rulebook: what several criteria and limbs ask about, each found out once and only if asked.
/// </summary>
/// <param name="doubts">Doubts about the record that nobody has settled.</param>
/// <param name="later">The same casualty at the instant judged, where this is an earlier one.</param>
public sealed class CasualtyView(State state, Rulebook rules, Instant now, ImmutableArray<Doubt> doubts, CasualtyView? later = null)
{
    public State State => state;

    public Rulebook Rules => rules;

    public Protocol Protocol => rules.Protocol;

    public Instant Now => now;

    public ImmutableArray<Doubt> Doubts => doubts;

    /// <summary>Who the casualty is, as last said.</summary>
    internal Payload.CasualtyOpened? Person => person ??= CasualtyProfile.At(state, now);

    internal AdviceStanding Advice => advice ??= AdviceStanding.At(state, Protocol.Advice, now);

    internal LookHistory Looks => looks ??= new(this);

    internal SoftSigns Soft => soft ??= SoftSigns.At(this);

    /// <summary>The signs of shock that are fresh.</summary>
    internal ShockPicture Shock => shock ??= ShockPicture.At(this);

    /// <summary>The clock of a limb, or null if no tourniquet was ever on it.</summary>
    internal LimbClock? Clock(Limb limb) => Once(clocks, limb, () => LimbClock.Of(limb, state, now));

    /// <summary>The attempts on a limb, in order.</summary>
    internal ImmutableArray<Attempt> Attempts(Limb limb) => Once(attempts, limb, () => Attempt.On(limb, state, now));

    /// <summary>The clear looks since an attempt last bled, on whatever limb.</summary>
    internal ClearSpan ClearSpan => clearSpan ??= Looks.Clear(Soft.SetAside, ClearLooks.LastBled(this), Protocol.Looks.Apart);

    /// <summary>Both arms carry a tourniquet that is, or may be, tight: no pulse can be felt at a wrist.</summary>
    internal bool BothArmsTied => bothArmsTied ??= IsTied(Limb.LeftArm) && IsTied(Limb.RightArm);

    /// <summary>Criteria that ask nothing of a limb, evaluated once for all limbs.</summary>
    internal CriterionEvaluator Evaluator => evaluator ??= new(Protocol.Freshness, new Scene(this, null, []));

    /// <summary>How long values stay fresh for what care asks: tasks, steps and texts.</summary>
    internal ImmutableSortedDictionary<string, Duration> CareFreshness =>
        careFreshness ??= Protocol.Freshness.SetItems(Protocol.CareFreshness);

    /// <summary>The same casualty as last seen, however long ago.</summary>
    internal CasualtyView Ageless =>
        ageless ??= new(
            state,
            rules.By(Protocol with { Freshness = ImmutableSortedDictionary<string, Duration>.Empty }),
            now,
            doubts,
            later
        );

    /// <summary>The same casualty with the same record, at an earlier instant.</summary>
    internal CasualtyView At(Instant earlier) => new(state, rules, earlier, doubts, later ?? this);

    /// <summary>The instant judged: an age that was said only then holds for what was seen before, too.</summary>
    internal Instant Judged => later?.Judged ?? now;

    /// <summary>Values that can't be believed as they stand, as of the instant judged: what was settled since counts everywhere.</summary>
    internal ImmutableArray<Question> Questions => later?.Questions ?? Signs.Questions.In(state, now);

    private Payload.CasualtyOpened? person;
    private AdviceStanding? advice;
    private LookHistory? looks;
    private SoftSigns? soft;
    private ImmutableSortedDictionary<string, Duration>? careFreshness;
    private CasualtyView? ageless;
    private ShockPicture? shock;
    private readonly Dictionary<Limb, LimbClock?> clocks = [];
    private readonly Dictionary<Limb, ImmutableArray<Attempt>> attempts = [];
    private ClearSpan? clearSpan;
    private bool? bothArmsTied;
    private CriterionEvaluator? evaluator;

    private static T Once<T>(Dictionary<Limb, T> known, Limb limb, Func<T> find)
    {
        if (!known.TryGetValue(limb, out var found))
            known.Add(limb, found = find());
        return found;
    }

    private bool IsTied(Limb limb) => Clock(limb) is { Tight: not Truth.NotMet };
}
