using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Finds out whether something that stands against an attempt gives way.</summary>
internal static class Lifts
{
    public static Lift Of(Finding finding, CasualtyView casualty)
    {
        if (finding is not { Criterion: { Role: Role.Asks } criterion, State: Truth.Met })
            return Lift.None;
        if (criterion.AdviceLifts && SoftSigns.AdviceLifts(criterion, casualty))
            return Lift.Advice;
        return
            criterion.GivesWay is { } apart
            && casualty.Advice.Unreached
            && casualty.Looks.Clear(casualty.Soft.SetAside, Instant.MinValue, apart).Apart >= apart
            ? Lift.Unreached
            : Lift.None;
    }
}
