namespace Farhold.Drawing;

/// <summary>A text on a chart, as wide as it may become in the widest face.</summary>
/// <param name="X">Where it is anchored.</param>
/// <param name="Y">Its base line.</param>
/// <param name="Look">Class of the style sheet.</param>
internal readonly record struct ChartText(double X, double Y, string Text, double Size, string Look, Anchor Anchor = Anchor.Start)
{
    /// <summary>The least that is read at arm's length, px.</summary>
    public const double Least = 14;

    public double Width => TextWidth.Of(Text, Size);

    public double Left =>
        Anchor switch
        {
            Anchor.Start => X,
            Anchor.End => X - Width,
            _ => X - (Width / 2),
        };

    public double Right => Left + Width;

    public double Top => Y - (0.8 * Size);

    public double Bottom => Y + (0.25 * Size);

    /// <summary>As large as asked where it fits, else smaller, but never less than can be read.</summary>
    public static double Fitting(string text, double size, double room) =>
        Math.Clamp(Math.Floor(room / TextWidth.Of(text, 1)), Least, size);
}
