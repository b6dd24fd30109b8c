using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>The limb line in a few rows, to be read at a glance: a lane for each limb, all on one time axis.</summary>
/// <remarks>
/// Solid: surely without blood. Slanted: perhaps. Crossed: past the limit. Dashes: the window ends; solid line: the limit; tall line: now.
/// Its colours are those of the page, by the names of its tokens. Everything it shows stands in words in <see cref="Describe"/>.
/// </remarks>
public static class LimbLanes
{
    private const double Top = 16;
    private const double Lane = 20;
    private const double Gap = 8;
    private const double Axis = 20;
    private const double Letter = 13.5;

    /// <param name="pictures">At least one, all of the same moment.</param>
    /// <param name="widthPx">At least 280.</param>
    /// <param name="id">Start of the ids inside; distinct for every drawing on one page.</param>
    public static string Draw(ImmutableArray<LimbPicture> pictures, double widthPx, string id)
    {
        var width = Math.Max(280, widthPx);
        var axes = pictures.Select(p => TimeAxis.Of(p, 0, width)).ToArray();
        var axis = new TimeAxis(axes.Min(a => a.From), axes.Max(a => a.To), 0, width);
        var bottom = Top + (pictures.Length * (Lane + Gap)) - Gap;
        var height = bottom + 4 + Axis;
        var svg = new StringBuilder(
            $"""
            <svg class="lanes" viewBox="0 0 {N(width)} {N(height)}" role="img" aria-label="{SvgText.Escape(
                Describe(pictures)
            )}" dir="ltr"><defs><pattern id="{id}-u" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="3" height="6" fill="var(--act)"/></pattern><pattern id="{id}-x" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0H7M0 0V7" stroke="var(--rule)" stroke-width="1.6" fill="none"/></pattern></defs>
            """
        );
        var y = Top;
        foreach (var picture in pictures)
        {
            var (first, limit) = (axis.X(picture.Clock.FirstTightened.Earliest), axis.X(picture.LimitAt));
            Box(first, y, limit - first, "var(--sheet)", "var(--rule)");
            if (limit < width)
                Box(limit, y, width - limit, $"url(#{id}-x)", "var(--rule)");
            foreach (var stretch in picture.Clock.Stretches)
                Box(
                    axis.X(stretch.From),
                    y,
                    Math.Max(2, axis.X(stretch.To) - axis.X(stretch.From)),
                    stretch.Stopped == Truth.Met ? "var(--act)" : $"url(#{id}-u)",
                    null
                );
            if (picture.WindowAt > picture.Now)
                Upright(axis.X(picture.WindowAt), y, "2", " stroke-dasharray=\"4 3\"");
            if (limit < width)
                Upright(limit, y, "3", "");
            if (pictures.Length > 1)
                Name(picture, y);
            y += Lane + Gap;
        }

        var now = axis.X(pictures[0].Now);
        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{N(now)} 0V{N(bottom + 4)}\" stroke=\"var(--ground)\" stroke-width=\"6\"/>");
        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{N(now)} 0V{N(bottom + 4)}\" stroke=\"var(--ink)\" stroke-width=\"3\"/>");
        if (pictures is [var one])
            Heads(one);
        foreach (var (x, local) in axis.Ticks(pictures[0].Zone, 56).Where(t => t.X + (TextWidth.Of("00:00", Letter) / 2) <= width))
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path d=\"M{N(x)} {N(bottom + 4)}v4\" stroke=\"var(--rule)\" stroke-width=\"2\"/>"
                    + $"<text class=\"f\" x=\"{N(x)}\" y=\"{N(height - 1)}\" text-anchor=\"middle\">{local:HH:mm}</text>"
            );
        return svg.Append("</svg>").ToString();

        void Box(double x, double top, double w, string fill, string? stroke) =>
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{N(x)}\" y=\"{N(top)}\" width=\"{N(Math.Max(0, w))}\" height=\"{N(Lane)}\" fill=\"{fill}\""
                    + $"{(stroke is null ? "" : $" stroke=\"{stroke}\" stroke-width=\"1.5\"")}/>"
            );

        void Upright(double x, double top, string w, string dashes) =>
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path d=\"M{N(x)} {N(top - 3)}V{N(top + Lane + 3)}\" stroke=\"var(--ink)\" stroke-width=\"{w}\"{dashes}/>"
            );

        // What the upright lines are: now beside its line where there is room, the others before theirs.
        void Heads(LimbPicture picture)
        {
            var (x, nowWidth) = (axis.X(picture.Now), TextWidth.Of(DrawingTexts.Now, Letter) + 6);
            var marks = Marks(picture).Where(m => m.At <= axis.To).ToArray();
            var first = marks.Select(m => axis.X(m.At) - 4).FirstOrDefault(width);
            var end = x + 4;
            if (x >= nowWidth)
                Head(x - nowWidth, DrawingTexts.Now);
            else if (x + nowWidth + 6 <= first)
            {
                Head(x + 6, DrawingTexts.Now);
                end = x + nowWidth + 6;
            }
            foreach (var (at, text) in marks)
            {
                var w = TextWidth.Of(text, Letter);
                var left = Math.Max(end, Math.Min(axis.X(at) - 4, width - w));
                if (left > axis.X(at) + 8 || left + w > width)
                    continue;
                Head(left, text);
                end = left + w + 8;
            }
        }

        // On a ground of its own: it may have to stand over the lane's filling.
        void Name(LimbPicture picture, double top)
        {
            var name = Say.Limb(picture.Limb);
            var x = Math.Min(Math.Max(axis.X(picture.WindowAt), axis.X(picture.Now)) + 8, width - TextWidth.Of(name, Letter) - 4);
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<text class=\"on-lane\" x=\"{N(x)}\" y=\"{N(top + 15)}\">{SvgText.Escape(name)}</text>"
            );
        }

        void Head(double x, string text) =>
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(x)}\" y=\"11\">{SvgText.Escape(text)}</text>");
    }

    /// <summary>The same in a sentence a limb.</summary>
    public static string Describe(ImmutableArray<LimbPicture> pictures) => string.Join(" ", pictures.Select(LimbLine.Describe));

    private static IEnumerable<(Instant At, string Text)> Marks(LimbPicture picture)
    {
        if (picture.WindowAt > picture.Now)
            yield return (picture.WindowAt, $"{Hours(picture.Limits.Window)} {TimeAxis.Clock(picture.WindowAt, picture.Zone)}");
        yield return (picture.LimitAt, $"{Hours(picture.Limits.Limit)} {TimeAxis.Clock(picture.LimitAt, picture.Zone)}");
    }

    private static string Hours(Duration d) => d.TotalHours % 1 == 0 ? DrawingTexts.Hours(Say.Number(d.TotalHours)) : Say.Duration(d);

    private static string N(double value) => SvgText.Number(value);
}
