using System.Globalization;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Hub.Verbs;

/// <summary>Reads everything that is kept, and says what does not fit, and where. It repairs nothing and writes nothing.</summary>
internal static class VerifyVerb
{
    /// <exception cref="RefusedException">There are no records, or not of this version's form.</exception>
    public static async Task<int> RunAsync(string folder, string keyFile, TextWriter output)
    {
        var file = Path.Combine(folder, SqliteStore.FileName);
        if (!File.Exists(file))
            throw new RefusedException($"There are no records in {folder}.");
        await using var database = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadOnly,
                Pooling = false,
            }.ToString()
        );
        var check = new Verification(database);
        try
        {
            await database.OpenAsync();
            await database.RunAsync("begin");
            if (await Migrations.CurrentAsync(database) < Migrations.Sealed)
                throw new RefusedException("The records are of a form that is not sealed yet: start the hub with them once.");
            await check.RunAsync(await Migrations.KeyAsync(database, keyFile));
        }
        catch (SqliteException e)
        {
            check.Faults.Add($"The file can't be read on: {e.Message}");
        }

        foreach (var fault in check.Faults)
            await output.WriteLineAsync(fault);
        await output.WriteLineAsync(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Read: {check.Casualties} casualties, {check.Lines} lines, {check.Seals} seals, {check.Tombstones} tombstones. "
            ) + "Looked at: the pages of the file, every line against its seal and its hash, positions, roots, prefixes against seals."
        );
        if (check.Broken > 0)
            await output.WriteLineAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{check.Broken} entries do not follow from the line before them. They lie here as they came: a doubt of their records."
                )
            );
        await output.WriteLineAsync(
            check.Faults.Count == 0
                ? "All of it fits."
                : string.Create(CultureInfo.InvariantCulture, $"{check.Faults.Count} faults. Nothing was changed; restore from a backup.")
        );
        return check.Faults.Count == 0 ? 0 : 1;
    }
}
