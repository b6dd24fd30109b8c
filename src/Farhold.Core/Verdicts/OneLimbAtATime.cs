using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>Only one limb is let go at a time; the next one waits until it has held.</summary>
internal static class OneLimbAtATime
{
    public static ImmutableArray<LimbVerdict> Among(
        ImmutableArray<LimbVerdict> limbs,
        ImmutableArray<ObservedLimb> watched,
        CasualtyView casualty
    )
    {
        var busy = Busy(limbs, watched, casualty);
        var ready = limbs.Where(l => l is { Verdict: Verdict.Attempt, Attempt: null }).ToArray();
        if (busy is null && ready.Length < 2)
            return limbs;
        var first = busy ?? new FirstLimb(ready.Order(Comparer<LimbVerdict>.Create((a, b) => Compare(a, b, casualty))).First().Limb, null);
        return [.. limbs.Select(l => l.Limb == first.Limb || l.Attempt is not null ? l : LimbJudge.After(l, first))];
    }

    /// <summary>A limb with an attempt under way, or one that was loosened and has not held long enough yet.</summary>
    private static FirstLimb? Busy(ImmutableArray<LimbVerdict> limbs, ImmutableArray<ObservedLimb> watched, CasualtyView casualty)
    {
        var held = casualty.Protocol.Attempts.Held;
        if (limbs.FirstOrDefault(l => l.Attempt is not null) is { } under)
            return new(under.Limb, null);
        var loose = watched.Where(w => w.Loosened.Until(casualty.Now).Min < held).MaxBy(w => w.Loosened.Latest);
        return loose is null ? null : new(loose.Limb, loose.Loosened.Latest + held);
    }

    /// <summary>First the limb nearer the end of its window, then that nearer its limit, then the leg.</summary>
    private static int Compare(LimbVerdict a, LimbVerdict b, CasualtyView casualty)
    {
        var window = casualty.Protocol.Clock.Window;
        var (onA, onB) = (TimeOn.Of(a.Clock, casualty).Max, TimeOn.Of(b.Clock, casualty).Max);
        var order = (onA >= window).CompareTo(onB >= window);
        if (order == 0)
            order = onB.CompareTo(onA);
        if (order == 0)
            order = IsLeg(b.Limb).CompareTo(IsLeg(a.Limb));
        return order != 0 ? order : a.Limb.CompareTo(b.Limb);
    }

    private static bool IsLeg(Limb limb) => limb is Limb.LeftLeg or Limb.RightLeg;
}
