namespace Farhold.App.Now;

/// <summary>What a sheet of choices is about.</summary>
public abstract record Asked
{
    private Asked() { }

    /// <summary>One quick action, on every limb and wound there is.</summary>
    public sealed record Quickly(Quick Quick) : Asked;

    /// <summary>All that can be said of one limb.</summary>
    public sealed record OnLimb(Limb Limb) : Asked;

    /// <summary>All that can be said of one region.</summary>
    /// <param name="Face">The face of the body it was touched on; null where that says nothing.</param>
    public sealed record InRegion(BodyRegion Region, BodyFace? Face = null) : Asked;
}
