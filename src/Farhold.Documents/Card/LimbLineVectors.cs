using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PdfSharp.Drawing;

namespace Farhold.Documents.Card;

/// <summary>The limb line's own picture (<see cref="LimbLine"/>) as vectors on paper: the few shapes it is made of, no more.</summary>
internal sealed partial class LimbLineVectors
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly XElement picture;
    private readonly double scale;

    private LimbLineVectors(XElement picture, double scale) => (this.picture, this.scale) = (picture, scale);

    public double Height => N(picture, "height") * scale;

    /// <param name="width">On paper, in points.</param>
    /// <param name="drawnAt">Pixels it is laid out in before it is scaled: the more, the smaller its letters.</param>
    public static LimbLineVectors Of(LimbPicture line, double width, double drawnAt) =>
        new(XElement.Parse(LimbLine.Draw(line, drawnAt, LimbLineLook.Pale)), width / drawnAt);

    public void Draw(XGraphics to, double x, double y)
    {
        var state = to.Save();
        to.TranslateTransform(x, y);
        to.ScaleTransform(scale);
        foreach (var shape in picture.Elements().Where(e => e.Name.LocalName is not ("title" or "desc" or "defs")))
            Shape(to, shape);
        to.Restore(state);
    }

    private static void Shape(XGraphics to, XElement shape)
    {
        switch (shape.Name.LocalName)
        {
            case "rect":
                Box(to, shape);
                break;
            case "line":
                to.DrawLine(Stroke(shape)!, N(shape, "x1"), N(shape, "y1"), N(shape, "x2"), N(shape, "y2"));
                break;
            case "path":
                Area(to, shape);
                break;
            case "circle":
                Disc(to, shape);
                break;
            case "text":
                Words(to, shape);
                break;
            default:
                throw new NotSupportedException($"The limb line holds a {shape.Name.LocalName}, which the card can't draw.");
        }
    }

    private static void Box(XGraphics to, XElement shape)
    {
        var box = new XRect(N(shape, "x"), N(shape, "y"), N(shape, "width"), N(shape, "height"));
        var fill = (string?)shape.Attribute("fill") ?? "none";
        if (fill.StartsWith("url", StringComparison.Ordinal))
            Pattern(to, box, fill);
        else if (Fill(shape) is { } brush)
            to.DrawRectangle(brush, box);
        if (Stroke(shape) is { } pen)
            to.DrawRectangle(pen, box);
    }

    /// <summary>The three patterns of the picture, as lines within the box.</summary>
    private static void Pattern(XGraphics to, XRect box, string name)
    {
        var state = to.Save();
        to.IntersectClip(box);
        var pen = new XPen(XColors.Black, 0.8);
        if (name.Contains("-twilight", StringComparison.Ordinal))
            for (var x = box.Left; x < box.Right; x += 4)
                to.DrawLine(new XPen(XColors.Gray, 1), x, box.Top, x, box.Bottom);
        else
            for (var x = box.Left - box.Height; x < box.Right; x += 7)
            {
                to.DrawLine(pen, x, box.Bottom, x + box.Height, box.Top);
                if (name.Contains("-past", StringComparison.Ordinal))
                    to.DrawLine(pen, x, box.Top, x + box.Height, box.Bottom);
            }

        to.Restore(state);
    }

    private static void Disc(XGraphics to, XElement shape)
    {
        var (x, y, r) = (N(shape, "cx"), N(shape, "cy"), N(shape, "r"));
        to.DrawEllipse(Stroke(shape), Fill(shape), x - r, y - r, 2 * r, 2 * r);
    }

    /// <summary>Moves, straight lines, curves and closings: all the picture has.</summary>
    private static void Area(XGraphics to, XElement shape)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        XPoint at = default;
        foreach (Match step in Steps().Matches((string)shape.Attribute("d")!))
        {
            var n = step.Groups[2].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number).ToArray();
            switch (step.Groups[1].Value)
            {
                case "M":
                    path.StartFigure();
                    at = new(n[0], n[1]);
                    break;
                case "L":
                    path.AddLine(at.X, at.Y, n[0], n[1]);
                    at = new(n[0], n[1]);
                    break;
                case "C":
                    path.AddBezier(at.X, at.Y, n[0], n[1], n[2], n[3], n[4], n[5]);
                    at = new(n[4], n[5]);
                    break;
                default:
                    path.CloseFigure();
                    break;
            }
        }

        if (Fill(shape) is { } brush)
            to.DrawPath(Stroke(shape), brush, path);
        else if (Stroke(shape) is { } pen)
            to.DrawPath(pen, path);
    }

    [GeneratedRegex("([MLCZ])([-0-9. ]*)")]
    private static partial Regex Steps();

    private static XSolidBrush? Fill(XElement shape) => (string?)shape.Attribute("fill") is { } fill && fill.StartsWith('#')
        ? new(XColor.FromArgb(Argb(fill))) : null;

    private static void Words(XGraphics to, XElement shape)
    {
        var font = CardFonts.Of(N(shape, "font-size"), shape.Attribute("font-weight") is not null);
        var text = CardFonts.Printable(shape.Value);
        var width = to.MeasureString(text, font).Width;
        var x = N(shape, "x") - ((string?)shape.Attribute("text-anchor") switch { "middle" => width / 2, "end" => width, _ => 0 });
        to.DrawString(text, font, XBrushes.Black, x, N(shape, "y"));
    }

    private static XPen? Stroke(XElement shape)
    {
        if ((string?)shape.Attribute("stroke") is not { } colour || colour == "none")
            return null;
        var pen = new XPen(XColor.FromArgb(Argb(colour)), N(shape, "stroke-width"));
        if ((string?)shape.Attribute("stroke-dasharray") is { } dashes)
            pen.DashPattern = [.. dashes.Split(' ').Select(d => Number(d) / pen.Width)];
        return pen;
    }

    private static uint Argb(string colour) => 0xFF000000 | uint.Parse(colour.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static double N(XElement shape, string name) => (string?)shape.Attribute(name) is { } text ? Number(text) : 0;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
