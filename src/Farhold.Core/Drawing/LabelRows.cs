using System.Collections.Immutable;

namespace Farhold;

/// <summary>A label that wants to stand at <paramref name="X"/>, in pixels.</summary>
internal readonly record struct Wanted(double X, double Width, string Text);

/// <summary>Where a label stands: its left edge and its row, 0 next to the picture.</summary>
internal readonly record struct Placed(Wanted Label, double Left, int Row)
{
    public double Right => Left + Label.Width;
}

/// <summary>Puts labels in rows so that none touches another or leaves the picture.</summary>
internal static class LabelRows
{
    private const double Gap = 8;

    /// <summary>From right to left, each in the lowest row in which it is free beside its place: right of it, left of it, or moved in.</summary>
    public static ImmutableArray<Placed> Place(IEnumerable<Wanted> labels, double from, double to)
    {
        var placed = ImmutableArray.CreateBuilder<Placed>();
        foreach (var label in labels.OrderByDescending(l => l.X))
        {
            var options = new[] { label.X + 6, label.X - 6 - label.Width, label.X - (label.Width / 2) }
                .Select((left, i) => (Left: Math.Clamp(left, from, Math.Max(from, to - label.Width)), Moved: left < from || left + label.Width > to, i))
                .OrderBy(o => o.Moved).ThenBy(o => o.i).Select(o => o.Left).ToArray();
            placed.Add(First(label, options, placed));
        }

        return placed.ToImmutable();
    }

    public static int Rows(ImmutableArray<Placed> placed) => placed.IsEmpty ? 0 : placed.Max(p => p.Row) + 1;

    private static Placed First(Wanted label, double[] options, IReadOnlyCollection<Placed> placed)
    {
        for (var row = 0; ; row++)
            foreach (var left in options)
                if (placed.All(p => p.Row != row || p.Right + Gap <= left || left + label.Width + Gap <= p.Left)
                    && placed.All(p => p.Row >= row || label.X < p.Left - 3 || label.X > p.Right + 3 || row > 8))
                    return new(label, left, row);
    }
}
