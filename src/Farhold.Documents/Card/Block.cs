namespace Farhold.Documents.Card;

/// <summary>Something that stays on one page.</summary>
/// <param name="Height">Points, the space after it included.</param>
/// <param name="WithNext">A heading: never the last thing on a page.</param>
/// <param name="Draw">From its left and upper edge, in points from those of the page.</param>
internal sealed record Block(double Height, bool WithNext, Action<Pen, double, double> Draw);

/// <summary>A block where it stands.</summary>
internal readonly record struct Placed(Block Block, double X, double Y);
