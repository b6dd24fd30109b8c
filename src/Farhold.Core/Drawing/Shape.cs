using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>What a colour is for; <see cref="LimbLineLook"/> says which it is.</summary>
public enum Tone
{
    Ground,
    Ink,
    Faint,
    Stopped,
    Now,
    Help,
    Night,
}

/// <summary>A pattern that carries meaning without colour.</summary>
public enum Hatch
{
    /// <summary>Slanted stripes: perhaps without flow.</summary>
    Perhaps,

    /// <summary>Crossed out: past the limit.</summary>
    Past,

    /// <summary>Upright stripes.</summary>
    Twilight,
}

/// <summary>On which side of its text a label is anchored.</summary>
public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>A line, or the edge of an area.</summary>
public sealed record Stroke(Tone Tone, double Width)
{
    /// <summary>Lengths of dashes and gaps in turn; empty for a solid line.</summary>
    public ImmutableArray<double> Dashes { get; init; } = [];
}

/// <summary>A shape of the limb line, in pixels from the top left. A closed family.</summary>
public abstract record Shape
{
    private Shape() { }

    /// <param name="Fill">Null: none, or a hatch.</param>
    public sealed record Box(double X, double Y, double Width, double Height, Tone? Fill, Stroke? Stroke = null) : Shape
    {
        public Hatch? Hatch { get; init; }
    }

    public sealed record Line(double X1, double Y1, double X2, double Y2, Stroke Stroke) : Shape;

    public sealed record Area(ImmutableArray<Outline> Outline, Tone? Fill, Stroke? Stroke = null) : Shape;

    public sealed record Disc(double X, double Y, double Radius, Tone? Fill, Stroke? Stroke = null) : Shape;

    /// <param name="Y">Of the baseline.</param>
    public sealed record Words(double X, double Y, string Text, double Size, bool Bold, Anchor Anchor) : Shape;
}

/// <summary>A step along the outline of an area. A closed family.</summary>
public abstract record Outline
{
    private Outline() { }

    public sealed record Move(double X, double Y) : Outline;

    public sealed record To(double X, double Y) : Outline;

    public sealed record Curve(double X1, double Y1, double X2, double Y2, double X, double Y) : Outline;

    public sealed record Close : Outline;
}

/// <summary>A limb line laid out: shapes in the order in which they are drawn, on the ground.</summary>
public sealed record Drawn(double Width, double Height, ImmutableArray<Shape> Shapes);
