using System.Text;

namespace Farhold.Drawing;

/// <summary>Writes the few shapes that charts are made of, each with the class its colours go by. Never mirrored.</summary>
internal sealed class ChartSvg
{
    private readonly StringBuilder svg = new();
    private readonly string hatch;

    /// <param name="id">Distinct for every chart on one page.</param>
    public ChartSvg(string id, double width, double height, string label)
    {
        hatch = id + "-hatch";
        svg.Append(
            $"<svg viewBox=\"0 0 {SvgText.Number(width)} {SvgText.Number(height)}\" role=\"img\" dir=\"ltr\" "
                + $"aria-label=\"{SvgText.Escape(label)}\" xmlns=\"http://www.w3.org/2000/svg\"><defs><pattern id=\"{hatch}\" width=\"6\" "
                + $"height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path class=\"c-hatch\" d=\"M0 0V6\"/>"
                + $"</pattern></defs>"
        );
    }

    public void Box(string look, double x, double y, double width, double height, bool hatched = false) =>
        svg.Append(
            $"<rect class=\"c-{look}\" x=\"{SvgText.Number(x)}\" y=\"{SvgText.Number(y)}\" width=\"{SvgText.Number(Math.Max(0, width))}\" "
                + $"height=\"{SvgText.Number(Math.Max(0, height))}\"{(hatched ? $" fill=\"url(#{hatch})\"" : "")}/>"
        );

    public void Path(string look, string d)
    {
        if (d.Length > 0)
            svg.Append($"<path class=\"c-{look}\" d=\"{d}\"/>");
    }

    public void Circle(string look, double x, double y, double radius) =>
        svg.Append($"<circle class=\"c-{look}\" cx=\"{SvgText.Number(x)}\" cy=\"{SvgText.Number(y)}\" r=\"{SvgText.Number(radius)}\"/>");

    public void Text(ChartText text) =>
        svg.Append(
            $"<text class=\"c-{text.Look}\" x=\"{SvgText.Number(text.X)}\" y=\"{SvgText.Number(text.Y)}\" "
                + $"font-size=\"{SvgText.Number(text.Size)}\""
                + (text.Anchor == Anchor.Start ? "" : $" text-anchor=\"{Wire.Word(text.Anchor)}\"")
                + $">{SvgText.Escape(text.Text)}</text>"
        );

    public string Whole() => svg.Append("</svg>").ToString();
}
