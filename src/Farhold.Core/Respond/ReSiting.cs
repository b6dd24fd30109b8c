using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Respond;

public enum ReSitingStep
{
    /// <summary>Expose the wound and see where the tourniquet sits.</summary>
    Look,

    /// <summary>A second one, on the skin above the wound, tight; the first stays tight.</summary>
    SecondOn,

    /// <summary>Has the bleeding stopped with the second one? If it has not: tighten it further.</summary>
    Check,

    /// <summary>The first one slowly out, and left where it lies.</summary>
    SlackenFirst,

    /// <summary>Look whether it bleeds now that the second one holds alone.</summary>
    Watch,
}

/// <summary>
/// Re-siting a tourniquet: a second one, better placed, takes over from it. Not a conversion: the limb stays without blood, its clock
/// runs on, and an amputation is no reason against it.
/// </summary>
/// <param name="First">The one to be looked at or re-sited.</param>
/// <param name="Second">The one that takes over, once it is there.</param>
/// <remarks>
/// At every step at least one tourniquet stays tight. Sources: TCCC; Holcomb 2023, Table 2; the order of the steps is common practice.
/// </remarks>
public sealed record ReSiting(Limb Limb, ReSitingStep Step, TourniquetPlace First, string? Second)
{
    /// <summary>Null where nothing on the limb is tight, or all that is tight sits as it should.</summary>
    public static ReSiting? Of(Limb limb, State state, Instant now)
    {
        if (LimbClock.Of(limb, state, now) is not { } clock || clock.Tight == Truth.NotMet)
            return null;
        var places = clock.Tourniquets.Select(t => TourniquetPlace.Of(t, state, now)).ToArray();
        var holding = places.LastOrDefault(p => p.Misplaced == Truth.NotMet && IsSurelyTight(p.Tourniquet, limb, state, now))?.Tourniquet;
        if (places.FirstOrDefault(p => p.Misplaced == Truth.Met) is { } wrong)
        {
            var step =
                holding is null ? ReSitingStep.SecondOn
                : HasStoppedSince(LastTightened(holding, state, now), limb, state, now) ? ReSitingStep.SlackenFirst
                : ReSitingStep.Check;
            return new(limb, step, wrong, holding);
        }

        if (holding is not null && LetOut(limb, holding, state, now) is { } slackened)
            return HasStoppedSince(slackened.When, limb, state, now)
                ? null
                : new(limb, ReSitingStep.Watch, TourniquetPlace.Of(Name(slackened.What), state, now), holding);
        return places.FirstOrDefault(p => p.Misplaced == Truth.Unknown) is { } unknown ? new(limb, ReSitingStep.Look, unknown, null) : null;
    }

    private static bool IsSurelyTight(string tourniquet, Limb limb, State state, Instant now) =>
        TourniquetLife.On(limb, state, now).FirstOrDefault(l => l.Tourniquet == tourniquet)?.KnownTightAt(now) == Truth.Met;

    private static Happened LastTightened(string tourniquet, State state, Instant now) =>
        state
            .Of(Kind.TourniquetTightened)
            .Last(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Tourniquet == tourniquet)
            .When;

    /// <summary>Somebody looked at every wound of the limb surely after that, and none was bleeding.</summary>
    private static bool HasStoppedSince(Happened then, Limb limb, State state, Instant now)
    {
        var wounds = LimbWounds.Treated(limb, state, now).ToArray();
        return wounds.Length > 0
            && wounds.All(w =>
                state.ChecksOf(w).LastOrDefault(c => c.When.Earliest <= now) is { } last
                && last.When.Earliest > then.Latest
                && last.As<Payload.BleedingChecked>().Bleeding != Bleeding.Active
            );
    }

    /// <summary>The newest one that was let out, after the one that holds had been tightened to take over.</summary>
    private static Dated? LetOut(Limb limb, string holding, State state, Instant now)
    {
        var tightened = state
            .Of(Kind.TourniquetTightened)
            .FirstOrDefault(t =>
                t.When.Earliest <= now
                && t.As<Payload.TourniquetTightened>() is { Why: TighteningReason.ReSited } said
                && said.Tourniquet == holding
            );
        if (tightened is null)
            return null;
        var here = TourniquetLife.On(limb, state, now).Select(l => l.Tourniquet).ToHashSet();
        return state
            .Of(Kind.TourniquetSlackened)
            .Concat(state.Of(Kind.TourniquetRemoved))
            .Where(s => s.When.Earliest <= now && s.When.Earliest >= tightened.When.Earliest && Name(s.What) != holding)
            .LastOrDefault(s => here.Contains(Name(s.What)));
    }

    private static string Name(Payload what) =>
        what switch
        {
            Payload.TourniquetSlackened s => s.Tourniquet,
            Payload.TourniquetRemoved r => r.Tourniquet,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
