using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Farhold.Drawing;

/// <summary>Writes a limb line as SVG.</summary>
/// <param name="id">Start of the ids inside.</param>
internal sealed class SvgText(LimbLineLook look, string id)
{
    private const string Font = "system-ui, -apple-system, 'Segoe UI', Roboto, 'DejaVu Sans', sans-serif";

    /// <param name="title">What it is, and <paramref name="description"/>, all that it shows: for screen readers.</param>
    public string Whole(Drawn line, string title, string description)
    {
        var (width, height, shapes) = (N(line.Width), N(line.Height), new StringBuilder());
        foreach (var shape in line.Shapes)
            shapes.Append(Of(shape)).Append('\n');
        return $"""
            <svg xmlns="http://www.w3.org/2000/svg" class="limb-line limb-line-{look.Name}" role="img" aria-labelledby="{id}-title {id}-desc" viewBox="0 0 {width} {height}" width="{width}" height="{height}" font-family="{Font}">
            <title id="{id}-title">{Escape(title)}</title>
            <desc id="{id}-desc">{Escape(description)}</desc>
            <defs>
            <pattern id="{id}-perhaps" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="3" height="7" class="f-stopped" fill="{look.Stopped}"/></pattern>
            <pattern id="{id}-past" width="8" height="8" patternUnits="userSpaceOnUse"><path d="M0 0L8 8M8 0L0 8" stroke="{look.Faint}" stroke-width="1.2" fill="none"/></pattern>
            <pattern id="{id}-twilight" width="4" height="4" patternUnits="userSpaceOnUse"><rect width="2" height="4" class="f-night" fill="{look.Night}"/></pattern>
            </defs>
            <rect width="{width}" height="{height}" {Fill(Tone.Ground)}/>
            {shapes}</svg>

            """;
    }

    private string Of(Shape shape) =>
        shape switch
        {
            Shape.Box b => $"<rect x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.Width)}\" height=\"{N(b.Height)}\" "
                + $"{(b.Hatch is { } hatch ? $"fill=\"url(#{id}-{Wire.Word(hatch)})\"" : Fill(b.Fill))}{Edge(b.Stroke)}/>",
            Shape.Line l => $"<line x1=\"{N(l.X1)}\" y1=\"{N(l.Y1)}\" x2=\"{N(l.X2)}\" y2=\"{N(l.Y2)}\"{Edge(l.Stroke)}/>",
            Shape.Area a => $"<path d=\"{string.Concat(a.Outline.Select(Step))}\" {Fill(a.Fill)}{Edge(a.Stroke)}/>",
            Shape.Disc d => $"<circle cx=\"{N(d.X)}\" cy=\"{N(d.Y)}\" r=\"{N(d.Radius)}\" {Fill(d.Fill)}{Edge(d.Stroke)}/>",
            Shape.Words w => $"<text x=\"{N(w.X)}\" y=\"{N(w.Y)}\" font-size=\"{N(w.Size)}\"{Anchored(w.Anchor)}"
                + $"{(w.Bold ? " font-weight=\"700\"" : "")} {Fill(Tone.Ink)}>{Escape(w.Text)}</text>",
            _ => throw new UnreachableException(),
        };

    private static string Step(Outline step) =>
        step switch
        {
            Outline.Move m => $"M{N(m.X)} {N(m.Y)}",
            Outline.To t => $"L{N(t.X)} {N(t.Y)}",
            Outline.Curve c => $"C{N(c.X1)} {N(c.Y1)} {N(c.X2)} {N(c.Y2)} {N(c.X)} {N(c.Y)}",
            Outline.Close => "Z",
            _ => throw new UnreachableException(),
        };

    private static string Anchored(Anchor anchor) => anchor == Anchor.Start ? "" : $" text-anchor=\"{Wire.Word(anchor)}\"";

    private string Fill(Tone? tone) => tone is { } fill ? $"class=\"f-{Wire.Word(fill)}\" fill=\"{look.Colour(fill)}\"" : "fill=\"none\"";

    /// <summary>A shape's class is for its fill where it has one, so a stroke of its own colour goes by attribute alone.</summary>
    private string Edge(Stroke? stroke) =>
        stroke is null
            ? ""
            : $" stroke=\"{look.Colour(stroke.Tone)}\" stroke-width=\"{N(stroke.Width)}\""
                + (stroke.Dashes.IsEmpty ? "" : $" stroke-dasharray=\"{string.Join(' ', stroke.Dashes.Select(N))}\"");

    public static string Escape(string text) =>
        Plain
            .Line(text)
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal)
            .Replace("\uFFFE", "", StringComparison.Ordinal)
            .Replace("\uFFFF", "", StringComparison.Ordinal);

    public static string Number(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);

    private static string N(double value) => Number(value);
}
