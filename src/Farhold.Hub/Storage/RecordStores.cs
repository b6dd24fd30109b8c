using Farhold.Hub.Sync;

namespace Farhold.Hub.Storage;

/// <summary>Which store it is.</summary>
internal static class RecordStores
{
    /// <exception cref="StoreUnusableException">It can't be opened.</exception>
    public static IRecordStore Open(SyncOptions options) =>
        options.Postgres is { } connection
            ? PostgresStore.Open(connection, options.KeyFile ?? Path.Combine(options.Folder, HubKey.FileName))
            : SqliteStore.Open(options.Folder, options.KeyFile);
}
