using System.Collections.Immutable;

namespace Farhold.App.Browser;

/// <summary>
/// The record of every casualty on this phone. Lines are only ever added; those of others can be taken back as they came.
/// </summary>
public interface ILogStore
{
    /// <summary>Id of this phone in entry ids.</summary>
    string Device { get; }

    /// <summary>Another tab has added to the casualty with this id.</summary>
    event Action<string>? ChangedElsewhere;

    /// <summary>True while another tab of this phone shows the same casualty as <see cref="Watch"/> names.</summary>
    bool AlsoOpenElsewhere { get; }

    string NewCasualtyId();

    /// <summary>128 random bits in base32: who a casualty is, on whatever phone.</summary>
    string NewIdentity();

    Task<ImmutableArray<CasualtyHead>> ListAsync();

    Task<ImmutableArray<StoredLine>> ReadAsync(string casualty);

    /// <summary>Adds one entry and gives it the next number. Done only once the phone has confirmed it as written.</summary>
    /// <param name="body">The entry as a JSON object without its <c>id</c>.</param>
    /// <param name="opens">Not null: the entry opens this casualty, in the same transaction.</param>
    Task<Appended> AppendAsync(string casualty, string body, CasualtyHead? opens = null);

    /// <summary>Tries entries again that could not be stored; returns those still not stored.</summary>
    Task<ImmutableArray<Appended.NotStored>> ReplayAsync();

    /// <summary>Merges lines into a casualty: all, or none.</summary>
    /// <param name="source">Where they came from, in words.</param>
    Task<MergeCount> MergeAsync(CasualtyHead into, ImmutableArray<IncomingLine> lines, string source);

    /// <summary>What was taken in, the newest first.</summary>
    Task<ImmutableArray<TakenBatch>> BatchesAsync(string casualty);

    /// <summary>Takes back all that one batch added, at once; a casualty that holds nothing else goes with it.</summary>
    Task TakeBackAsync(string casualty, string batch);

    /// <summary>Erases a casualty and all that this phone keeps of it.</summary>
    Task EraseAsync(string casualty);

    /// <summary>Erases every casualty and setting of this phone; it is as new afterwards.</summary>
    Task EraseAllAsync();

    /// <summary>Hands the record file to the browser as a download.</summary>
    Task ExportAsync(string casualty, string fileName);

    Task<StorageHealth> HealthAsync(bool askToPersist);

    /// <summary>Records found shorter than before have been told of; stop telling.</summary>
    void AcceptLoss();

    /// <summary>Names the casualty shown in this tab; null for none.</summary>
    void Watch(string? casualty);
}
