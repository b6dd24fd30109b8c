using System.Data.Common;
using System.Globalization;

namespace Farhold.Hub.Storage;

/// <summary>Brings a database to the form of this program: numbered files, each applied once, forward only, all or nothing.</summary>
internal static class Migrations
{
    /// <summary>From this form on lines are sealed.</summary>
    public const int Sealed = 3;

    /// <summary>The form that this program writes.</summary>
    public static int Latest(Dialect dialect) => Numbers(dialect).Max();

    /// <param name="keyFile">Made where it is missing and nothing was sealed yet.</param>
    /// <param name="upTo">The form to stop at; null: the latest.</param>
    /// <returns>The key that the lines in it are sealed with.</returns>
    /// <exception cref="StoreUnusableException">A later version of the program has made it, or the key is missing or another.</exception>
    public static async Task<HubKey> ApplyAsync(DbConnection database, Dialect dialect, string keyFile, int? upTo = null)
    {
        await database.RunAsync(dialect.Begin);
        try
        {
            await database.RunAsync(dialect.Versions);
            var current = await CurrentAsync(database);
            if (current > Latest(dialect))
                throw new StoreUnusableException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The records were written by a later version of the hub (form {current}; this one knows {Latest(dialect)}): "
                    ) + "use that one."
                );
            var key = current < Sealed ? HubKey.ReadOrMake(keyFile) : await KeyAsync(database, keyFile);
            foreach (var number in Numbers(dialect).Where(n => n > current && n <= (upTo ?? n)).Order())
            {
                await database.RunAsync(Text(dialect, number));
                if (number == Sealed)
                    await PlainLines.SealAsync(database, key);
                await database.RunAsync(
                    string.Create(CultureInfo.InvariantCulture, $"insert into version values ({number}, {dialect.Now})")
                );
            }

            await database.RunAsync("commit");
            return key;
        }
        catch
        {
            await RollBackAsync(database);
            throw;
        }
    }

    private static async Task RollBackAsync(DbConnection database)
    {
        try
        {
            await database.RunAsync("rollback");
        }
        catch (DbException)
        {
            // It was done already; what went wrong before is what counts.
        }
    }

    /// <summary>The form that a database has.</summary>
    public static async Task<int> CurrentAsync(DbConnection database) =>
        Convert.ToInt32(await database.ScalarAsync("select coalesce(max(number), 0) from version"), CultureInfo.InvariantCulture);

    /// <summary>The key that a database is sealed with.</summary>
    /// <exception cref="StoreUnusableException">It is missing, or another.</exception>
    public static async Task<HubKey> KeyAsync(DbConnection database, string file)
    {
        var key = HubKey.Read(file);
        if (await database.ScalarAsync("select 1 from hub_key where print = @p", ("@p", key.Print)) is null)
            throw new StoreUnusableException($"The key in {file} is not the one that the records are sealed with.");
        return key;
    }

    private static IEnumerable<int> Numbers(Dialect dialect) =>
        typeof(Migrations)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(dialect.Name + "/", StringComparison.Ordinal))
            .Select(n => int.Parse(n[(dialect.Name.Length + 1)..^".sql".Length], CultureInfo.InvariantCulture));

    private static string Text(Dialect dialect, int number)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{dialect.Name}/{number}.sql");
        using var reader = new StreamReader(typeof(Migrations).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
