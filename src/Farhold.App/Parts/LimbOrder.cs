namespace Farhold.App.Parts;

/// <summary>Which limb stands for the casualty where there is room for one.</summary>
public static class LimbOrder
{
    /// <summary>The tied limb that may have gone longest; null where none is tied.</summary>
    public static LimbVerdict? LongestTied(this Judgement picture) =>
        picture.Limbs.OrderBy(l => l.Clock.FirstTightened.Earliest).FirstOrDefault();

    /// <summary>The limb that was loosened last; null where none is watched.</summary>
    public static ObservedLimb? LastLoosened(this Judgement picture) =>
        picture.Observed.OrderByDescending(o => o.Loosened.Latest).FirstOrDefault();
}
