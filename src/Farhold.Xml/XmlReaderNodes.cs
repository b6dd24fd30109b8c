using System.Runtime.InteropServices;
using System.Xml;

namespace Farhold.Xml;

/// <summary>The nodes of an XML file as the framework's reader tells them.</summary>
internal sealed class XmlReaderNodes : IXmlNodes
{
    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersInDocument = Gpx.MaxBytes,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
    };

    private readonly MemoryStream stream;
    private readonly XmlReader xml;

    public XmlReaderNodes(ReadOnlyMemory<byte> content)
    {
        stream = MemoryMarshal.TryGetArray(content, out var array)
            ? new MemoryStream(array.Array!, array.Offset, array.Count, writable: false)
            : new MemoryStream(content.ToArray(), writable: false);
        xml = XmlReader.Create(stream, Settings);
    }

    public (int Line, int Column)? Broken { get; private set; }

    public double Share => (double)stream.Position / Math.Max(1, stream.Length);

    public XmlKind Kind { get; private set; }

    public int Depth => xml.Depth;

    public int Line => ((IXmlLineInfo)xml).LineNumber;

    public int Column => ((IXmlLineInfo)xml).LinePosition;

    public string LocalName => xml.LocalName;

    public string Namespace => xml.NamespaceURI;

    public bool IsEmpty => xml.IsEmptyElement;

    public string Text { get; private set; } = "";

    public string? Attribute(string name) => xml.GetAttribute(name);

    public bool Next()
    {
        try
        {
            while (xml.Read())
            {
                if (Of(xml.NodeType) is not { } kind)
                    continue;
                Kind = kind;
                Text = kind == XmlKind.Text ? xml.Value : "";
                return true;
            }
        }
        catch (XmlException broken)
        {
            Broken = (Math.Max(1, broken.LineNumber), Math.Max(1, broken.LinePosition));
        }

        return false;
    }

    public void Dispose()
    {
        xml.Dispose();
        stream.Dispose();
    }

    private static XmlKind? Of(XmlNodeType type) =>
        type switch
        {
            XmlNodeType.Element => XmlKind.Start,
            XmlNodeType.EndElement => XmlKind.End,
            XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace or XmlNodeType.Whitespace => XmlKind.Text,
            _ => null,
        };
}
