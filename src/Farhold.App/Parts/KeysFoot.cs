namespace Farhold.App.Parts;

/// <summary>Where the keys of a pad are docked: at the foot of the screen, or of the sheet that lies over it.</summary>
/// <param name="Section">The name of its outlet.</param>
public sealed record KeysFoot(string Section)
{
    public static readonly KeysFoot OfScreen = new("keys");

    public static readonly KeysFoot OfSheet = new("sheet-keys");
}
