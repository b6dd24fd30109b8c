using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Browser;

/// <param name="Id">Names the casualty on this phone only.</param>
/// <param name="Alias">As it is shown; the record's own line keeps what was written.</param>
/// <param name="Opened">When this phone first had the record.</param>
/// <param name="Entries">Number of numbered lines; 0 where it was not counted.</param>
public sealed record CasualtyHead(string Id, string Alias, bool Practice, Instant Opened, int Entries = 0)
{
    public string Alias { get; init; } = Plain.Line(Alias);
}

public enum LineState
{
    Kept,

    /// <summary>Another line has the same id and says something else.</summary>
    Conflicting,

    /// <summary>Not an entry this version can read; kept as it came.</summary>
    Unreadable,

    /// <summary>It says that this phone wrote it, which is not so; kept as it came, and counted as damage.</summary>
    Claimed,
}

/// <param name="Received">When it came in, if it says that it was written later than that; else null.</param>
public sealed record StoredLine(string Text, LineState State, Instant? Received = null);

/// <summary>What came of adding an entry.</summary>
public abstract record Appended
{
    private Appended() { }

    public sealed record Stored(string Line, int Number) : Appended;

    /// <param name="Key">Tells this failure from others.</param>
    /// <param name="Body">The entry without its id.</param>
    /// <param name="Rescued">A second place on this phone has it, from which it is tried again.</param>
    /// <param name="Opens">The casualty it was to open; null if it was not to open one.</param>
    public sealed record NotStored(string Key, string Casualty, string Body, string Reason, bool Rescued, CasualtyHead? Opens = null)
        : Appended;
}

/// <param name="Id">Null: the line can't be read as an entry.</param>
public sealed record IncomingLine(EntryId? Id, ReadOnlyMemory<byte> Bytes);

/// <param name="Batch">By which it can be taken back; empty where nothing was added.</param>
public readonly record struct MergeCount(int Added, int Same, int Conflicting, int Unreadable, string Batch = "");

/// <summary>What was taken in at once.</summary>
/// <param name="Source">Where it came from, in words.</param>
/// <param name="Count">Lines that it added and that were not this phone's own.</param>
public sealed record TakenBatch(string Id, Instant At, string Source, int Count);

/// <param name="Persisted">The browser has promised not to clear this storage by itself.</param>
/// <param name="Shorter">Casualties whose record has lost lines since it was last seen.</param>
/// <param name="BroughtBack">Entries that the browser had lost and that came back from the second copy since the app was started.</param>
public sealed record StorageHealth(
    bool Persisted,
    long UsedBytes,
    long QuotaBytes,
    ImmutableArray<ShorterRecord> Shorter,
    int BroughtBack = 0
);

public readonly record struct ShorterRecord(string Casualty, int Expected, int Found);
