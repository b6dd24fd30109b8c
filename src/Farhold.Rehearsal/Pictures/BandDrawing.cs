using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

/// <param name="From">In seconds from the start.</param>
/// <param name="Look">Class of its fill.</param>
internal sealed record Band(double From, double To, string Look, bool Hatched = false);

/// <param name="Edges">Spells, in seconds, that are marked by a line above the row.</param>
internal sealed record BandRow(string Label, ImmutableArray<Band> Bands, ImmutableArray<(double From, double To)> Edges);

/// <summary>Rows of bands along one axis of time, each below its name.</summary>
internal static class BandDrawing
{
    public const double Bar = 18;
    private const double Row = 50;
    private const double Left = 14;
    private const double Right = 22;

    public static ClockScale Clock(double until, double width) => new(until, Left, width - Right);

    public static (string Svg, double Height) Draw(string id, double until, ImmutableArray<BandRow> rows, double width, string label)
    {
        var clock = Clock(until, width);
        var foot = (rows.Length * Row) + 24;
        var svg = new ChartSvg(id, width, foot + 8, label);
        foreach (var at in clock.Ticks())
        {
            svg.Path("tick", $"M{N(clock.X(at))} 4V{N(foot - 14)}");
            svg.Text(new(clock.X(at), foot, ClockScale.Label(at), ChartText.Least, "faint", Anchor.Middle));
        }

        foreach (var (i, row) in rows.Index())
        {
            var top = (i * Row) + 26;
            svg.Text(new(Left, top - 9, row.Label, ChartText.Least, "strong"));
            foreach (var band in row.Bands)
                svg.Box(band.Look, clock.X(band.From), top, clock.X(band.To) - clock.X(band.From), Bar, band.Hatched);
            foreach (var (from, to) in row.Edges)
                svg.Path("line", $"M{N(clock.X(from))} {N(top - 3)}H{N(clock.X(to))}");
        }

        return (svg.Whole(), foot + 8);
    }

    private static string N(double value) => SvgText.Number(value);
}
