namespace Farhold.Documents.Card;

public enum Paper
{
    A5,
    A4,
}

/// <summary>Sizes on a sheet, in points. No text is smaller than 7.5, which a photocopy still shows (design).</summary>
/// <param name="Columns">In which the sections stand; the log too.</param>
/// <param name="PictureAt">Pixels of the limb line's own layout: its smallest letters then come out at 7 or more.</param>
internal sealed record PaperLook(double Width, double Height, double Margin, double Size, double Label, int Columns, double PictureAt)
{
    /// <summary>Between two columns.</summary>
    private const double Gap = 14;

    public double Large => Size * 1.7;

    public double Head => Size * 1.15;

    public double Title => Size * 1.6;

    /// <summary>From one baseline to the next.</summary>
    public double Line => Size * 1.22;

    public double Inner => Width - (2 * Margin);

    public double Column => (Inner - (Gap * (Columns - 1))) / Columns;

    public double ColumnLeft(int column) => Margin + (column * (Column + Gap));

    /// <summary>Where the foot begins.</summary>
    public double Bottom => Height - Margin - Line;

    public static PaperLook Of(Paper paper) =>
        paper == Paper.A4 ? new(595.28, 841.89, 30, 7.5, 62, 2, 900) : new(419.53, 595.28, 24, 7.5, 74, 1, 590);
}
