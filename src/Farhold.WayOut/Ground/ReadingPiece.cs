namespace Farhold.WayOut.Ground;

/// <summary>How far the reading of something large has come: whoever reads in pieces can do something else between them, or stop.</summary>
/// <param name="Share">0 to 1; a guess good enough for a bar.</param>
/// <param name="Read">Null until the last piece, which has the whole: nothing half-read is ever given out.</param>
public readonly record struct ReadingPiece<T>(double Share, Read<T>? Read)
{
    /// <summary>Elements or points of one piece: some milliseconds of a phone's work (design).</summary>
    internal const int Length = 256;
}
