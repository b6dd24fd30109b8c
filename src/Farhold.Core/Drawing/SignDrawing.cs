namespace Farhold.Drawing;

/// <summary>The signs of a casualty over time, as an SVG picture whose colours are those of the page (<c>charts.css</c>).</summary>
/// <remarks>
/// Readable without colour: what is usual is a plain band, what is past a limit is hatched behind a line, a reading is a dot, one at an
/// uncertain time a bar, one not taken a hollow ring at the foot of its panel, a marked change a ring with an arrow and a number.
/// </remarks>
public static class SignDrawing
{
    /// <summary>A phone of 360 px less the edges.</summary>
    public const double Narrowest = 328;

    /// <param name="label">All that it shows, in words.</param>
    public static string Draw(SignPicture picture, IChartWords words, double width, string label)
    {
        var layout = new SignLayout(picture, words, Math.Max(Narrowest, width));
        var svg = new ChartSvg("signs", layout.Width, layout.Height, label);
        var (left, right) = (SignLayout.Left, layout.Right);
        foreach (var panel in layout.Panels)
            Bands(svg, panel, left, right);
        foreach (var time in layout.Times)
            svg.Path(time.Midnight ? "day" : "tick", $"M{N(layout.X(time.At))} {N(SignLayout.Top - 2)}V{N(layout.Height)}");
        foreach (var y in layout.Separators)
            svg.Path("part", $"M0 {N(y)}H{N(layout.Width)}");
        foreach (var lane in layout.Limbs)
            Lane(svg, lane);
        foreach (var panel in layout.Panels)
            Curve(svg, panel, left, right);
        if (layout.Mind is { } mind)
            Mind(svg, mind);
        svg.Path("now", $"M{N(right)} {N(SignLayout.Top - 4)}V{N(layout.Height)}");
        foreach (var text in layout.Texts)
            svg.Text(text);
        return svg.Whole();
    }

    private static string N(double value) => SvgText.Number(value);

    private static void Bands(ChartSvg svg, SignPanel panel, double left, double right)
    {
        if (panel.Usual is { } usual)
            svg.Box("usual", left, usual.From, right - left, usual.To - usual.From);
        foreach (var past in panel.Past)
            svg.Box("past", left, past.From, right - left, past.To - past.From, hatched: true);
    }

    private static void Curve(ChartSvg svg, SignPanel panel, double left, double right)
    {
        foreach (var y in panel.LimitLines)
            svg.Path("limit", $"M{N(left)} {N(y)}H{N(right)}");
        svg.Path("ranges", string.Concat(panel.Ranges.Select(r => $"M{N(r.X)} {N(r.Y.From)}V{N(r.Y.To)}")));
        svg.Path("line", string.Concat(panel.Lines.Select(line => "M" + string.Join('L', line.Select(p => $"{N(p.X)} {N(p.Y)}")))));
        svg.Path("dots", string.Concat(panel.Dots.Select(p => $"M{N(p.X)} {N(p.Y)}h0")));
        svg.Path(
            "bars",
            string.Concat(panel.Bars.Select(b => $"M{N(b.From)} {N(b.Y)}H{N(b.To)}M{N(b.From)} {N(b.Y - 4)}v8M{N(b.To)} {N(b.Y - 4)}v8"))
        );
        foreach (var x in panel.Hollow)
            svg.Circle("hollow", x, panel.Bottom, 4);
        if (panel.Ring is { } ring)
            svg.Circle("ring", ring.X, ring.Y, 7);
    }

    private static void Lane(ChartSvg svg, LimbLane lane)
    {
        foreach (var span in lane.Sure)
            svg.Box("tight", span.From, lane.Top, span.To - span.From, lane.Bottom - lane.Top);
        foreach (var span in lane.Perhaps)
            svg.Box("perhaps", span.From, lane.Top, span.To - span.From, lane.Bottom - lane.Top, hatched: true);
        if (lane.Loose is { } loose)
            svg.Path("loose", $"M{N(loose.From)} {N((lane.Top + lane.Bottom) / 2)}H{N(loose.To)}");
    }

    private static void Mind(ChartSvg svg, MindLane mind)
    {
        // Alert looks stand low and plain; others are high and crossed by the line of a limit.
        foreach (var span in mind.Clear)
            svg.Box("clear", span.From, mind.Top + 5, span.To - span.From, mind.Bottom - mind.Top - 5);
        foreach (var span in mind.Altered)
        {
            svg.Box("altered", span.From, mind.Top, span.To - span.From, mind.Bottom - mind.Top, hatched: true);
            svg.Path("limit", $"M{N(span.From)} {N(mind.Top)}H{N(span.To)}");
        }
    }
}
