using System.Globalization;
using System.Text;

namespace Farhold.Drawing;

/// <summary>Writes the few shapes the limb line is made of.</summary>
internal sealed class SvgText(LimbLineLook look)
{
    public const string Font = "system-ui, -apple-system, 'Segoe UI', Roboto, 'DejaVu Sans', sans-serif";

    private readonly StringBuilder svg = new();

    public static string Escape(string text) => Plain.Line(text)
        .Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("\uFFFE", "", StringComparison.Ordinal).Replace("\uFFFF", "", StringComparison.Ordinal);

    public static string Number(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);

    public void Raw(string markup) => svg.Append(markup).Append('\n');

    public void Box(double x, double y, double width, double height, string fill, string? stroke = null, string more = "") =>
        Raw($"<rect x=\"{Number(x)}\" y=\"{Number(y)}\" width=\"{Number(Math.Max(0, width))}\" height=\"{Number(height)}\" "
            + $"{Fill(fill)}{(stroke is null ? "" : " " + Stroke(stroke, 1.5))}{more}/>");

    public void Line(double x1, double y1, double x2, double y2, string stroke, double width, string more = "") =>
        Raw($"<line x1=\"{Number(x1)}\" y1=\"{Number(y1)}\" x2=\"{Number(x2)}\" y2=\"{Number(y2)}\" {Stroke(stroke, width)}{more}/>");

    public void Path(string d, string fill, string? stroke = null, double width = 1.5, string more = "") =>
        Raw($"<path d=\"{d}\" {Fill(fill)}{(stroke is null ? "" : " " + Stroke(stroke, width))}{more}/>");

    public void Text(double x, double y, string text, double size, bool bold = false, Anchor anchor = Anchor.Start) =>
        Raw($"<text x=\"{Number(x)}\" y=\"{Number(y)}\" font-size=\"{Number(size)}\"{Anchored(anchor)}{(bold ? " font-weight=\"700\"" : "")} {Fill("ink")}>{Escape(text)}</text>");

    public override string ToString() => svg.ToString();

    private static string Anchored(Anchor anchor) => anchor == Anchor.Start ? "" : $" text-anchor=\"{Wire.Word(anchor)}\"";

    private string Fill(string name) => name switch
    {
        "none" => "fill=\"none\"",
        _ when name.StartsWith("url", StringComparison.Ordinal) => $"fill=\"{name}\"",
        _ => $"class=\"f-{name}\" fill=\"{look.Colour(name)}\"",
    };

    /// <summary>A shape's class is for its fill where it has one, so a stroke of its own colour goes by attribute alone.</summary>
    private string Stroke(string name, double width) => $"stroke=\"{look.Colour(name)}\" stroke-width=\"{Number(width)}\"";
}
