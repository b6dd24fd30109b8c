namespace Farhold.WayOut.Ground;

/// <summary>Tracks in GPX files, versions 1.1 and 1.0.</summary>
/// <remarks>
/// Source of the format: GPX 1.1 schema, topografix.com/GPX/1/1, element list from memory. Positions that can't be right
/// refuse the file; odd heights and times are left out with a warning, since a way without them is still a way.
/// </remarks>
public static class Gpx
{
    /// <summary>Larger files are refused unread: 64 MiB (design).</summary>
    public const int MaxBytes = 64 << 20;

    /// <summary>Files with more points are refused (design).</summary>
    public const int MaxPoints = 1_000_000;

    /// <summary>Of more points than this only every second, third or further one is kept (design).</summary>
    public const int KeptPoints = 200_000;

    /// <summary>Elements nested deeper than this are refused (design).</summary>
    public const int MaxDepth = 64;

    /// <summary>Reading stops after so many refusals (design).</summary>
    public const int MaxRefusals = 20;

    /// <param name="file">Named in refusals.</param>
    /// <param name="open">What reads the XML.</param>
    /// <returns>A track of at least two points; or every reason why not, up to <see cref="MaxRefusals"/>.</returns>
    public static Read<Track> Parse(ReadOnlyMemory<byte> content, string file, XmlOpener open) => Pieces(content, file, open).Last().Read!;

    /// <summary>The same in pieces, for a screen that has to stay awake.</summary>
    /// <returns>The last one has what <see cref="Parse"/> returns.</returns>
    public static IEnumerable<ReadingPiece<Track>> Pieces(ReadOnlyMemory<byte> content, string file, XmlOpener open)
    {
        if (content.Length > MaxBytes)
        {
            yield return new(
                1,
                Refuse(
                    new Refusal(
                        file,
                        1,
                        1,
                        $"The file has {content.Length >> 20} MiB; at most {MaxBytes >> 20} MiB are read. Save a shorter track."
                    )
                )
            );
            yield break;
        }

        const double reading = 0.5; // the rest is its review
        var reader = new GpxReader(content, file, open);
        foreach (var share in reader.Pieces())
            yield return new(share * reading, null);
        if (reader.Refusals.Count > 0)
            yield return new(1, new Read<Track>.Refused([.. reader.Refusals]));
        else
            foreach (var (share, read) in GpxTrack.Pieces(reader.Found, file))
                yield return new(reading + (share * (1 - reading)), read);
    }

    internal static Read<Track> Refuse(Refusal refusal) => new Read<Track>.Refused([refusal]);
}
