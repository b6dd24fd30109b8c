using System.Globalization;
using System.Text;
using Farhold.Drawing;

namespace Farhold.Study.Reports;

/// <summary>Writes a picture that stands alone, dark on light, meaning by shape and hatch as well as by colour.</summary>
internal sealed class StudySvg
{
    public const double Letter = 14;
    private const string Font = "system-ui, -apple-system, 'Segoe UI', Roboto, 'DejaVu Sans', sans-serif";
    private readonly StringBuilder svg = new();

    /// <param name="title">What it is, for screen readers and as its head.</param>
    public StudySvg(string id, double width, double height, string title)
    {
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""
            <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{id}-title {id}-desc" viewBox="0 0 {N(width)} {N(
                height
            )}" width="{N(width)}" height="{N(height)}" font-family="{Font}" font-size="{N(Letter)}" fill="#101315">
            <title id="{id}-title">{SvgText.Escape(title)}</title>
            <desc id="{id}-desc">{SvgText.Escape(StudyTexts.NotGuidance)}</desc>
            <defs><pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" stroke="#101315" stroke-width="1.4" opacity="0.55"/></pattern></defs>
            <rect width="{N(width)}" height="{N(height)}" fill="#ffffff"/>

            """
        );
        var y = 20.0;
        foreach (var line in Lines(StudyTexts.NotGuidance, width - 24).Concat(Lines(title, width - 24)))
        {
            Words(12, y, line, bold: true);
            y += 19;
        }

        Top = y;
    }

    /// <summary>Below its head, px.</summary>
    public double Top { get; }

    public static int HeadLines(string title, double width) =>
        Lines(StudyTexts.NotGuidance, width - 24).Concat(Lines(title, width - 24)).Count();

    public static double Width(string text) => TextWidth.Of(text, Letter);

    public void Box(double x, double y, double width, double height, string fill, double opacity = 1, string? edge = null) =>
        svg.Append(
            $"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(Math.Max(0, width))}\" height=\"{N(Math.Max(0, height))}\" fill=\"{fill}\""
                + (opacity < 1 ? $" fill-opacity=\"{Share(opacity)}\"" : "")
                + (edge is null ? "" : $" stroke=\"{edge}\"")
                + "/>\n"
        );

    public void Line(double x1, double y1, double x2, double y2, string stroke = "#101315", double width = 1, string? dashes = null) =>
        svg.Append($"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\"{Stroke(stroke, width, dashes)}/>\n");

    public void Path(IEnumerable<(double X, double Y)> points, string stroke, double width, string? dashes = null) =>
        svg.Append($"<path d=\"{D(points)}\" fill=\"none\"{Stroke(stroke, width, dashes)}/>\n");

    public void Area(IEnumerable<(double X, double Y)> points, string fill, double opacity) =>
        svg.Append($"<path d=\"{D(points)}Z\" fill=\"{fill}\" fill-opacity=\"{Share(opacity)}\"/>\n");

    public void Words(double x, double y, string text, string anchor = "start", bool bold = false, string? fill = null) =>
        svg.Append(
            $"<text x=\"{N(x)}\" y=\"{N(y)}\""
                + (anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")
                + (bold ? " font-weight=\"700\"" : "")
                + (fill is null ? "" : $" fill=\"{fill}\"")
                + $">{SvgText.Escape(text)}</text>\n"
        );

    public string Whole() => svg + "</svg>\n";

    private static string D(IEnumerable<(double X, double Y)> points) =>
        string.Concat(points.Select((p, i) => $"{(i == 0 ? "M" : "L")}{N(p.X)} {N(p.Y)}"));

    private static string Stroke(string stroke, double width, string? dashes) =>
        $" stroke=\"{stroke}\" stroke-width=\"{N(width)}\"" + (dashes is null ? "" : $" stroke-dasharray=\"{dashes}\"");

    private static IEnumerable<string> Lines(string text, double width) => TextTable.Fold(text, (int)(width / (0.62 * Letter)));

    private static string N(double value) => SvgText.Number(value);

    private static string Share(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
