using System.Collections.Immutable;

namespace Farhold.Drawing;

/// <summary>A label that wants to stand at <paramref name="X"/>, in pixels.</summary>
internal readonly record struct Wanted(double X, double Width, string Text);

/// <summary>Where a label stands: its left edge and its row, 0 next to the picture.</summary>
internal readonly record struct Placed(Wanted Label, double Left, int Row, Anchor Anchor)
{
    public double Right => Left + Label.Width;

    /// <summary>Where the text is anchored.</summary>
    public double X =>
        Anchor switch
        {
            Anchor.Start => Left,
            Anchor.End => Right,
            _ => (Left + Right) / 2,
        };
}

/// <summary>Puts labels in rows so that none touches another or leaves the picture.</summary>
internal static class LabelRows
{
    private const double Gap = 8;

    /// <summary>Beside the lines that run up to them: right of the line, left of it, or moved in.</summary>
    public static ImmutableArray<Placed> Beside(IEnumerable<Wanted> labels, double from, double to)
    {
        var all = labels.ToArray();
        return Place(
            all,
            from,
            to,
            [Anchor.Start, Anchor.End, Anchor.Middle],
            (label, at, placed) =>
                all.All(other =>
                    placed.FirstOrDefault(p => p.Label == other, new(other, 0, int.MaxValue, default)) is var p
                    && (p.Row >= at.Row ? Clear(other.X, at) : Clear(label.X, p))
                )
        );
    }

    /// <summary>Under their marks, clear of the lines at <paramref name="lines"/> where there is room.</summary>
    public static ImmutableArray<Placed> Under(IEnumerable<Wanted> labels, double from, double to, IReadOnlyCollection<double> lines) =>
        Place([.. labels], from, to, [Anchor.Middle, Anchor.Start, Anchor.End], (_, at, _) => lines.All(x => Clear(x, at)));

    public static int Rows(ImmutableArray<Placed> placed) => placed.IsEmpty ? 0 : placed.Max(p => p.Row) + 1;

    public static bool Clear(double x, Placed label) => x < label.Left - 3 || x > label.Right + 3;

    /// <summary>Where one of the lowest rows is fully clear, there; else the lowest place where nothing touches.</summary>
    private static ImmutableArray<Placed> Place(
        Wanted[] labels,
        double from,
        double to,
        Anchor[] anchors,
        Func<Wanted, Placed, IReadOnlyCollection<Placed>, bool> clear
    )
    {
        var placed = ImmutableArray.CreateBuilder<Placed>();
        foreach (var label in labels.OrderByDescending(l => l.X))
        {
            // One row more than there are labels is always free.
            var options = anchors.Select(a => At(label, a, from, to)).ToArray();
            var free = Enumerable
                .Range(0, placed.Count + 2)
                .SelectMany(row => options.Select(o => o with { Row = row }))
                .Where(c => placed.All(p => Apart(p, c)))
                .ToArray();
            placed.Add(free.FirstOrDefault(c => clear(label, c, placed), free[0]));
        }

        return placed.ToImmutable();
    }

    private static Placed At(Wanted label, Anchor anchor, double from, double to)
    {
        var left = anchor switch
        {
            Anchor.Start => label.X + 6,
            Anchor.End => label.X - 6 - label.Width,
            _ => label.X - (label.Width / 2),
        };
        return new(label, Math.Clamp(left, from, Math.Max(from, to - label.Width)), 0, anchor);
    }

    private static bool Apart(Placed a, Placed b) => a.Row != b.Row || a.Right + Gap <= b.Left || b.Right + Gap <= a.Left;
}
