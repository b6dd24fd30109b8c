namespace Farhold.App.Parts;

/// <summary>A tourniquet as a carer would point at it.</summary>
public static class TourniquetName
{
    /// <summary>Several, as one list.</summary>
    public static string Of(IEnumerable<string> tourniquets, LimbScene scene, Texts texts) =>
        string.Join("; ", tourniquets.Select(t => Of(t, scene, texts)));

    /// <summary><c>t1, high-thigh, windlass</c>: as much as was said.</summary>
    public static string Of(string tourniquet, LimbScene scene, Texts texts)
    {
        var known = scene.Known(tourniquet);
        return Plain.Line(
            string.Join(", ", new[] { tourniquet, known.Place, known.Make is { } make ? texts.Within(make) : null }.OfType<string>())
        );
    }
}
