using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Farhold.Hub.Storage;

/// <summary>Brings a database to the form of this program: numbered files, each applied once, forward only.</summary>
internal static class SqliteMigrations
{
    private const string Folder = "sqlite/";

    /// <summary>The form that this program writes.</summary>
    public static int Latest => Numbers().Max();

    /// <exception cref="StoreUnusableException">A later version of the program has made it.</exception>
    public static void Apply(SqliteConnection database)
    {
        Run(database, "create table if not exists version(number integer primary key, applied text not null) strict");
        var current = Convert.ToInt32(Scalar(database, "select coalesce(max(number), 0) from version"), CultureInfo.InvariantCulture);
        if (current > Latest)
            throw new StoreUnusableException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The records were written by a later version of the hub (form {current}; this one knows {Latest}): use that one."
                )
            );
        foreach (var number in Numbers().Where(n => n > current).Order())
        {
            using var together = database.BeginTransaction();
            Run(database, Text(number));
            Run(database, string.Create(CultureInfo.InvariantCulture, $"insert into version values ({number}, datetime())"));
            together.Commit();
        }
    }

    private static IEnumerable<int> Numbers() =>
        typeof(SqliteMigrations)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
            .Select(n => int.Parse(n.AsSpan(Folder.Length, n.Length - Folder.Length - ".sql".Length), CultureInfo.InvariantCulture));

    private static string Text(int number)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{Folder}{number}.sql");
        using var reader = new StreamReader(typeof(SqliteMigrations).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }

    private static void Run(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static object? Scalar(SqliteConnection database, string sql)
    {
        using var command = database.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
