namespace Farhold.App.Limbs;

/// <summary>A tourniquet as a carer would point at it.</summary>
public static class TourniquetName
{
    /// <summary><c>t1, high-thigh, windlass</c>: as much as was said.</summary>
    public static string Of(string tourniquet, LimbScene scene)
    {
        var known = scene.Known(tourniquet);
        return string.Join(", ", new[] { tourniquet, known.Place, known.Make is { } make ? Wire.Word(make) : null }.OfType<string>());
    }
}
