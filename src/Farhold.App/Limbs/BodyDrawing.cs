using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.Limbs;

/// <summary>Our own figure of a body in blocks that can be touched, from the front or from the back, 328 by 468; never mirrored.</summary>
/// <remarks>
/// From the front the casualty's right is on the left of the picture, from the back on its right. Solid: looked at; dashed: not. A band
/// is a tourniquet (filled: tight, striped: perhaps, outline: loose), a ringed cross a wound, a hatched square a dressing.
/// </remarks>
internal sealed class BodyDrawing(ImmutableArray<LimbFacts> limbs, ImmutableArray<RegionFacts> regions, BodyFace face)
{
    private const string Head = "M0 2C14 2 21.5 12 21.5 27 21.5 43 11 56 0 56-11 56-21.5 43-21.5 27-21.5 12-14 2 0 2Z";
    private const string Neck = "M-10 58C-10 64-11 67.5-22 73.5L22 73.5C11 67.5 10 64 10 58 5 61-5 61-10 58Z";

    private const string Chest =
        "M-16 76.5L16 76.5C25 79.5 37 80 45.5 86.5 42.5 93 41.5 102 42 110 41.5 121 39.5 131 37.5 140L-37.5 140C-39.5 131-41.5 121-42 110-41.5 102-42.5 93-45.5 86.5-37 80-25 79.5-16 76.5Z";

    private const string Belly =
        "M-37 143.5 37 143.5C35 156 33.5 166 34.5 178 35.3 186 37 192 38.3 197.5L-38.3 197.5C-37 192-35.3 186-34.5 178-33.5 166-35 156-37 143.5Z";

    private const string Pelvis =
        "M-39 201 39 201C41.5 209 43.5 217 44.3 224.5L5 251C2 252.5-2 252.5-5 251L-44.3 224.5C-43.5 217-41.5 209-39 201Z";

    // Of the side on the right of the picture; the other is its mirror image.
    private static readonly ImmutableArray<string> Arm =
    [
        "M49.5 88.5C58 84 67 90 69 102 71.5 119 78 136 84 152 80 157.5 72 160 66 158 60 142 50.5 125 45.5 110 45 102 46.5 94 49.5 88.5Z",
        "M66.8 161.6C73.5 163 80.5 161 85.3 156 92.5 170 99.5 192 104.3 214L93 219C82.5 204 72 184 66.8 161.6Z",
        "M93.8 222.2 105.3 217.2C110 224 115 233 115 243 114.6 251 109 256.5 104.5 252.5 99 247 94.5 236 93.8 222.2Z",
    ];

    private static readonly ImmutableArray<string> Leg =
    [
        "M44.8 228.5 7 254C6.3 281 8.5 312 12.5 338 19 341.5 28 341.5 34.5 338 41 312 48.5 270 44.8 228.5Z",
        "M12.5 342C19 345.5 28 345.5 34.5 342 39.5 362 39 384 34 404 31 418 29.8 428 29.6 437L18 437C17 420 13 404 11.8 384 11 366 11.5 352 12.5 342Z",
        "M17.8 440.5 29.8 440.5C31.5 447 37 453.5 39 458.5 39 462.5 35 463.5 28 463.5L21 463.5C16.5 463.5 15.5 459.5 16 454 16.8 449 17.5 445 17.8 440.5Z",
    ];

    private readonly StringBuilder svg = new();

    /// <summary>The casualty's left is on the right of the picture, seen from the front.</summary>
    public static bool IsOnTheRight(Limb limb, BodyFace face) => limb is Limb.LeftArm or Limb.LeftLeg == (face == BodyFace.Front);

    public string Draw()
    {
        svg.Append(
            """
            <svg class="figure" viewBox="0 0 328 468" aria-hidden="true"><defs><pattern id="body-perhaps" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="3" height="6" fill="var(--act)"/></pattern></defs>
            """
        );
        Trunk();
        foreach (var limb in limbs)
        foreach (var block in limb.IsArm ? Arm : Leg)
            Block(block, limb.Looked, Flip(limb.Limb));
        foreach (var limb in limbs)
            Marks(limb);
        return svg.Append("</svg>").ToString();
    }

    private void Trunk()
    {
        Block(Head, Looked(BodyRegion.Head));
        Block(Neck, Looked(BodyRegion.Neck));
        Block(Chest, Looked(face == BodyFace.Front ? BodyRegion.Chest : BodyRegion.Back));
        Block(Belly, Looked(face == BodyFace.Front ? BodyRegion.Abdomen : BodyRegion.Back));
        Block(Pelvis, Looked(BodyRegion.Pelvis));
        foreach (var (region, y) in face == BodyFace.Front ? Front : Back)
            if (regions.FirstOrDefault(r => r.Region == region) is { Wounded: true } found)
                Wound(164, y, found.Dressed);
    }

    private static readonly ImmutableArray<(BodyRegion Region, double Y)> Front =
    [
        (BodyRegion.Head, 30),
        (BodyRegion.Neck, 66),
        (BodyRegion.Chest, 108),
        (BodyRegion.Abdomen, 170),
        (BodyRegion.Pelvis, 212),
        (BodyRegion.Groin, 238),
    ];

    private static readonly ImmutableArray<(BodyRegion Region, double Y)> Back = [(BodyRegion.Head, 30), (BodyRegion.Back, 130)];

    private bool Looked(BodyRegion region) => regions.First(r => r.Region == region).Looked;

    private string Flip(Limb limb) => IsOnTheRight(limb, face) ? "" : " scale(-1 1)";

    private void Block(string path, bool looked, string flip = "") =>
        svg.Append($"<path class=\"block {(looked ? "seen" : "unseen-yet")}\" transform=\"translate(164 0){flip}\" d=\"{path}\"/>");

    private void Marks(LimbFacts limb)
    {
        var isArm = limb.IsArm;
        var side = IsOnTheRight(limb.Limb, face) ? 1 : -1;
        if (limb.On is { } on)
        {
            var band = isArm ? "M47 112 72 102 76 119 52 130Z" : "M5 270 48 265 48.2 283 6 288Z";
            var look = on switch
            {
                Truth.Met => "fill=\"var(--act)\" stroke=\"var(--ground)\"",
                Truth.Unknown => "fill=\"url(#body-perhaps)\" stroke=\"var(--act)\"",
                _ => "fill=\"var(--ground)\" stroke=\"var(--act)\" stroke-dasharray=\"4 3\"",
            };
            svg.Append($"<path transform=\"translate(164 0){Flip(limb.Limb)}\" d=\"{band}\" {look} stroke-width=\"2\"/>");
        }
        if (limb.Wounded)
            Wound(164 + (side * (isArm ? 84 : 24)), isArm ? 190 : 340, limb.Dressed);
        if (limb.Pulse is { } pulse)
            Pulse(164 + (side * (isArm ? 105 : 26)), isArm ? 240 : 452, pulse);
    }

    private void Wound(double x, double y, bool dressed) =>
        svg.Append(
            dressed
                ? $"<g transform=\"translate({x} {y})\"><rect x=\"-11\" y=\"-10\" width=\"22\" height=\"20\" rx=\"3\" fill=\"var(--ground)\" stroke=\"var(--ink)\" stroke-width=\"2\"/><path d=\"M-11 0-1-10M-11 9 8-10M-4 10 11-5M5 10 11 4\" stroke=\"var(--ink)\" stroke-width=\"1.6\"/></g>"
                : $"<g transform=\"translate({x} {y})\"><circle r=\"11\" fill=\"var(--stop-fill)\" stroke=\"var(--stop-line)\" stroke-width=\"2.5\"/><path d=\"M-4.5-4.5 4.5 4.5M4.5-4.5-4.5 4.5\" stroke=\"var(--stop)\" stroke-width=\"3\" stroke-linecap=\"round\"/></g>"
        );

    private void Pulse(double x, double y, DistalPulse pulse) =>
        svg.Append(
            $"<g transform=\"translate({x} {y})\"><circle r=\"8\" fill=\"{(pulse == DistalPulse.Present ? "var(--ink)" : "var(--ground)")}\" stroke=\"var(--ink)\" stroke-width=\"2\"/>"
                + (pulse == DistalPulse.Present ? "" : "<path d=\"M-7 7 7-7\" stroke=\"var(--ink)\" stroke-width=\"2\"/>")
                + "</g>"
        );
}
