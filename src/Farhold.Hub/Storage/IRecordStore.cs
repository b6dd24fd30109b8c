using System.Collections.Immutable;
using System.Data.Common;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Storage;

/// <summary>Lines that came in together.</summary>
/// <param name="Casualty">One that the store has named.</param>
/// <param name="Via">Who brought them.</param>
/// <param name="At">When, by the hub's clock.</param>
internal sealed record Arrival(string Casualty, ImmutableArray<HeldLine> Lines, string Via, Instant At);

/// <param name="Position">From 1 on for each casualty, without gaps, in the order of commit.</param>
internal sealed record StoredLine(long Position, ReadOnlyMemory<byte> Bytes);

/// <summary>Which casualties fit what a phone knows one by.</summary>
/// <param name="Certain">One that surely is the one, a new one where none fits; null where a person has to say.</param>
/// <param name="Candidates">Where a person has to say: those that may be.</param>
/// <param name="Erased">What it is known by belongs to a record that was erased: nothing was kept, and nothing is to come in again.</param>
internal sealed record Match(string? Certain, ImmutableArray<string> Candidates, Tombstone? Erased = null);

/// <summary>What is left of an erased casualty.</summary>
internal sealed record Tombstone(Instant At, string By, string Reason);

/// <summary>The lines of all casualties, for good: what is acknowledged is on the disk.</summary>
/// <remarks>Safe for use by several threads. Every store passes <c>RecordStoreContract</c>.</remarks>
internal interface IRecordStore : IAsyncDisposable
{
    /// <summary>The database that the records are in, for what else is kept there (numbered SQL files, from 2 on).</summary>
    /// <remarks>
    /// SQL that every store understands: parameters <c>@x</c>, <c>on conflict do nothing</c>, whole numbers as <see cref="long"/>.
    /// The tables of 1.sql and 3.sql are this interface's own. A table that refers to a casualty has to be in <see cref="Erasure"/>.
    /// </remarks>
    DbDataSource Rows { get; }

    /// <summary>Others may write to the same database.</summary>
    bool IsShared { get; }

    /// <summary>Keeps lines; each line of a casualty once, however often and in whatever order it comes.</summary>
    /// <returns>How many are new. By then they are on the disk.</returns>
    /// <exception cref="StoreFullException">There is no room; nothing of this arrival was kept. Later ones may succeed.</exception>
    /// <exception cref="KeyNotFoundException">There is no such casualty.</exception>
    /// <exception cref="ErasedException">There was one.</exception>
    /// <exception cref="StoreAwayException">The database can't be reached; whether anything was kept is not known.</exception>
    Task<int> AppendAsync(Arrival arrival, CancellationToken cancel = default);

    /// <summary>The lines behind a position, in the order of commit; null where there is no such casualty.</summary>
    /// <param name="position">0: all.</param>
    /// <exception cref="ErasedException">There was such a casualty.</exception>
    /// <exception cref="StoreDamagedException">A line is not as it was sealed.</exception>
    Task<ImmutableArray<StoredLine>?> SinceAsync(string casualty, long position, CancellationToken cancel = default);

    /// <summary>Finds the casualty that is known by these roots, or opens a new one, and keeps the roots.</summary>
    /// <remarks>The rule is that of docs/decisions/whose-record.md: where it leaves doubt, nothing is kept and a person says.</remarks>
    /// <exception cref="StoreFullException">There is no room.</exception>
    Task<Match> FindAsync(Roots roots, Instant at, CancellationToken cancel = default);

    /// <summary>Takes a casualty away for good with all that refers to it, its data key first of all; a tombstone stays.</summary>
    /// <param name="by">Who, as the tombstone is to say it.</param>
    /// <returns>How many lines there were; 0 where it was erased already.</returns>
    /// <exception cref="KeyNotFoundException">There is no such casualty.</exception>
    Task<int> EraseAsync(string casualty, string by, string reason, Instant at, CancellationToken cancel = default);
}

/// <summary>The disk is full.</summary>
internal sealed class StoreFullException(Exception inner) : IOException("There is no room on the disk of the hub.", inner);

/// <summary>The casualty was here and has been erased.</summary>
internal sealed class ErasedException(Tombstone tombstone) : InvalidOperationException("The record was erased.")
{
    public Tombstone Tombstone => tombstone;
}

/// <summary>The database can't be reached now.</summary>
internal sealed class StoreAwayException(Exception inner) : IOException("The database of the hub can't be reached.", inner);

/// <summary>What is stored is not what was stored.</summary>
internal sealed class StoreDamagedException(string where) : IOException(where);

/// <summary>The store can't be used: its place can't be written, its key is missing, or a later version of the program made it.</summary>
internal sealed class StoreUnusableException(string reason, Exception? inner = null) : IOException(reason, inner);
