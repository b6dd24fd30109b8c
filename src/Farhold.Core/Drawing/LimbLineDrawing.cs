using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>Lays out one limb line, top to bottom.</summary>
internal sealed class LimbLineDrawing(LimbPicture picture, double width, LimbLineLook look, string id)
{
    private const double Margin = 12;
    private const double Small = 13;
    private const double RowHeight = 20;
    private const double BarHeight = 34;

    private readonly SvgText svg = new(look);
    private readonly TimeAxis axis = TimeAxis.Of(picture, Margin, width - Margin);
    private readonly LimbLineSigns signs = new(look);

    public string Draw()
    {
        var y = Heads(Margin);
        var marks = Marks();
        var labels = LabelRows.Beside(marks.Select(m => Want(m.At, m.Text)), Margin, width - Margin);
        var top = y + 8;
        var bandTop = top + (LabelRows.Rows(labels) * RowHeight) + 6;
        var barTop = bandTop + (picture.Light.IsEmpty ? 0 : 22);
        var looksTop = barTop + BarHeight + 4;
        var attemptsTop = looksTop + 14;
        var attempts = LabelRows.Under(
            picture.Attempts.Select(a => Want(a.Ended?.Latest ?? picture.Now, LimbLineText.Result(a.Result))),
            Margin, width - Margin, [.. marks.Select(m => axis.X(m.At))]);
        var helpTop = attemptsTop + (picture.Attempts.IsEmpty ? 0 : 18 + (LabelRows.Rows(attempts) * RowHeight));
        var axisY = helpTop + (picture.Arrival is null ? 4 : 18 + (2 * RowHeight) + 6);

        Band(bandTop);
        Track(barTop, axisY);
        Stretches(barTop);
        Looks(looksTop);
        Hours(axisY, barTop);
        foreach (var mark in marks)
            Mark(mark, labels, bandTop, axisY, top);
        Attempts(attempts, attemptsTop);
        Help(helpTop);
        Labels(labels, row => bandTop - 10 - (row * RowHeight), bold: true);
        var end = Key(axisY + 44);
        return Whole(end + 6);
    }

    private static double Size(double width) => width < 480 ? 16 : 20;

    private Wanted Want(Instant at, string text) => new(axis.X(at), TextWidth.Of(text, Small), text);

    private double Heads(double y)
    {
        var size = Size(width);
        foreach (var (head, i) in LimbLineText.Heads(picture).Select((h, i) => (h, i)))
        {
            var fits = Math.Min(i == 0 ? size : size - 2, (width - (2 * Margin)) / TextWidth.Of(head, 1));
            y += size + 5;
            svg.Text(Margin, y - 4, head, fits, bold: i != 1);
        }

        return y;
    }

    private ImmutableArray<(Instant At, string Text, string Kind)> Marks()
    {
        string Clock(Instant at) => TimeAxis.Clock(at, picture.Zone);
        return
        [
            .. new[]
            {
                (picture.WindowAt, $"window {Clock(picture.WindowAt)}", "window"),
                (picture.LimitAt, $"limit {Clock(picture.LimitAt)}", "limit"),
                (picture.Now, $"now {Clock(picture.Now)}", "now"),
            }.Where(m => axis.Holds(m.Item1)),
        ];
    }

    private void Mark((Instant At, string Text, string Kind) mark, ImmutableArray<Placed> labels, double bandTop, double axisY, double top)
    {
        var x = axis.X(mark.At);
        var row = labels.First(l => l.Label.Text == mark.Text).Row;
        var from = bandTop - 8 - ((row + 1) * RowHeight) + 4;
        switch (mark.Kind)
        {
            case "window":
                svg.Line(x, from, x, axisY, "ink", 1.5, " stroke-dasharray=\"3 4\"");
                break;
            case "limit":
                svg.Line(x - 2, from, x - 2, axisY, "ink", 1.5);
                svg.Line(x + 2, from, x + 2, axisY, "ink", 1.5);
                break;
            default:
                svg.Line(x, Math.Max(from, top), x, axisY, "now", 3);
                svg.Path($"M{N(x - 7)} {N(axisY + 11)}L{N(x + 7)} {N(axisY + 11)}L{N(x)} {N(axisY)}Z", "now");
                break;
        }
    }

    private void Band(double y)
    {
        if (picture.Light.IsEmpty)
            return;
        foreach (var spell in picture.Light.Where(s => s.To > axis.From && s.From < axis.To))
        {
            var (x1, x2) = (axis.X(spell.From), axis.X(spell.To));
            var (fill, word) = spell.Sky switch
            {
                Sky.Night => ("night", "night"),
                Sky.Twilight => ($"url(#{id}-twilight)", "twilight"),
                _ => ("ground", "day"),
            };
            svg.Box(x1, y, x2 - x1, 18, fill, "faint");
            var width = TextWidth.Of(word, 12);
            // Not across the line of now.
            var at = axis.X(picture.Now) is var now && now > x1 && now < x1 + width + 10 ? now + 5 : x1 + 5;
            if (x2 - at > width + 5)
                svg.Text(at, y + 13, word, 12);
        }
    }

    private void Track(double y, double axisY)
    {
        var (first, limit) = (axis.X(picture.Clock.FirstTightened.Earliest), axis.X(picture.LimitAt));
        svg.Box(first, y, axis.Right - first, BarHeight, "none", "faint");
        if (axis.Holds(picture.LimitAt))
            svg.Box(limit, y, axis.Right - limit, BarHeight, $"url(#{id}-past)");
        svg.Line(axis.Left, axisY, axis.Right, axisY, "ink", 1.5);
    }

    private void Stretches(double y)
    {
        foreach (var stretch in picture.Clock.Stretches)
        {
            var (x1, x2) = (axis.X(stretch.From), axis.X(stretch.To));
            var sure = stretch.Stopped == Truth.Met;
            svg.Box(x1, y + 3, Math.Max(1.5, x2 - x1), BarHeight - 6, sure ? "stopped" : $"url(#{id}-perhaps)", sure ? "ink" : "stopped",
                sure ? "" : " stroke-dasharray=\"4 3\"");
        }
    }

    private void Looks(double y)
    {
        foreach (var look in picture.Looks.Where(l => axis.Holds(l.Latest)))
            svg.Line(axis.X(look.Latest), y, axis.X(look.Latest), y + 9, "ink", 2);
    }

    private void Attempts(ImmutableArray<Placed> labels, double y)
    {
        foreach (var attempt in picture.Attempts)
        {
            var (x1, x2) = (axis.X(attempt.Started.Earliest), axis.X(attempt.Ended?.Latest ?? picture.Now));
            svg.Line(x1, y + 8, x2, y + 8, "ink", 3);
            svg.Line(x1, y + 2, x1, y + 14, "ink", 2);
            signs.Draw(svg, attempt.Result, x2, y + 8);
        }

        Labels(labels, row => y + 32 + (row * RowHeight), bold: false);
    }

    /// <summary>Two lines under the likely time, whatever its distance from the others: nothing there can collide.</summary>
    private IEnumerable<Placed> HelpLabels(Arrival a)
    {
        string Clock(Instant at) => TimeAxis.Clock(at, picture.Zone) + (axis.Holds(at) ? "" : " →");
        var lines = Marks().Select(m => axis.X(m.At)).ToArray();
        var range = Under($"{a.Names.Early} {Clock(a.Early)}, {a.Names.Late} {Clock(a.Late)}");
        if (!lines.All(x => LabelRows.Clear(x, range)))
            range = Under($"{Clock(a.Early)} to {Clock(a.Late)}");
        return [Under($"help {a.Names.Middle} {Clock(a.Middle)}"), range with { Row = 1 }];

        Placed Under(string text) => LabelRows.Under([Want(a.Middle, text)], Margin, width - Margin, lines)[0] with { Row = 0 };
    }

    private void Help(double y)
    {
        if (picture.Arrival is not { } a)
            return;
        var (early, middle, late) = (axis.X(a.Early), axis.X(a.Middle), axis.X(a.Late));
        if (a.Density.Length > 1)
            Density(a.Density, y + 15);
        svg.Box(early, y + 6, Math.Max(2, late - early), 6, "help");
        svg.Line(early, y + 1, early, y + 17, "help", 3);
        if (axis.Holds(a.Late))
            svg.Line(late, y + 1, late, y + 17, "help", 3);
        else
            svg.Path($"M{N(late - 8)} {N(y + 1)}L{N(late)} {N(y + 9)}L{N(late - 8)} {N(y + 17)}Z", "help");
        svg.Path($"M{N(middle)} {N(y)}L{N(middle + 9)} {N(y + 9)}L{N(middle)} {N(y + 18)}L{N(middle - 9)} {N(y + 9)}Z", "ground", "help", 3);
        Labels([.. HelpLabels(a)], row => y + 34 + (row * RowHeight), bold: false);
    }

    private void Density(ImmutableArray<(Instant At, double Weight)> points, double y)
    {
        var most = points.Max(p => p.Weight);
        if (!(most > 0) || !double.IsFinite(most))
            return;
        var outline = string.Join("", points.Select(p => $"L{N(axis.X(p.At))} {N(y - (14 * p.Weight / most))}"));
        svg.Path($"M{N(axis.X(points[0].At))} {N(y)}{outline}L{N(axis.X(points[^1].At))} {N(y)}Z", "night", "help", 1);
    }

    private void Hours(double y, double barTop)
    {
        var last = double.MinValue;
        LocalDate? day = null;
        foreach (var (x, local) in axis.Ticks(picture.Zone, TextWidth.Of("00:00", Small) + 12))
        {
            svg.Line(x, barTop, x, barTop + 4, "faint", 1);
            svg.Line(x, y, x, y + 5, "ink", 1.5);
            var text = local.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
            if (x + (TextWidth.Of(text, Small) / 2) > width - 2)
                continue;
            svg.Text(x, y + 24, text, Small, anchor: Anchor.Middle);
            var date = day is null ? $"{TimeAxis.Day(local)} {picture.Zone.Id}" : TimeAxis.Day(local);
            if (local.Date != day && Math.Max(Margin, x - 20) is var left && left > last && left + TextWidth.Of(date, 12) < width)
            {
                svg.Text(left, y + 40, date, 12);
                last = left + TextWidth.Of(date, 12) + 10;
            }

            day = local.Date;
        }
    }

    /// <summary>Only what the picture holds is explained.</summary>
    private double Key(double y)
    {
        var items = new List<(string Word, Action<double, double> Draw)>();
        if (picture.Clock.Stretches.Any(s => s.Stopped == Truth.Met))
            items.Add(("no blood flow", (x, top) => svg.Box(x, top, 22, 12, "stopped", "ink")));
        if (picture.Clock.Stretches.Any(s => s.Stopped == Truth.Unknown))
            items.Add(("perhaps none", (x, top) => svg.Box(x, top, 22, 12, $"url(#{id}-perhaps)", "stopped", " stroke-dasharray=\"4 3\"")));
        items.Add(("past the limit", (x, top) => svg.Box(x, top, 22, 12, $"url(#{id}-past)", "faint")));
        if (!picture.Looks.IsEmpty)
            items.Add(("looked at", (x, top) => svg.Line(x + 11, top + 1, x + 11, top + 11, "ink", 2)));
        if (!picture.Attempts.IsEmpty)
            items.Add(("attempt", (x, top) =>
            {
                svg.Line(x + 2, top + 6, x + 22, top + 6, "ink", 3);
                svg.Line(x + 2, top, x + 2, top + 12, "ink", 2);
            }));
        if (picture.Arrival is { } a)
            items.Add(($"help, {a.Source}", (x, top) => svg.Box(x, top + 3, 22, 6, "help")));
        var (left, row) = (Margin, y + 6);
        foreach (var (word, draw) in items)
        {
            var wide = 28 + TextWidth.Of(word, 12) + 12;
            if (left > Margin && left + wide - 12 > width - Margin)
                (left, row) = (Margin, row + RowHeight);
            draw(left, row);
            svg.Text(left + 28, row + 11, word, 12);
            left += wide;
        }

        return row + 16;
    }

    private void Labels(ImmutableArray<Placed> labels, Func<int, double> baseline, bool bold)
    {
        foreach (var label in labels)
        {
            svg.Box(label.Left - 2, baseline(label.Row) - 13, label.Label.Width + 2, 17, "ground");
            svg.Text(label.X, baseline(label.Row), label.Label.Text, Small, bold, label.Anchor);
        }
    }

    private string Whole(double height)
    {
        var (perhaps, past) = (look.Stopped, look.Faint);
        return $"""
            <svg xmlns="http://www.w3.org/2000/svg" class="limb-line limb-line-{look.Name}" role="img" aria-labelledby="{id}-title {id}-desc" viewBox="0 0 {N(width)} {N(height)}" width="{N(width)}" height="{N(height)}" font-family="{SvgText.Font}">
            <title id="{id}-title">{SvgText.Escape($"Limb line, {string.Join("; ", LimbLineText.Heads(picture))}")}</title>
            <desc id="{id}-desc">{SvgText.Escape(LimbLineText.Describe(picture))}</desc>
            <defs>
            <pattern id="{id}-perhaps" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="3" height="7" class="f-stopped" fill="{perhaps}"/></pattern>
            <pattern id="{id}-past" width="8" height="8" patternUnits="userSpaceOnUse"><path d="M0 0L8 8M8 0L0 8" stroke="{past}" stroke-width="1.2" fill="none"/></pattern>
            <pattern id="{id}-twilight" width="4" height="4" patternUnits="userSpaceOnUse"><rect width="2" height="4" class="f-night" fill="{look.Night}"/></pattern>
            </defs>
            <rect width="{N(width)}" height="{N(height)}" class="f-ground" fill="{look.Ground}"/>
            {svg}</svg>

            """;
    }

    private static string N(double value) => SvgText.Number(value);
}
