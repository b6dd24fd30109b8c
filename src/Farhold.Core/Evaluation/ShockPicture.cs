using System.Collections.Immutable;

namespace Farhold.Evaluation;

/// <summary>Whether shock is suspected, and the criteria that say so.</summary>
public sealed record ShockPicture(Truth State, ImmutableArray<Finding> Signs)
{
    /// <summary>Strong signs and two soft ones; a lone soft sign that counts leaves it open.</summary>
    internal static ShockPicture At(CasualtyView casualty)
    {
        var signs = casualty.Protocol.Shock.Whole.Select(casualty.Evaluator.Of).ToImmutableArray();
        return new(Suspected(signs), signs);
    }

    /// <summary>By the signs last seen, however old: a sign is lifted by a look, never by time.</summary>
    internal static Truth LastKnown(CasualtyView casualty) => casualty.Shock.State == Truth.Met ? Truth.Met : casualty.Ageless.Shock.State;

    /// <summary>
    /// The same, but for what is not called shock: a lone soft sign, even one that stays, and an altered mind where the head is
    /// wounded.
    /// </summary>
    internal static Truth BySignsSeen(CasualtyView casualty)
    {
        var head = CasualtyProfile.HasHeadWound(casualty.State, casualty.Now);
        return Suspected(
            casualty.Ageless.Shock.Signs.Where(f =>
                f.Criterion is var sign
                && sign.Role != Role.Asks
                && !sign.Condition.Inputs.Contains(Input.SoftSignStays)
                && !(head && sign.Condition.Inputs.All(i => i == Input.Mental))
            )
        );
    }

    private static Truth Suspected(IEnumerable<Finding> signs) => signs.Aggregate(Truth.NotMet, (t, f) => t.Or(f.Weighs));
}
