using System.Collections.Immutable;

namespace Farhold.WayOut.Pace;

/// <summary>What is underfoot.</summary>
/// <param name="Id">The word a plan uses.</param>
/// <param name="Energy">Coefficient of the energy cost of walking (1 on blacktop), where one is known.</param>
/// <param name="SpeedFactor">Speed against the same walk on a good path.</param>
/// <param name="OffPath">Whether night slows it as it slows ground without a path.</param>
/// <param name="Rough">Whether a litter goes at the pace of rough ground.</param>
public sealed record Surface(
    string Id,
    Func<string> Named,
    double? Energy,
    double SpeedFactor,
    Evidence Mark,
    Func<string> Cited,
    bool OffPath = false,
    bool Rough = false
)
{
    public string Name => Named();

    public string Source => Cited();
}

public static class Surfaces
{
    /// <summary>A path: what the walking rules were made on.</summary>
    public static Surface Path { get; } = new("path", () => PaceTexts.Path, null, 1, Evidence.Assumption, () => PaceTexts.RulesOnPaths);

    public static ImmutableArray<Surface> All { get; } =
    [
        Path,
        AtEqualEffort("road", () => PaceTexts.Road, 1.0),
        AtEqualEffort("dirt-road", () => PaceTexts.DirtRoad, 1.1),
        AtEqualEffort("light-brush", () => PaceTexts.LightBrush, 1.2) with
        {
            OffPath = true,
        },
        AtEqualEffort("heavy-brush", () => PaceTexts.HeavyBrush, 1.5) with
        {
            OffPath = true,
            Rough = true,
        },
        AtEqualEffort("swamp", () => PaceTexts.Swamp, 1.8) with
        {
            OffPath = true,
        },
        AtEqualEffort("sand", () => PaceTexts.Sand, 2.1) with
        {
            OffPath = true,
        },
        new(
            "off-path",
            () => PaceTexts.OffPath,
            null,
            Tobler.OffPath,
            Evidence.Read,
            () => "Tobler 1993, read at friendlywiki.com",
            true,
            true
        ),
        new("boulders", () => PaceTexts.Boulders, null, Tobler.OffPath, Evidence.Assumption, () => PaceTexts.AsOffPath, true, true),
    ];

    public static Surface? Find(string id) => All.FirstOrDefault(surface => surface.Id == id);

    private static Surface AtEqualEffort(string id, Func<string> name, double energy) =>
        new(
            id,
            name,
            energy,
            Effort.SpeedFactor(energy),
            Evidence.Memory,
            static () => PaceTexts.AtEqualEffort("Soule and Goldman 1972, Pandolf 1977")
        );
}

/// <summary>Speed at equal effort: in Pandolf's level-walking term power grows with the coefficient times speed squared.</summary>
/// <remarks>Field speeds suffer less on firm ground (de Gruchy and others 2017, abstract read at lausr.org).</remarks>
public static class Effort
{
    public static double SpeedFactor(double energyCoefficient) => 1 / Math.Sqrt(energyCoefficient);
}
