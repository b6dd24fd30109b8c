namespace Farhold.Xml;

/// <summary>
/// Tracks in GPX files, read by the framework's XML reader. It weighs too much for the phone, which has a reader of its own.
/// </summary>
public static class XmlTracks
{
    public static IXmlNodes Open(ReadOnlyMemory<byte> content) => new XmlReaderNodes(content);

    /// <inheritdoc cref="Gpx.Parse"/>
    public static Read<Track> Parse(ReadOnlyMemory<byte> content, string file) => Gpx.Parse(content, file, Open);

    /// <param name="files">The content of a file, or why there is none.</param>
    /// <returns>The track in it, or why there is none.</returns>
    public static Func<string, Read<TrackFile>> In(Func<string, Read<ReadOnlyMemory<byte>>> files) =>
        name =>
            files(name) switch
            {
                Read<ReadOnlyMemory<byte>>.Usable(var bytes) => TrackFile.Pieces(name, bytes, Open).Last().Read!,
                Read<ReadOnlyMemory<byte>>.Refused(var why) => new Read<TrackFile>.Refused(why),
                _ => throw new System.Diagnostics.UnreachableException(),
            };
}
