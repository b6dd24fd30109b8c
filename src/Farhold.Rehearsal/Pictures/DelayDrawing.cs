namespace Farhold.Rehearsal.Pictures;

/// <summary>Delays as bars, dashed, hatched and filled in their order, with a stroke at each moment that came.</summary>
internal static class DelayDrawing
{
    public const string Id = "debrief-delays";
    public const double Bar = 22;
    private const double Row = 58;
    private const double Left = 14;
    private const double Right = 22;

    public static ClockScale Clock(DelayPicture picture, double width) => new(picture.Until, Left, width - Right);

    public static string Look(DelayPhase phase) =>
        phase switch
        {
            DelayPhase.Perceiving => "maybe",
            DelayPhase.Deciding => "other",
            DelayPhase.Doing => "out",
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static (string Svg, double Height) Draw(DelayPicture picture, double width, string label)
    {
        var clock = Clock(picture, width);
        var foot = (picture.Rows.Length * Row) + 18;
        var svg = new ChartSvg(Id, width, foot + 8, label);
        foreach (var at in clock.Ticks())
        {
            svg.Path("tick", $"M{N(clock.X(at))} 4V{N(foot - 14)}");
            svg.Text(new(clock.X(at), foot, ClockScale.Label(at), ChartText.Least, "faint", Anchor.Middle));
        }

        foreach (var (i, row) in picture.Rows.Index())
        {
            var top = (i * Row) + 24;
            svg.Text(new(Left, top - 7, Say.Limb(row.Delays.Limb), ChartText.Least, "strong"));
            foreach (var span in row.Spans)
                svg.Box(
                    Look(span.Phase),
                    clock.X(span.From),
                    top,
                    clock.X(span.To) - clock.X(span.From),
                    Bar,
                    hatched: span.Phase == DelayPhase.Deciding
                );
            foreach (var at in new[] { row.Delays.Decidable, row.Delays.KnownAt, row.Delays.Begun, row.Delays.LetOut }.OfType<double>())
                svg.Path("now", $"M{N(clock.X(at))} {N(top - 3)}V{N(top + Bar + 3)}");
        }

        return (svg.Whole(), foot + 8);
    }

    private static string N(double value) => SvgText.Number(value);
}
