namespace Farhold.WayOut.Ground;

/// <summary>A strict XML parser outside .NET, in the midst of one file.</summary>
public interface IXmlFeed : IDisposable
{
    /// <summary>Takes the next piece of the text.</summary>
    /// <param name="isLast">Nothing follows it.</param>
    /// <returns>
    /// What it holds, each field ended by U+0000, which no XML file may hold: <c>&lt;</c>, where its name begins, local name,
    /// namespace, <c>1</c> if it is empty, number of attributes, and name and value of each; <c>&gt;</c>; <c>=</c> and a text;
    /// <c>!</c> and where the file is broken. Places are UTF-16 units from the beginning of the text.
    /// </returns>
    string Take(string text, bool isLast);
}

/// <summary>The nodes of an XML file as a parser outside .NET tells them.</summary>
public sealed class FedXmlNodes(ReadOnlyMemory<byte> content, IXmlFeed feed) : IXmlNodes
{
    /// <summary>Bytes given at a time: a millisecond or two of a phone's work (design).</summary>
    private const int Piece = 16 << 10;

    private readonly XmlDecoder decoder = new(content);
    private readonly XmlLines lines = new();
    private readonly List<(Range Name, Range Value)> attributes = [];
    private string batch = "";
    private int at;
    private int open;
    private Range name,
        space,
        text;
    private bool isOver;

    public (int Line, int Column)? Broken { get; private set; }

    public double Share => decoder.Share;

    public XmlKind Kind { get; private set; }

    public int Depth { get; private set; }

    public int Line { get; private set; }

    public int Column { get; private set; }

    public string LocalName => batch[name];

    public string Namespace => batch[space];

    public bool IsEmpty { get; private set; }

    public string Text => batch[text];

    public string? Attribute(string name)
    {
        foreach (var attribute in attributes)
            if (batch.AsSpan()[attribute.Name].SequenceEqual(name))
                return batch[attribute.Value];
        return null;
    }

    public bool Next()
    {
        while (at >= batch.Length && Broken is null)
            if (!Fill())
                return false;
        return Broken is null && Take();
    }

    public void Dispose() => feed.Dispose();

    /// <returns>False if there was nothing left to give.</returns>
    private bool Fill()
    {
        if (decoder.IsUnknown)
            Broken = (1, 1);
        if (isOver || decoder.IsUnknown)
            return false;
        var piece = decoder.Next(Piece);
        lines.Add(piece);
        isOver = decoder.IsAtEnd;
        (batch, at) = (feed.Take(piece, isOver), 0);
        return true;
    }

    /// <returns>False if what came is where the file is broken.</returns>
    private bool Take()
    {
        var what = batch[Field()];
        attributes.Clear();
        (Depth, IsEmpty) = (open, false);
        switch (what)
        {
            case "<":
                Kind = XmlKind.Start;
                (Line, Column) = lines.Place(Number());
                (name, space) = (Field(), Field());
                IsEmpty = Number() == 1;
                for (var left = Number(); left > 0; left--)
                    attributes.Add((Field(), Field()));
                if (!IsEmpty)
                    open++;
                return true;
            case ">":
                Kind = XmlKind.End;
                Depth = --open;
                return true;
            case "=":
                Kind = XmlKind.Text;
                text = Field();
                return true;
            default:
                Broken = lines.Place(Number());
                return false;
        }
    }

    private int Number() => int.Parse(batch.AsSpan()[Field()], System.Globalization.CultureInfo.InvariantCulture);

    private Range Field()
    {
        var from = at;
        at = batch.IndexOf('\0', from) + 1;
        return from..(at - 1);
    }
}
