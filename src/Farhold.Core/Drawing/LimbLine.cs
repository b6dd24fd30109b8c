using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>The limb line: one time axis from first tightening to the limit and beyond, as an SVG picture.</summary>
/// <remarks>
/// Readable without colour: what is sure is solid, what is possible is striped, the time past the limit is crossed out,
/// and every mark has its word. It holds no style sheet and no script: colours are attributes, and the classes
/// <c>f-…</c> let a page replace them (<see cref="LimbLineLook.Css"/>).
/// </remarks>
public static class LimbLine
{
    public const int MinWidth = 320;
    public const int MaxWidth = 1200;

    /// <param name="widthPx">Clamped to 320–1200.</param>
    /// <param name="idPrefix">Start of the ids inside; distinct for every drawing on one page.</param>
    public static string Draw(LimbPicture picture, double widthPx, LimbLineLook? look = null, string? idPrefix = null) =>
        new SvgText(look ?? LimbLineLook.Dark, idPrefix ?? "limb-line-" + Wire.Word(picture.Limb)).Whole(
            Lay(picture, widthPx),
            DrawingTexts.LineTitle(string.Join("; ", LimbLineText.Heads(picture))),
            Describe(picture)
        );

    /// <summary>The shapes of the picture, for other papers than a page.</summary>
    /// <param name="widthPx">Clamped to 320–1200.</param>
    public static Drawn Lay(LimbPicture picture, double widthPx) =>
        new LimbLineDrawing(picture, Math.Clamp(widthPx, MinWidth, MaxWidth)).Draw();

    /// <summary>Everything the picture shows, in sentences; also inside the picture, for screen readers.</summary>
    public static string Describe(LimbPicture picture) => LimbLineText.Describe(picture);
}
