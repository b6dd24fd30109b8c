using Farhold.Xml;

namespace Farhold.App.Tests.Doubles;

/// <summary>Reads XML as the command line does; the phone's own reader is tried in a browser.</summary>
internal sealed class FrameworkXml : IXmlFiles
{
    public bool IsHere { get; set; } = true;

    public IXmlNodes Open(ReadOnlyMemory<byte> content) => XmlTracks.Open(content);

    public Task<bool> ReadyAsync() => Task.FromResult(IsHere);
}
