using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>Collects the few shapes the limb line is made of.</summary>
internal sealed class Sketch
{
    private const double Thin = 1.5;

    private readonly ImmutableArray<Shape>.Builder shapes = ImmutableArray.CreateBuilder<Shape>();

    public ImmutableArray<Shape> Shapes => shapes.ToImmutable();

    public void Box(double x, double y, double width, double height, Tone? fill, Tone? stroke = null) =>
        shapes.Add(new Shape.Box(x, y, Math.Max(0, width), height, fill, Pen(stroke, Thin)));

    public void Box(
        double x,
        double y,
        double width,
        double height,
        Hatch hatch,
        Tone? stroke = null,
        params ImmutableArray<double> dashes
    ) => shapes.Add(new Shape.Box(x, y, Math.Max(0, width), height, null, Pen(stroke, Thin, dashes)) { Hatch = hatch });

    public void Line(double x1, double y1, double x2, double y2, Tone stroke, double width, params ImmutableArray<double> dashes) =>
        shapes.Add(new Shape.Line(x1, y1, x2, y2, Pen(stroke, width, dashes)!));

    /// <summary>Straight from corner to corner, and closed.</summary>
    public void Area(IEnumerable<(double X, double Y)> corners, Tone fill, Tone? stroke = null, double width = Thin) =>
        Area([.. Open(corners), new Outline.Close()], fill, stroke, width);

    public void Area(ImmutableArray<Outline> outline, Tone? fill, Tone? stroke = null, double width = Thin) =>
        shapes.Add(new Shape.Area(outline, fill, Pen(stroke, width)));

    /// <summary>Straight from corner to corner, without an area; several where they do not hang together.</summary>
    public void Strokes(Tone stroke, double width, params IEnumerable<(double X, double Y)>[] lines) =>
        Area([.. lines.SelectMany(Open)], null, stroke, width);

    public void Disc(double x, double y, double radius, Tone fill, Tone stroke, double width) =>
        shapes.Add(new Shape.Disc(x, y, radius, fill, Pen(stroke, width)));

    public void Text(double x, double y, string text, double size, bool bold = false, Anchor anchor = Anchor.Start) =>
        shapes.Add(new Shape.Words(x, y, Plain.Line(text), size, bold, anchor));

    private static IEnumerable<Outline> Open(IEnumerable<(double X, double Y)> corners) =>
        corners.Select((c, i) => i == 0 ? (Outline)new Outline.Move(c.X, c.Y) : new Outline.To(c.X, c.Y));

    private static Stroke? Pen(Tone? tone, double width, ImmutableArray<double> dashes = default) =>
        tone is { } t ? new(t, width) { Dashes = dashes.IsDefault ? [] : dashes } : null;
}
