namespace Farhold.App.WayOut;

/// <summary>Reads the tracks among files taken in, piece by piece, so that the page stays awake and can stop it.</summary>
public sealed class TrackTaking(TimeProvider time, IXmlFiles xml, Texts texts)
{
    private CancellationTokenSource? working;

    /// <summary>How much has been read, 0 to 1; null while nothing is.</summary>
    public double? Share { get; private set; }

    /// <summary>By its ending, since a track that is broken is still meant as one.</summary>
    public static bool IsTrack(string name) =>
        name.EndsWith(".gpx", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".xml", StringComparison.OrdinalIgnoreCase);

    /// <param name="files">By name; what is no track is left alone.</param>
    /// <param name="shown">Called whenever there is something new to show.</param>
    /// <returns>Each track or why it is refused; null if it was stopped.</returns>
    public async Task<IReadOnlyDictionary<string, Read<TrackFile>>?> ReadAsync(
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files,
        Action shown
    )
    {
        Stop();
        using var cancel = new CancellationTokenSource();
        working = cancel;
        Share = 0;
        shown();
        try
        {
            return await ReadAsync(files.Where(f => IsTrack(f.Key)).ToArray(), shown, cancel.Token);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
        finally
        {
            if (working == cancel)
                (working, Share) = (null, null);
        }
    }

    /// <summary>Nothing comes of what was read so far.</summary>
    public void Stop()
    {
        working?.Cancel();
        (working, Share) = (null, null);
    }

    private async Task<Dictionary<string, Read<TrackFile>>> ReadAsync(
        KeyValuePair<string, ReadOnlyMemory<byte>>[] tracks,
        Action shown,
        CancellationToken cancellation
    )
    {
        var breath = new Breath(time);
        var whole = new Dictionary<string, Read<TrackFile>>();
        if (tracks.Length > 0 && !await xml.ReadyAsync())
            return tracks.ToDictionary(
                t => t.Key,
                t => (Read<TrackFile>)new Read<TrackFile>.Refused([new(t.Key, 1, 1, texts.TrackNoReader)])
            );
        cancellation.ThrowIfCancellationRequested();
        foreach (var (name, bytes) in tracks)
        foreach (var (share, read) in TrackFile.Pieces(name, bytes, xml.Open))
        {
            if (read is not null)
                whole[name] = read;
            Share = (whole.Count + (read is null ? share : 0)) / tracks.Length;
            if (await breath.TakeAsync(cancellation))
                shown();
        }

        return whole;
    }
}
