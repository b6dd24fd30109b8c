namespace Farhold.WayOut.Ground;

/// <summary>Opens an XML file for one walk through it.</summary>
public delegate IXmlNodes XmlOpener(ReadOnlyMemory<byte> content);

/// <summary>What an XML file is made of, as far as a track needs it.</summary>
public enum XmlKind
{
    Start,
    End,
    Text,
}

/// <summary>An XML file, walked through once, node by node. Comments and processing instructions are passed over.</summary>
/// <remarks>
/// Whatever stands behind it is strict, refuses every document type, knows no entity beyond the five of XML itself,
/// and never looks at anything outside the file.
/// </remarks>
public interface IXmlNodes : IDisposable
{
    /// <returns>False at the end, and where the file is broken.</returns>
    bool Next();

    /// <summary>Line and column, from 1, where the file stops being XML; null as long as it is.</summary>
    (int Line, int Column)? Broken { get; }

    /// <summary>How much of the file has been taken in, 0 to 1.</summary>
    double Share { get; }

    XmlKind Kind { get; }

    /// <summary>Elements around this node.</summary>
    int Depth { get; }

    /// <summary>Where the name of an element begins; from 1.</summary>
    int Line { get; }

    int Column { get; }

    /// <summary>The name of an element without its prefix.</summary>
    string LocalName { get; }

    string Namespace { get; }

    /// <summary>An element that ends where it begins: no <see cref="XmlKind.End"/> follows.</summary>
    bool IsEmpty { get; }

    /// <summary>Of a text node.</summary>
    string Text { get; }

    /// <param name="name">As written, with its prefix.</param>
    string? Attribute(string name);
}
