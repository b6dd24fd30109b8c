using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>Lays out one limb line, top to bottom.</summary>
internal sealed class LimbLineDrawing(LimbPicture picture, double width)
{
    private const double Margin = 12;
    private const double Small = 13;
    private const double RowHeight = 20;
    private const double BarHeight = 34;

    private readonly Sketch sketch = new();
    private readonly TimeAxis axis = TimeAxis.Of(picture, Margin, width - Margin);

    public Drawn Draw()
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
            Margin,
            width - Margin,
            [.. marks.Select(m => axis.X(m.At))]
        );
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
        return new(width, end + 6, sketch.Shapes);
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
            sketch.Text(Margin, y - 4, head, fits, bold: i != 1);
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
                (picture.WindowAt, DrawingTexts.WindowAt(Clock(picture.WindowAt)), DrawingTexts.Window),
                (picture.LimitAt, DrawingTexts.LimitAt(Clock(picture.LimitAt)), DrawingTexts.Limit),
                (picture.Now, DrawingTexts.NowAt(Clock(picture.Now)), DrawingTexts.Now),
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
                sketch.Line(x, from, x, axisY, Tone.Ink, 1.5, 3, 4);
                break;
            case "limit":
                sketch.Line(x - 2, from, x - 2, axisY, Tone.Ink, 1.5);
                sketch.Line(x + 2, from, x + 2, axisY, Tone.Ink, 1.5);
                break;
            default:
                sketch.Line(x, Math.Max(from, top), x, axisY, Tone.Now, 3);
                sketch.Area([(x - 7, axisY + 11), (x + 7, axisY + 11), (x, axisY)], Tone.Now);
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
            if (spell.Sky == Sky.Twilight)
                sketch.Box(x1, y, x2 - x1, 18, Hatch.Twilight, Tone.Faint);
            else
                sketch.Box(x1, y, x2 - x1, 18, spell.Sky == Sky.Night ? Tone.Night : Tone.Ground, Tone.Faint);
            var word = Wire.Word(spell.Sky);
            var width = TextWidth.Of(word, 12);
            // Not across the line of now.
            var at = axis.X(picture.Now) is var now && now > x1 && now < x1 + width + 10 ? now + 5 : x1 + 5;
            if (x2 - at > width + 5)
                sketch.Text(at, y + 13, word, 12);
        }
    }

    private void Track(double y, double axisY)
    {
        var (first, limit) = (axis.X(picture.Clock.FirstTightened.Earliest), axis.X(picture.LimitAt));
        sketch.Box(first, y, axis.Right - first, BarHeight, null, Tone.Faint);
        if (axis.Holds(picture.LimitAt))
            sketch.Box(limit, y, axis.Right - limit, BarHeight, Hatch.Past);
        sketch.Line(axis.Left, axisY, axis.Right, axisY, Tone.Ink, 1.5);
    }

    private void Stretches(double y)
    {
        foreach (var stretch in picture.Clock.Stretches)
        {
            var (x1, x2) = (axis.X(stretch.From), axis.X(stretch.To));
            var length = Math.Max(1.5, x2 - x1);
            if (stretch.Stopped == Truth.Met)
                sketch.Box(x1, y + 3, length, BarHeight - 6, Tone.Stopped, Tone.Ink);
            else
                sketch.Box(x1, y + 3, length, BarHeight - 6, Hatch.Perhaps, Tone.Stopped, 4, 3);
        }
    }

    private void Looks(double y)
    {
        foreach (var look in picture.Looks.Where(l => axis.Holds(l.Latest)))
            sketch.Line(axis.X(look.Latest), y, axis.X(look.Latest), y + 9, Tone.Ink, 2);
    }

    private void Attempts(ImmutableArray<Placed> labels, double y)
    {
        foreach (var attempt in picture.Attempts)
        {
            var (x1, x2) = (axis.X(attempt.Started.Earliest), axis.X(attempt.Ended?.Latest ?? picture.Now));
            sketch.Line(x1, y + 8, x2, y + 8, Tone.Ink, 3);
            sketch.Line(x1, y + 2, x1, y + 14, Tone.Ink, 2);
            LimbLineSigns.Draw(sketch, attempt.Result, x2, y + 8);
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
            range = Under(DrawingTexts.TimeRange(Clock(a.Early), Clock(a.Late)));
        return [Under(DrawingTexts.HelpAt(a.Names.Middle, Clock(a.Middle))), range with { Row = 1 }];

        Placed Under(string text) => LabelRows.Under([Want(a.Middle, text)], Margin, width - Margin, lines)[0] with { Row = 0 };
    }

    private void Help(double y)
    {
        if (picture.Arrival is not { } a)
            return;
        var (early, middle, late) = (axis.X(a.Early), axis.X(a.Middle), axis.X(a.Late));
        if (a.Density.Length > 1)
            Density(a.Density, y + 15);
        sketch.Box(early, y + 6, Math.Max(2, late - early), 6, Tone.Help);
        sketch.Line(early, y + 1, early, y + 17, Tone.Help, 3);
        if (axis.Holds(a.Late))
            sketch.Line(late, y + 1, late, y + 17, Tone.Help, 3);
        else
            sketch.Area([(late - 8, y + 1), (late, y + 9), (late - 8, y + 17)], Tone.Help);
        sketch.Area([(middle, y), (middle + 9, y + 9), (middle, y + 18), (middle - 9, y + 9)], Tone.Ground, Tone.Help, 3);
        Labels([.. HelpLabels(a)], row => y + 34 + (row * RowHeight), bold: false);
    }

    private void Density(ImmutableArray<(Instant At, double Weight)> points, double y)
    {
        var most = points.Max(p => p.Weight);
        if (!(most > 0) || !double.IsFinite(most))
            return;
        sketch.Area(
            [(axis.X(points[0].At), y), .. points.Select(p => (axis.X(p.At), y - (14 * p.Weight / most))), (axis.X(points[^1].At), y)],
            Tone.Night,
            Tone.Help,
            1
        );
    }

    private void Hours(double y, double barTop)
    {
        var last = double.MinValue;
        LocalDate? day = null;
        foreach (var (x, local) in axis.Ticks(picture.Zone, TextWidth.Of("00:00", Small) + 12))
        {
            sketch.Line(x, barTop, x, barTop + 4, Tone.Faint, 1);
            sketch.Line(x, y, x, y + 5, Tone.Ink, 1.5);
            var text = local.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
            if (x + (TextWidth.Of(text, Small) / 2) > width - 2)
                continue;
            sketch.Text(x, y + 24, text, Small, anchor: Anchor.Middle);
            var date = day is null ? $"{TimeAxis.Day(local)} {picture.Zone.Id}" : TimeAxis.Day(local);
            if (local.Date != day && Math.Max(Margin, x - 20) is var left && left > last && left + TextWidth.Of(date, 12) < width)
            {
                sketch.Text(left, y + 40, date, 12);
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
            items.Add((DrawingTexts.KeyNoFlow, (x, top) => sketch.Box(x, top, 22, 12, Tone.Stopped, Tone.Ink)));
        if (picture.Clock.Stretches.Any(s => s.Stopped == Truth.Unknown))
            items.Add((DrawingTexts.KeyPerhaps, (x, top) => sketch.Box(x, top, 22, 12, Hatch.Perhaps, Tone.Stopped, 4, 3)));
        items.Add((DrawingTexts.KeyPastLimit, (x, top) => sketch.Box(x, top, 22, 12, Hatch.Past, Tone.Faint)));
        if (!picture.Looks.IsEmpty)
            items.Add((DrawingTexts.KeyLook, (x, top) => sketch.Line(x + 11, top + 1, x + 11, top + 11, Tone.Ink, 2)));
        if (!picture.Attempts.IsEmpty)
            items.Add(
                (
                    DrawingTexts.KeyAttempt,
                    (x, top) =>
                    {
                        sketch.Line(x + 2, top + 6, x + 22, top + 6, Tone.Ink, 3);
                        sketch.Line(x + 2, top, x + 2, top + 12, Tone.Ink, 2);
                    }
                )
            );
        if (picture.Arrival is { } a)
            items.Add((DrawingTexts.KeyHelp(a.Source), (x, top) => sketch.Box(x, top + 3, 22, 6, Tone.Help)));
        var (left, row) = (Margin, y + 6);
        foreach (var (word, draw) in items)
        {
            var wide = 28 + TextWidth.Of(word, 12) + 12;
            if (left > Margin && left + wide - 12 > width - Margin)
                (left, row) = (Margin, row + RowHeight);
            draw(left, row);
            sketch.Text(left + 28, row + 11, word, 12);
            left += wide;
        }

        return row + 16;
    }

    private void Labels(ImmutableArray<Placed> labels, Func<int, double> baseline, bool bold)
    {
        foreach (var label in labels)
        {
            sketch.Box(label.Left - 2, baseline(label.Row) - 13, label.Label.Width + 2, 17, Tone.Ground);
            sketch.Text(label.X, baseline(label.Row), label.Label.Text, Small, bold, label.Anchor);
        }
    }
}
