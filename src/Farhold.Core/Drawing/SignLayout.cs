using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>What was on one limb, on the time axis of the signs.</summary>
/// <param name="Sure">No flow.</param>
/// <param name="Perhaps">Perhaps no flow.</param>
/// <param name="Loose">Since it was loosened.</param>
internal sealed record LimbLane(
    double Top,
    double Bottom,
    ImmutableArray<ChartSpan> Sure,
    ImmutableArray<ChartSpan> Perhaps,
    ChartSpan? Loose
);

/// <summary>The mental state over time.</summary>
/// <param name="Clear">Looks at which the casualty was alert.</param>
/// <param name="Altered">Looks at which not.</param>
internal sealed record MindLane(double Top, double Bottom, ImmutableArray<ChartSpan> Clear, ImmutableArray<ChartSpan> Altered);

/// <summary>The picture of signs as it is laid out: panels from above to below on one time axis.</summary>
internal sealed class SignLayout
{
    /// <summary>Where the time axis begins; the words of the scale stand before it.</summary>
    public const double Left = 44;

    /// <summary>Where the first panel begins, below the times.</summary>
    public const double Top = 22;

    private const double Aside = 84;
    private const double Beside = 8;
    private const double Head = 22;
    private const double Plot = 52;
    private const double Below = 10;
    private const double Lane = 14;
    private const double Mark = 3;
    private const double Space = 6;

    private readonly SignPicture picture;
    private readonly IChartWords words;
    private readonly List<ChartText> texts = [];
    private readonly List<double> separators = [];
    private double y = Top;

    public SignLayout(SignPicture picture, IChartWords words, double width)
    {
        (this.picture, this.words, Width) = (picture, words, width);
        Times = ChartAxis.Times(picture.From, picture.Now, picture.Zone, PerMinute, TextWidth.Of("00:00", ChartText.Least) + Space);
        WriteTimes();
        Limbs = [.. picture.Limbs.Select(LimbAt)];
        Panels = [.. picture.Curves.Select(PanelAt)];
        Mind = picture.Minds.IsEmpty ? null : MindAt();
        if (!picture.Scores.IsEmpty)
            Panels = Panels.Add(ScoreAt());
    }

    public double Width { get; }

    public double Height => y;

    public double Right => Width - Aside;

    public ImmutableArray<RoundTime> Times { get; }

    public ImmutableArray<LimbLane> Limbs { get; }

    public ImmutableArray<SignPanel> Panels { get; }

    public MindLane? Mind { get; }

    public IReadOnlyList<ChartText> Texts => texts;

    /// <summary>Lines between the panels.</summary>
    public IReadOnlyList<double> Separators => separators;

    private double PerMinute => (Right - Left) / (picture.Now - picture.From).TotalMinutes;

    /// <summary>Times before the picture stand at its edge.</summary>
    public double X(Instant at) => Math.Clamp(Left + (PerMinute * (at - picture.From).TotalMinutes), Left, Right);

    private double Middle(Happened when) => (X(when.Earliest) + X(when.Latest)) / 2;

    /// <summary>Days before hours, later ones before earlier ones; what has no room is left out.</summary>
    private void WriteTimes()
    {
        Write(Right + Beside, 14, words.Now, ChartText.Least, "strong");
        foreach (var time in Times.OrderByDescending(t => t.Midnight).ThenByDescending(t => t.At))
        {
            var width = TextWidth.Of(time.Text, ChartText.Least);
            var x = Math.Clamp(X(time.At), width / 2, Right + Beside - Space - (width / 2));
            var label = new ChartText(x, 14, time.Text, ChartText.Least, time.Midnight ? "strong" : "faint", Anchor.Middle);
            if (texts.TrueForAll(t => label.Right + Space <= t.Left || t.Right + Space <= label.Left))
                texts.Add(label);
        }
    }

    private void Write(double x, double baseline, string text, double size, string look, Anchor anchor = Anchor.Start) =>
        texts.Add(new(x, baseline, text, size, look, anchor));

    /// <summary>Begins a panel with its name; the plot begins below it.</summary>
    /// <param name="edge">How far to the right the name may go.</param>
    /// <remarks>A long name begins before the axis.</remarks>
    private double Begin(string name, double edge)
    {
        separators.Add(y);
        var x = Math.Clamp(edge - TextWidth.Of(name, ChartText.Least), 0, Left);
        Write(x, y + 15, name, ChartText.Least, "strong");
        return y + Head;
    }

    private LimbLane LimbAt(LimbPicture limb)
    {
        var top = Begin(words.Limb(limb), Width);
        y = top + Lane + Below;
        ImmutableArray<ChartSpan> Spans(Truth stopped) =>
            [
                .. limb
                    .Clock.Stretches.Where(s => s.Stopped == stopped && s.To >= picture.From)
                    .Select(s => new ChartSpan(X(s.From), Math.Max(X(s.To), X(s.From) + 1.5))),
            ];
        var loose = limb.Clock.Loosened() is { } since ? new ChartSpan(X(since.Latest), Right) : (ChartSpan?)null;
        return new(top, top + Lane, Spans(Truth.Met), Spans(Truth.Unknown), loose);
    }

    private SignPanel PanelAt(SignCurve curve)
    {
        var start = y;
        var top = Begin(words.Name(curve.Sign), Right);
        var bottom = top + Plot;
        y = bottom + Below;
        var scale = ChartScale.For(curve, top, bottom);
        var readings = curve.Readings.OrderBy(r => Middle(r.When)).ToImmutableArray();
        var last = curve.Readings[^1];
        WriteScale(curve, scale);
        WriteLast(curve, start);
        ChartPoint Point(Seen<double> r) => new(Middle(r.When), scale.Y(r.Value));
        return Banded(new(top, bottom), curve.Limits, scale) with
        {
            Lines = Unbroken(readings, Point),
            Dots = [.. readings.Where(r => r.When.IsInstant).Select(Point)],
            Bars =
            [
                .. readings.Where(r => !r.When.IsInstant).Select(r => new ChartBar(X(r.When.Earliest), X(r.When.Latest), scale.Y(r.Value))),
            ],
            Hollow = [.. curve.NotTaken.Select(X)],
            Ring = curve.Change is { Marked: true } ? Point(last) : null,
        };
    }

    /// <summary>Pale between what is usual, hatched from a limit outward.</summary>
    private static SignPanel Banded(SignPanel panel, SignLimits limits, ChartScale scale)
    {
        double Inside(double value) => Math.Clamp(scale.Y(value), panel.Top, panel.Bottom);
        var past = new List<ChartSpan>();
        if (limits.High is { } high && scale.Holds(high))
            past.Add(new(panel.Top, Inside(high)));
        if (limits.Low is { } low && scale.Holds(low))
            past.Add(new(Inside(low), panel.Bottom));
        return panel with
        {
            Usual = limits.Usual is { } usual ? new ChartSpan(Inside(usual.High), Inside(usual.Low)) : null,
            Past = [.. past],
            LimitLines = [.. new[] { limits.High, limits.Low }.OfType<double>().Where(scale.Holds).Select(scale.Y)],
        };
    }

    /// <summary>Broken where two readings may lie further apart than the gap.</summary>
    private ImmutableArray<ImmutableArray<ChartPoint>> Unbroken<T>(ImmutableArray<Seen<T>> readings, Func<Seen<T>, ChartPoint> point)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<ChartPoint>>();
        for (var (start, end) = (0, 0); start < readings.Length; start = end)
        {
            do end++;
            while (end < readings.Length && readings[end].When.Latest - readings[end - 1].When.Earliest <= picture.Gap);
            if (end - start > 1)
                lines.Add([.. readings[start..end].Select(point)]);
        }

        return lines.ToImmutable();
    }

    /// <summary>Limits first, then what is usual; without either the ends of what can be, or the least and the greatest seen.</summary>
    private void WriteScale(SignCurve curve, ChartScale scale)
    {
        var (limits, sign) = (curve.Limits, curve.Sign);
        double?[] wanted = [limits.High, limits.Low, limits.Usual?.High, limits.Usual?.Low];
        if (wanted.All(v => v is null))
            wanted =
            [
                scale.Holds(sign.Range.Max) ? sign.Range.Max : curve.Readings.Max(r => r.Value),
                scale.Holds(sign.Range.Min) ? sign.Range.Min : curve.Readings.Min(r => r.Value),
            ];
        WriteScale(wanted.OfType<double>().Select(v => (v, words.Value(sign, v))), scale);
    }

    /// <summary>The first ones first; what has no room is left out.</summary>
    private void WriteScale(IEnumerable<(double Value, string Text)> values, ChartScale scale)
    {
        var placed = new List<double>();
        foreach (var (value, text) in values.Where(v => scale.Holds(v.Value)))
        {
            var at = Math.Clamp(scale.Y(value) + 5, scale.Top + 11.2, scale.Bottom + 3);
            if (TextWidth.Of(text, ChartText.Least) > Left - Space || placed.Exists(p => Math.Abs(p - at) < 15))
                continue;
            placed.Add(at);
            Write(Left - Space, at, text, ChartText.Least, "faint", Anchor.End);
        }
    }

    private void WriteLast(SignCurve curve, double start)
    {
        var (sign, last) = (curve.Sign, curve.Readings[^1]);
        var at = Right + Beside;
        var value = words.Value(sign, last.Value);
        Write(at, start + 25, value, ChartText.Fitting(value, 24, Width - at), "large");
        Write(at, start + 44, words.Unit(sign), ChartText.Least, "faint");
        var line = start + 60;
        if (curve.Change is { } change)
        {
            var text = (change.By > 0 ? "▲ " : "▼ ") + words.Change(sign, change);
            Write(at, line, text, ChartText.Least, change.Marked ? "mark" : "faint");
            line += 16;
        }

        if (curve.Stale)
            Write(at, line, Short(last.When.Latest), ChartText.Least, "faint");
    }

    /// <summary>The clock where it can't be mistaken for that of another day, else the day.</summary>
    private string Short(Instant at)
    {
        var local = at.InZone(picture.Zone).LocalDateTime;
        return picture.Now - at < Duration.FromDays(1) ? TimeText.Clock(local.TimeOfDay) : TimeText.Day(local.Date);
    }

    private MindLane MindAt()
    {
        var start = y;
        var named = texts.Count;
        var top = Begin(words.Mind, Right);
        var bottom = top + Lane;
        y = bottom + Below;
        ImmutableArray<ChartSpan> Looks(bool alert) =>
            [
                .. picture
                    .Minds.Where(m => (m.Value == Mental.Alert) == alert)
                    .Select(m => new ChartSpan(Math.Max(Left, X(m.When.Earliest) - Mark), Math.Min(Right, X(m.When.Latest) + Mark))),
            ];
        var lane = new MindLane(top, bottom, Looks(true), Looks(false));
        var turns = picture.Minds.Where((m, i) => i == 0 || picture.Minds[i - 1].Value != m.Value).ToArray();
        if (turns.Length > 1 || turns[0].Value != Mental.Alert)
            WriteTurns(turns, bottom);
        var word = words.MentalState(picture.Minds[^1].Value);
        var room = Width - texts[named].Right - Beside;
        Write(Width, start + 15, word, ChartText.Fitting(word, 16, room), "strong", Anchor.End);
        return lane;
    }

    /// <summary>Each state where it begins, later ones first; what has no room is left out.</summary>
    private void WriteTurns(Seen<Mental>[] turns, double bottom)
    {
        var edge = Right;
        foreach (var turn in turns.Reverse())
        {
            var text = words.MentalState(turn.Value);
            var width = TextWidth.Of(text, ChartText.Least);
            var x = Math.Min(X(turn.When.Earliest), edge - width);
            if (x < 0)
                break;
            Write(x, bottom + 15, text, ChartText.Least, "plain");
            edge = x - Space;
        }

        y += 14;
    }

    private SignPanel ScoreAt()
    {
        const int urgent = 5; // RCP 2017, NEWS2 chart 2: urgent response from 5
        const int least = 10; // design: half of what can be reached
        var start = y;
        var top = Begin(words.Score, Right);
        var bottom = top + Plot;
        y = bottom + Below;
        var scale = new ChartScale(0, Math.Max(least, picture.Scores.Max(s => s.Value.Max)), top, bottom);
        WriteScale([(urgent, Say.Number(urgent)), (0, "0")], scale);
        var last = picture.Scores[^1].Value;
        var text = last.IsExact ? Say.Number(last.Min) : $"{Say.Number(last.Min)}–{Say.Number(last.Max)}";
        Write(Right + Beside, start + 25, text, ChartText.Fitting(text, 24, Aside - Beside), "large");
        // The worst it may be is what counts; from there down to the least.
        ChartPoint Point(Seen<ScoreBounds> s) => new(Middle(s.When), scale.Y(s.Value.Max));
        return new(top, bottom)
        {
            Past = [new(top, scale.Y(urgent))],
            LimitLines = [scale.Y(urgent)],
            Lines = Unbroken([.. picture.Scores.OrderBy(s => Middle(s.When))], Point),
            Dots = [.. picture.Scores.Select(Point)],
            Ranges =
            [
                .. picture
                    .Scores.Where(s => !s.Value.IsExact)
                    .Select(s => (Middle(s.When), new ChartSpan(scale.Y(s.Value.Max), scale.Y(s.Value.Min)))),
            ],
        };
    }
}
