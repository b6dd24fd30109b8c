using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

/// <summary>Where things stand: the curve above, a row of marks below it for each kind of deed that came.</summary>
/// <param name="MlTicks">From 0 on.</param>
internal sealed record CourseLayout(
    double Width,
    ClockScale Clock,
    double Most,
    ImmutableArray<double> MlTicks,
    ImmutableArray<DeedKind> Rows
)
{
    public const double Top = 26;
    public const double High = 130;
    private const double Row = 24;
    private static readonly ImmutableArray<double> Steps = [20, 50, 100, 200, 500, 1_000, 2_000, 5_000];

    public const double Bottom = Top + High;

    /// <summary>Where the labels of time stand.</summary>
    public double Foot => Bottom + (Rows.Length * Row) + 26;

    public static CourseLayout For(CoursePicture picture, Func<DeedKind, string> name, double width)
    {
        ImmutableArray<DeedKind> rows = [.. picture.Deeds.Select(d => d.Kind).Distinct().Order()];
        var highest = picture.Lost.Select(l => l.LostMl).DefaultIfEmpty(0).Max();
        var step = Steps.FirstOrDefault(s => s * 4 >= highest, Steps[^1]);
        var most = step * Math.Max(1, Math.Ceiling(highest / step));
        ImmutableArray<double> ticks = [.. Enumerable.Range(0, (int)Math.Round(most / step) + 1).Select(i => i * step)];
        var left = rows.Select(name).Concat(ticks.Select(Say.Number)).Max(text => TextWidth.Of(text, ChartText.Least));
        return new(width, new(picture.Until, left + 10, width - 22), most, ticks, rows);
    }

    public double Y(double ml) => Top + (High * (1 - (ml / Most)));

    /// <summary>The middle of a row.</summary>
    public double Y(DeedKind row) => Bottom + (Row * (Rows.IndexOf(row) + 0.5)) + 4;
}

/// <summary>The casualty's course as an SVG picture whose colours are those of the page (<c>charts.css</c>).</summary>
internal static class CourseDrawing
{
    public const string Id = "debrief-course";

    public static (string Svg, double Height) Draw(CoursePicture picture, Func<DeedKind, string> name, double width, string label)
    {
        var layout = CourseLayout.For(picture, name, width);
        var (clock, height) = (layout.Clock, layout.Foot + 8);
        var svg = new ChartSvg(Id, width, height, label);
        foreach (var ml in layout.MlTicks)
        {
            svg.Path("tick", $"M{N(clock.Left)} {N(layout.Y(ml))}H{N(clock.Right)}");
            svg.Text(new(clock.Left - 6, layout.Y(ml) + 5, Say.Number(ml), ChartText.Least, "faint", Anchor.End));
        }

        foreach (var at in clock.Ticks())
        {
            svg.Path("tick", $"M{N(clock.X(at))} {N(CourseLayout.Top)}V{N(layout.Foot - 14)}");
            svg.Text(new(clock.X(at), layout.Foot, ClockScale.Label(at), ChartText.Least, "faint", Anchor.Middle));
        }

        foreach (var row in layout.Rows)
            svg.Text(new(clock.Left - 6, layout.Y(row) + 5, name(row), ChartText.Least, "faint", Anchor.End));
        svg.Path("line", string.Concat(picture.Lost.Select((l, i) => $"{(i == 0 ? 'M' : 'L')}{N(clock.X(l.At))} {N(layout.Y(l.LostMl))}")));
        foreach (var deed in picture.Deeds)
        {
            var (x, y) = (clock.X(deed.At), layout.Y(deed.Kind));
            svg.Path("day", $"M{N(x)} {N(layout.Y(picture.LostAt(deed.At)))}V{N(y)}");
            svg.Circle(deed.Kind is DeedKind.Loose or DeedKind.GaveWay ? "hollow" : "clear", x, y, 6);
        }

        svg.Text(new(clock.Left, CourseLayout.Top - 8, DebriefPictureTexts.CourseUnit, ChartText.Least, "strong"));
        return (svg.Whole(), height);
    }

    private static string N(double value) => SvgText.Number(value);
}
