using System.Diagnostics;

namespace Farhold.Drawing;

/// <summary>How an attempt ended, as a shape that needs no colour.</summary>
internal sealed class LimbLineSigns(LimbLineLook look)
{
    public LimbLineLook Look { get; } = look;

    public void Draw(SvgText svg, AttemptResult result, double x, double y)
    {
        string N(double v) => SvgText.Number(v);
        switch (result)
        {
            case AttemptResult.Held:
                svg.Raw($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"7\" class=\"f-ground\" fill=\"{Look.Ground}\" stroke=\"{Look.Ink}\" stroke-width=\"2.5\"/>");
                svg.Path($"M{N(x - 3.5)} {N(y)}L{N(x - 1)} {N(y + 3)}L{N(x + 4)} {N(y - 3)}", "none", "ink", 2);
                break;
            case AttemptResult.Bled:
                svg.Path($"M{N(x)} {N(y - 9)}C{N(x + 8)} {N(y)} {N(x + 6)} {N(y + 8)} {N(x)} {N(y + 8)}C{N(x - 6)} {N(y + 8)} {N(x - 8)} {N(y)} {N(x)} {N(y - 9)}Z", "ink");
                break;
            case AttemptResult.Abandoned:
                svg.Path($"M{N(x - 6)} {N(y - 6)}L{N(x + 6)} {N(y + 6)}M{N(x + 6)} {N(y - 6)}L{N(x - 6)} {N(y + 6)}", "none", "ink", 3);
                break;
            case AttemptResult.UnderWay:
                svg.Path($"M{N(x)} {N(y - 7)}L{N(x + 9)} {N(y)}L{N(x)} {N(y + 7)}Z", "ink");
                break;
            default:
                throw new UnreachableException();
        }
    }
}
