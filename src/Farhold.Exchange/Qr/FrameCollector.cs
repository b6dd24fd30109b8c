namespace Farhold.Exchange.Qr;

/// <summary>What came of showing a frame to a collector.</summary>
public enum FrameResult
{
    /// <summary>It told something new.</summary>
    Taken,

    /// <summary>What it says was known.</summary>
    NothingNew,

    /// <summary>It is of another transfer, or none of ours: nothing is changed by it.</summary>
    Foreign,

    /// <summary>The whole is there and its hash is right: see <see cref="FrameCollector.Record"/>.</summary>
    Complete,

    /// <summary>All frames were there, but the hash of the whole is wrong. The collection begins anew.</summary>
    WholeDamaged,
}

/// <summary>Gathers frames, in any order, until the pack can be told from them. Never touches a record.</summary>
/// <remarks>
/// Frames of several transfers are kept apart by their head: a stray or changed one begins a collection of its own and stops no
/// other. The one that has come furthest is told of; the first that is whole is taken.
/// </remarks>
public sealed class FrameCollector
{
    /// <summary>Design: transfers gathered at once; with one more, the one that has come least far is dropped.</summary>
    private const int Most = 4;

    private readonly List<FrameCollection> collections = [];

    /// <summary>How many independent frames are held.</summary>
    public int Known => Furthest?.Known ?? 0;

    /// <summary>How many are needed; 0 before the first.</summary>
    public int Needed => Furthest?.Needed ?? 0;

    /// <summary>The bytes of the record file, once complete.</summary>
    public byte[]? Record { get; private set; }

    private FrameCollection? Furthest => collections.MaxBy(c => c.Known);

    public FrameResult Add(string text)
    {
        if (Frame.Read(text) is not { } frame)
            return FrameResult.Foreign;
        if (Record is not null)
            return FrameResult.NothingNew;
        var its = collections.Find(c => c.Takes(frame)) ?? Begin(frame);
        if (!its.Add(frame))
            return FrameResult.NothingNew;
        if (its.IsWhole)
            return Finish(its);
        return its == Furthest ? FrameResult.Taken : FrameResult.Foreign;
    }

    public void Clear()
    {
        collections.Clear();
        Record = null;
    }

    private FrameCollection Begin(Frame frame)
    {
        if (collections.Count == Most)
            collections.Remove(collections.MinBy(c => c.Known)!);
        var begun = new FrameCollection(frame);
        collections.Add(begun);
        return begun;
    }

    private FrameResult Finish(FrameCollection whole)
    {
        Record = whole.Unpack();
        if (Record is not null)
            return FrameResult.Complete;
        collections.Remove(whole);
        return FrameResult.WholeDamaged;
    }
}
