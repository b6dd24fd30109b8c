namespace Farhold.Values;

/// <summary>A limb. Wire names are in <see cref="Wire"/>.</summary>
public enum Limb
{
    LeftArm,
    RightArm,
    LeftLeg,
    RightLeg,
}
