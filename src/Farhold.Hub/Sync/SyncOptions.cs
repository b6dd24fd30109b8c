namespace Farhold.Hub.Sync;

/// <summary>Where records are kept, and how much anybody may ask.</summary>
/// <param name="Folder">Of the store, or of its key only.</param>
/// <param name="MostPerSecond">Requests for each address, after a burst of ten times as many.</param>
/// <param name="MostFindsPerMinute">Requests that look a casualty up, for each address.</param>
internal sealed record SyncOptions(string Folder, int MostPerSecond = 2, int MostFindsPerMinute = 10)
{
    /// <summary>Longest wait for the next bytes of a request. Design: longer than a radio needs to come back.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The hub key; null: beside the records.</summary>
    public string? KeyFile { get; init; }

    /// <summary>How PostgreSQL is reached; null: SQLite.</summary>
    /// <remarks>Not public, so that it is not printed with the rest: it may hold a password.</remarks>
    internal string? Postgres { get; init; }

    /// <summary>Where records are kept, in words.</summary>
    internal string Place => Postgres is null ? Folder : "PostgreSQL";
}
