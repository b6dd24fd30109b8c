using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>What is written beside the bars, in the language of whoever looks at it.</summary>
/// <param name="In">With its volume.</param>
/// <param name="Out">With its volume, or that it was not measured.</param>
/// <param name="Millilitres">A volume with its unit.</param>
public sealed record FluidChartWords(string In, string Out, Func<double, string> Millilitres, Func<FluidWay, string> Way);

/// <summary>Two bars on one scale: what went in, by its ways, and what came out.</summary>
internal sealed record FluidLayout(
    double Width,
    double PerMl,
    ImmutableArray<double> Ticks,
    ImmutableArray<(FluidWay Way, ChartSpan X)> Parts,
    ChartSpan InPerhaps,
    ChartSpan Out,
    ChartSpan OutPerhaps
)
{
    public const double Left = 4;

    /// <summary>What the last label takes beside its figures: the unit, and the half that is moved into the picture.</summary>
    private const double Room = 60;
    private static readonly ImmutableArray<int> Steps =
    [
        20,
        50,
        100,
        200,
        250,
        500,
        1000,
        2000,
        5000,
        10_000,
        20_000,
        50_000,
        100_000,
        500_000,
    ];

    public static FluidLayout For(FluidPicture picture, double width)
    {
        var plot = width - (2 * Left);
        var most = Math.Max(Steps[0], Math.Max(picture.In.High, picture.Out?.High ?? 0));
        var perMl = plot / most;
        var step = (double)Steps.FirstOrDefault(s => s * perMl >= TextWidth.Of(Say.Number(most), ChartText.Least) + Room, Steps[^1]);
        var x = Left;
        var parts = ImmutableArray.CreateBuilder<(FluidWay, ChartSpan)>();
        foreach (var (way, ml) in picture.Parts.Where(p => p.Millilitres.Low > 0))
        {
            parts.Add((way, new(x, x + (ml.Low * perMl))));
            x += ml.Low * perMl;
        }

        var urine = picture.Out ?? default;
        ChartSpan Up(double from, double ml) => new(from, Math.Max(from, Left + (ml * perMl)));
        return new(
            width,
            perMl,
            [.. Enumerable.Range(0, (int)Math.Floor(most / step) + 1).Select(i => i * step)],
            parts.ToImmutable(),
            Up(x, picture.In.High),
            Up(Left, urine.Low),
            Up(Left + (urine.Low * perMl), urine.High)
        );
    }

    public double X(double millilitres) => Left + (millilitres * PerMl);
}

/// <summary>Fluids in and out, as an SVG picture whose colours are those of the page (<c>charts.css</c>).</summary>
public static class FluidDrawing
{
    private const double Bar = 24;
    private const double InTop = 24;
    private const double OutTop = 78;
    private const double Axis = 108;

    /// <param name="label">All that it shows, in words.</param>
    public static string Draw(FluidPicture picture, FluidChartWords words, double width, string label)
    {
        var layout = FluidLayout.For(picture, Math.Max(SignDrawing.Narrowest, width));
        var svg = new ChartSvg("fluids", layout.Width, Axis + 22, label);
        foreach (var ml in layout.Ticks)
            svg.Path("tick", $"M{SvgText.Number(layout.X(ml))} {SvgText.Number(InTop - 4)}V{SvgText.Number(Axis)}");
        foreach (var (way, x) in layout.Parts)
            Part(svg, way, x, words.Way(way));
        Perhaps(svg, layout.InPerhaps, InTop);
        Filled(svg, "out", layout.Out, OutTop);
        Perhaps(svg, layout.OutPerhaps, OutTop);
        svg.Text(new(FluidLayout.Left, InTop - 7, words.In, 18, "strong"));
        svg.Text(new(FluidLayout.Left, OutTop - 7, words.Out, 18, "strong"));
        foreach (var text in Scale(layout, words))
            svg.Text(text);
        return svg.Whole();
    }

    /// <summary>The unit stands at the last one.</summary>
    internal static IEnumerable<ChartText> Scale(FluidLayout layout, FluidChartWords words) =>
        layout.Ticks.Select(ml =>
        {
            var text = ml == layout.Ticks[^1] ? words.Millilitres(ml) : Say.Number(ml);
            var half = TextWidth.Of(text, ChartText.Least) / 2;
            var x = Math.Clamp(layout.X(ml), half, layout.Width - half);
            return new ChartText(x, Axis + 16, text, ChartText.Least, "faint", Anchor.Middle);
        });

    /// <summary>Told apart by fill, outline and hatch, and by its word where there is room; all stand below the picture.</summary>
    private static void Part(ChartSvg svg, FluidWay way, ChartSpan x, string word)
    {
        var look = Wire.Word(way);
        svg.Box(look, x.From, InTop, x.To - x.From, Bar, hatched: way is FluidWay.Blood or FluidWay.Other);
        if (way is FluidWay.Drink or FluidWay.Drip && TextWidth.Of(word, ChartText.Least) + 12 <= x.To - x.From)
            svg.Text(new(x.From + 6, InTop + 17, word, ChartText.Least, look + "-word"));
    }

    private static void Filled(ChartSvg svg, string look, ChartSpan x, double top)
    {
        if (x.To > x.From)
            svg.Box(look, x.From, top, x.To - x.From, Bar);
    }

    private static void Perhaps(ChartSvg svg, ChartSpan x, double top) => Filled(svg, "maybe", x, top);
}
