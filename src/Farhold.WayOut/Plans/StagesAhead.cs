using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>A stage that somebody may be on.</summary>
/// <param name="Name">In the language that is spoken.</param>
/// <param name="Recorded">The same as the record names it, whatever language is spoken.</param>
/// <param name="Begun">When it was noted to be begun; null where nobody said.</param>
public sealed record StageAhead(string Path, string Name, string Recorded, Instant? Begun);

/// <summary>The stages to be marked next: the first open one, and of a choice the first open one of each way still in play.</summary>
public static class StagesAhead
{
    public static ImmutableArray<StageAhead> Of(Plan plan, State state, Instant now)
    {
        var soFar = RecordSoFar.Of(state, plan, now) ?? new([], now);
        var ahead = ImmutableArray.CreateBuilder<StageAhead>();
        Open(plan.Legs, "", soFar, ahead);
        return ahead.ToImmutable();
    }

    /// <returns>Whether something of these legs is still open.</returns>
    private static bool Open(ImmutableArray<Leg> legs, string path, SoFar soFar, ImmutableArray<StageAhead>.Builder ahead)
    {
        for (var i = 0; i < legs.Length; i++)
        {
            var here = FormattableString.Invariant($"{path}{i + 1}");
            if (legs[i] is Travel travel)
            {
                if (soFar.Of(here, StageState.Failed) is not null)
                    return true;
                if (soFar.Of(here, StageState.Done) is not null)
                    continue;
                ahead.Add(
                    new(
                        here,
                        PlanCompiler.Label(travel),
                        Translation.InEnglish(() => PlanCompiler.Label(travel)),
                        soFar.Of(here, StageState.Begun)?.At
                    )
                );
                return true;
            }

            var choice = (Choice)legs[i];
            if (choice.IsElse)
            {
                if (!Either(choice, here, soFar, ahead))
                    continue;
                return true;
            }

            var over = false;
            var inPlay = ImmutableArray.CreateBuilder<StageAhead>();
            for (var w = 0; w < choice.Ways.Length; w++)
                over |=
                    !Open(choice.Ways[w].Legs, FormattableString.Invariant($"{here}.{w + 1}."), soFar, inPlay)
                    && choice.Ways[w].Legs.Length > 0;
            if (over)
                continue;
            ahead.AddRange(inPlay);
            return true;
        }

        return false;
    }

    /// <summary>What is waited for or tried; once it is there what goes on, else the other way, which a wait leaves open too.</summary>
    /// <returns>As above.</returns>
    private static bool Either(Choice choice, string here, SoFar soFar, ImmutableArray<StageAhead>.Builder ahead)
    {
        bool In(int way) => Open(choice.Ways[way].Legs, FormattableString.Invariant($"{here}.{way + 1}."), soFar, ahead);
        if (soFar.Comes($"{here}.3"))
            return In(2);
        if (soFar.Fails($"{here}.1"))
            return choice.Ways[2].Legs.IsEmpty || In(2);
        if (!In(0))
            return In(1);
        if (choice.Kind == ChoiceKind.Until)
            In(2);
        return true;
    }
}
