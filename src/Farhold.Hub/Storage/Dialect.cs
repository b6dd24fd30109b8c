namespace Farhold.Hub.Storage;

/// <summary>In what two databases differ where the same is meant.</summary>
/// <param name="Name">Folder of the numbered files.</param>
/// <param name="Begin">Begins a transaction in which nobody else changes the form.</param>
/// <param name="Versions">Makes the table of forms.</param>
/// <param name="Now">When a form was reached, as text for people.</param>
internal sealed record Dialect(string Name, string Begin, string Versions, string Now)
{
    public static readonly Dialect Sqlite = new(
        "sqlite",
        "begin immediate",
        "create table if not exists version(number integer primary key, applied text not null) strict",
        "datetime()"
    );

    /// <remarks>The number of the lock is drawn at random; it only has to be the same for all hubs.</remarks>
    public static readonly Dialect Postgres = new(
        "postgres",
        "begin; select pg_advisory_xact_lock(7301664912004)",
        "create table if not exists version(number integer primary key, applied text not null)",
        "now()::text"
    );
}
