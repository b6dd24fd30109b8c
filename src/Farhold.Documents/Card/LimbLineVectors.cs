using System.Diagnostics;
using System.Globalization;
using Farhold.Drawing;
using PdfSharp.Drawing;

namespace Farhold.Documents.Card;

/// <summary>The limb line's own shapes (<see cref="LimbLine"/>) as vectors on paper.</summary>
internal sealed class LimbLineVectors
{
    private static readonly LimbLineLook Look = LimbLineLook.Pale;

    private readonly Drawn picture;
    private readonly double scale;

    private LimbLineVectors(Drawn picture, double scale) => (this.picture, this.scale) = (picture, scale);

    public double Height => picture.Height * scale;

    /// <param name="width">On paper, in points.</param>
    /// <param name="drawnAt">Pixels it is laid out in before it is scaled: the more, the smaller its letters.</param>
    public static LimbLineVectors For(LimbPicture line, double width, double drawnAt)
    {
        var picture = LimbLine.Lay(line, drawnAt);
        return new(picture, width / picture.Width);
    }

    public void Draw(XGraphics to, double x, double y)
    {
        var state = to.Save();
        to.TranslateTransform(x, y);
        to.ScaleTransform(scale);
        Box(to, new(0, 0, picture.Width, picture.Height, Tone.Ground));
        foreach (var shape in picture.Shapes)
            Put(to, shape);
        to.Restore(state);
    }

    private static void Put(XGraphics to, Shape shape)
    {
        switch (shape)
        {
            case Shape.Box box:
                Box(to, box);
                break;
            case Shape.Line line:
                to.DrawLine(Pen(line.Stroke)!, line.X1, line.Y1, line.X2, line.Y2);
                break;
            case Shape.Area area:
                Area(to, area);
                break;
            case Shape.Disc(var x, var y, var r, var fill, var stroke):
                to.DrawEllipse(Pen(stroke), Brush(fill), x - r, y - r, 2 * r, 2 * r);
                break;
            case Shape.Words words:
                Words(to, words);
                break;
            default:
                throw new UnreachableException();
        }
    }

    private static void Box(XGraphics to, Shape.Box shape)
    {
        var box = new XRect(shape.X, shape.Y, shape.Width, shape.Height);
        if (shape.Hatch is { } hatch)
            Pattern(to, box, hatch);
        else if (Brush(shape.Fill) is { } brush)
            to.DrawRectangle(brush, box);
        if (Pen(shape.Stroke) is { } pen)
            to.DrawRectangle(pen, box);
    }

    /// <summary>The hatches, as lines within the box.</summary>
    private static void Pattern(XGraphics to, XRect box, Hatch hatch)
    {
        var state = to.Save();
        to.IntersectClip(box);
        var pen = new XPen(XColors.Black, 0.8);
        if (hatch == Hatch.Twilight)
            for (var x = box.Left; x < box.Right; x += 4)
                to.DrawLine(new XPen(XColors.Gray, 1), x, box.Top, x, box.Bottom);
        else
            for (var x = box.Left - box.Height; x < box.Right; x += 7)
            {
                to.DrawLine(pen, x, box.Bottom, x + box.Height, box.Top);
                if (hatch == Hatch.Past)
                    to.DrawLine(pen, x, box.Top, x + box.Height, box.Bottom);
            }

        to.Restore(state);
    }

    private static void Area(XGraphics to, Shape.Area shape)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        XPoint at = default;
        foreach (var step in shape.Outline)
            switch (step)
            {
                case Outline.Move(var x, var y):
                    path.StartFigure();
                    at = new(x, y);
                    break;
                case Outline.To(var x, var y):
                    path.AddLine(at.X, at.Y, x, y);
                    at = new(x, y);
                    break;
                case Outline.Curve c:
                    path.AddBezier(at.X, at.Y, c.X1, c.Y1, c.X2, c.Y2, c.X, c.Y);
                    at = new(c.X, c.Y);
                    break;
                case Outline.Close:
                    path.CloseFigure();
                    break;
                default:
                    throw new UnreachableException();
            }

        if (Brush(shape.Fill) is { } brush)
            to.DrawPath(Pen(shape.Stroke), brush, path);
        else if (Pen(shape.Stroke) is { } pen)
            to.DrawPath(pen, path);
    }

    private static void Words(XGraphics to, Shape.Words shape)
    {
        var font = CardFonts.Of(shape.Size, shape.Bold);
        var text = CardFonts.Printable(shape.Text);
        var width = to.MeasureString(text, font).Width;
        var left = shape.Anchor switch
        {
            Anchor.Start => 0,
            Anchor.Middle => width / 2,
            Anchor.End => width,
            _ => throw new UnreachableException(),
        };
        to.DrawString(text, font, XBrushes.Black, shape.X - left, shape.Y);
    }

    private static XSolidBrush? Brush(Tone? tone) => tone is { } fill ? new(Colour(fill)) : null;

    private static XPen? Pen(Stroke? stroke)
    {
        if (stroke is null)
            return null;
        var pen = new XPen(Colour(stroke.Tone), stroke.Width);
        if (!stroke.Dashes.IsEmpty)
            pen.DashPattern = [.. stroke.Dashes.Select(d => d / stroke.Width)];
        return pen;
    }

    private static XColor Colour(Tone tone) =>
        XColor.FromArgb(0xFF000000 | uint.Parse(Look.Colour(tone).AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture));
}
