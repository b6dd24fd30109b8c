using System.Collections.Immutable;
using NodaTime;

namespace Farhold.WayOut.Pictures;

/// <summary>What else is seen beside the dots.</summary>
/// <param name="Limits">Moments that matter, with a short name.</param>
/// <param name="Nights">Dark from and to.</param>
public sealed record DotsAround(ImmutableArray<(Instant At, string Name)> Limits, ImmutableArray<(Instant From, Instant To)> Nights);

/// <summary>Twenty dots over the hours, heaped where they meet; hollow after the first limit, crossed where none gets through.</summary>
public static class DotsDrawing
{
    private const double Top = 40,
        Radius = 7,
        Gap = 2,
        Foot = 22,
        Never = 44,
        WideSign = 8.5; // of the least type, in the widest face

    /// <param name="id">Distinct for every picture on one page.</param>
    /// <param name="label">All that it shows, for whoever can't see it.</param>
    public static string Draw(ArrivalDots dots, DotsAround around, ArrivalClock clock, string id, double width, string label)
    {
        var arrived = dots.Arrivals.OfType<Instant>().ToArray();
        var lost = dots.Arrivals.Length - arrived.Length;
        var right = width - Radius - (lost > 0 ? Never : 0);
        var axis = Axis(arrived, around, clock, right);
        var heaps = Heaps(arrived, axis);
        var rows = Math.Max(Math.Max(3, lost), heaps.Count == 0 ? 0 : heaps.Max(h => h.Row + 1));
        var ground = Top + (rows * ((2 * Radius) + Gap));
        var svg = new ChartSvg(id, width, ground + Foot, label);
        foreach (var (from, to) in around.Nights.Where(n => n.To > axis.From && n.From < axis.To))
        {
            svg.Box("usual", axis.X(from), Top, axis.X(to) - axis.X(from), ground - Top);
            svg.Box("tick", axis.X(from), Top, axis.X(to) - axis.X(from), ground - Top, hatched: true);
        }

        foreach (var (at, text) in axis.Ticks())
        {
            svg.Path("tick", $"M{SvgText.Number(axis.X(at))} {SvgText.Number(ground)}v5");
            svg.Text(new(axis.X(at), ground + Foot - 3, text, ChartText.Least, "faint", Anchor.Middle));
        }

        svg.Path("now", $"M0 {SvgText.Number(ground)}H{SvgText.Number(width)}");
        var limit = around.Limits.IsEmpty ? (Instant?)null : around.Limits.Min(l => l.At);
        foreach (var (x, row, at) in heaps)
            svg.Circle(at < limit || limit is null ? "clear" : "hollow", x, ground - Radius - Gap - (row * ((2 * Radius) + Gap)), Radius);
        for (var i = 0; i < lost; i++)
        {
            var (x, y) = (width - (Never / 2), ground - Radius - Gap - (i * ((2 * Radius) + Gap)));
            var (l, r, t, b) = (SvgText.Number(x - 5), SvgText.Number(x + 5), SvgText.Number(y - 5), SvgText.Number(y + 5));
            svg.Path("line", $"M{l} {t}L{r} {b}M{l} {b}L{r} {t}");
        }

        if (lost > 0)
            svg.Text(new(width, ground + Foot - 3, PictureTexts.None, ChartText.Least, "faint", Anchor.End));
        var line = 0;
        foreach (var (at, name) in around.Limits.Where(l => l.At > axis.From && l.At < axis.To).OrderBy(l => l.At))
        {
            var x = axis.X(at);
            svg.Path("now", $"M{SvgText.Number(x)} {SvgText.Number(Top - 20 + (line * 16))}V{SvgText.Number(ground + 4)}");
            var near = x > width / 2;
            if (name.Length * WideSign <= (near ? x : width - x) - 5)
                svg.Text(new(near ? x - 5 : x + 5, 16 + (line++ * 16), name, ChartText.Least, "plain", near ? Anchor.End : Anchor.Start));
            else // beside its line there is no room: from the edge, part by part
                foreach (var part in name.Split(", "))
                    svg.Text(new(0, 16 + (line++ * 16), part, ChartText.Least, "plain", Anchor.Start));
        }

        return svg.Whole();
    }

    private static PictureClock Axis(Instant[] arrived, DotsAround around, ArrivalClock clock, double right)
    {
        var (first, last) = arrived.Length == 0 ? (clock.Start, clock.Start + Duration.FromHours(1)) : (arrived[0], arrived[^1]);
        // A limit that lies far off is no reason to crush the dots.
        var reach = Duration.Max(last - first, Duration.FromMinutes(30));
        foreach (var (at, _) in around.Limits)
            if (at > first - reach && at < last + reach)
                (first, last) = (Instant.Min(first, at), Instant.Max(last, at));
        var edge = Duration.Max((last - first) / 20, Duration.FromMinutes(3));
        return new(first - edge, last + edge, Radius, right, clock.Zone);
    }

    /// <summary>Each dot where it falls, on top of those that would overlap it.</summary>
    private static List<(double X, int Row, Instant At)> Heaps(Instant[] arrived, PictureClock axis)
    {
        var placed = new List<(double X, int Row, Instant At)>();
        foreach (var at in arrived)
        {
            var (x, row) = (axis.X(at), 0);
            while (placed.Exists(p => p.Row == row && Math.Abs(p.X - x) < (2 * Radius) + Gap))
                row++;
            placed.Add((x, row, at));
        }

        return placed;
    }
}
