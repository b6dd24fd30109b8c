namespace Farhold.WayOut.Reach;

public enum ReachWayKind
{
    End,
    Back,
    Exit,
    PickUp,
}

/// <summary>One of the ways from the route to higher care.</summary>
/// <param name="Letter">A short mark for pictures: A, B … Z, AA …</param>
/// <param name="AlongM">Where on the route it leaves, metres from the start.</param>
public sealed record ReachWay(string Letter, string Name, ReachWayKind Kind, GeoPoint Place, double AlongM);
