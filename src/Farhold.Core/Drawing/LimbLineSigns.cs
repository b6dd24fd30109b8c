using System.Diagnostics;

namespace Farhold.Drawing;

/// <summary>How an attempt ended, as a shape that needs no colour.</summary>
internal static class LimbLineSigns
{
    public static void Draw(Sketch sketch, AttemptResult result, double x, double y)
    {
        switch (result)
        {
            case AttemptResult.Held:
                sketch.Disc(x, y, 7, Tone.Ground, Tone.Ink, 2.5);
                sketch.Strokes(Tone.Ink, 2, [(x - 3.5, y), (x - 1, y + 3), (x + 4, y - 3)]);
                break;
            case AttemptResult.Bled:
                sketch.Area(
                    [
                        new Outline.Move(x, y - 9),
                        new Outline.Curve(x + 8, y, x + 6, y + 8, x, y + 8),
                        new Outline.Curve(x - 6, y + 8, x - 8, y, x, y - 9),
                        new Outline.Close(),
                    ],
                    Tone.Ink
                );
                break;
            case AttemptResult.Abandoned:
                sketch.Strokes(Tone.Ink, 3, [(x - 6, y - 6), (x + 6, y + 6)], [(x + 6, y - 6), (x - 6, y + 6)]);
                break;
            case AttemptResult.UnderWay:
                sketch.Area([(x, y - 7), (x + 9, y), (x, y + 7)], Tone.Ink);
                break;
            default:
                throw new UnreachableException();
        }
    }
}
