namespace Farhold.App.Limbs;

/// <summary>A tourniquet as a carer would point at it.</summary>
public static class TourniquetName
{
    /// <summary>Several, as one list.</summary>
    public static string Of(IEnumerable<string> tourniquets, LimbScene scene) => string.Join("; ", tourniquets.Select(t => Of(t, scene)));

    /// <summary><c>t1, high-thigh, windlass</c>: as much as was said.</summary>
    public static string Of(string tourniquet, LimbScene scene)
    {
        var known = scene.Known(tourniquet);
        return Plain.Line(string.Join(
            ", ", new[] { tourniquet, known.Place, known.Make is { } make ? Wire.Word(make) : null }.OfType<string>()));
    }
}
