namespace Farhold.Documents.Card;

/// <summary>Puts blocks one under another, column by column and page by page.</summary>
internal sealed class Flow(PaperLook look)
{
    private double y = look.Margin;

    public List<List<Placed>> Pages { get; } =
    [
        [],
    ];

    /// <summary>Begins under what stands already; columns of what fits on one page are made about equally long.</summary>
    public void Put(IEnumerable<Block> blocks, int columns)
    {
        var groups = Groups(blocks);
        var top = y;
        var bottom = Balanced(groups, columns, top);
        var (column, lowest) = (0, y);
        foreach (var group in groups)
        {
            var height = group.Sum(b => b.Height);
            if (y > top && y + height > bottom)
            {
                (column, y) = (column + 1, top);
                if (column == columns)
                    Turn();
            }

            if (y == top && top > look.Margin && y + height > look.Bottom)
                Turn(); // a column that begins part way down can't hold it
            foreach (var block in group)
            {
                Pages[^1].Add(new(block, columns == 1 ? look.Margin : look.ColumnLeft(column), y));
                y += block.Height;
            }

            lowest = Math.Max(lowest, y);
        }

        y = lowest;

        void Turn()
        {
            Pages.Add([]);
            (column, top, y, lowest, bottom) = (0, look.Margin, look.Margin, look.Margin, look.Bottom);
        }
    }

    /// <summary>A heading with what follows it, unless that is more than a page holds.</summary>
    private List<Block[]> Groups(IEnumerable<Block> blocks)
    {
        var (groups, held) = (new List<Block[]>(), new List<Block>());
        foreach (var block in blocks)
        {
            if (held.Sum(b => b.Height) + block.Height > look.Bottom - look.Margin && held.Count > 0)
            {
                groups.Add([.. held]);
                held.Clear();
            }

            held.Add(block);
            if (block.WithNext)
                continue;
            groups.Add([.. held]);
            held.Clear();
        }

        if (held.Count > 0)
            groups.Add([.. held]);
        return groups;
    }

    /// <summary>The least depth at which all fits into the columns; the page's own where it does not fit on this page.</summary>
    private double Balanced(List<Block[]> groups, int columns, double top)
    {
        if (columns == 1)
            return look.Bottom;
        for (var bottom = top; bottom < look.Bottom; bottom += look.Line)
            if (ColumnsAt(groups, top, bottom) <= columns)
                return bottom;
        return look.Bottom;
    }

    private static int ColumnsAt(List<Block[]> groups, double top, double bottom)
    {
        var (columns, y) = (1, top);
        foreach (var height in groups.Select(g => g.Sum(b => b.Height)))
        {
            if (top + height > bottom)
                return int.MaxValue;
            if (y + height > bottom)
                (columns, y) = (columns + 1, top);
            y += height;
        }

        return columns;
    }
}
