using System.Data.Common;

namespace Farhold.Hub.Storage;

/// <summary>Seals the lines of a database that was written before lines were sealed. The one time that rows of them are changed.</summary>
internal static class PlainLines
{
    public static async Task SealAsync(DbConnection database, HubKey hub)
    {
        await database.RunAsync("insert into hub_key (print) values (@p)", ("@p", hub.Print));
        foreach (var casualty in await database.AllAsync("select id from casualty", rows => rows.GetString(0)))
        {
            var (key, wrapped) = hub.NewKey(casualty);
            await database.RunAsync("insert into data_key (casualty, wrapped) values (@c, @w)", ("@c", casualty), ("@w", wrapped));
            const string Positions = "select position from line where casualty = @c";
            foreach (var position in await database.AllAsync(Positions, rows => rows.GetInt64(0), ("@c", casualty)))
                await SealAsync(database, casualty, position, key);
        }
    }

    private static async Task SealAsync(DbConnection database, string casualty, long position, DataKey key)
    {
        byte[] box;
        await using (
            var command = database.Command(
                "select device, number, hash, bytes from line where casualty = @c and position = @p",
                ("@c", casualty),
                ("@p", position)
            )
        )
        await using (var rows = await command.ExecuteReaderAsync())
        {
            await rows.ReadAsync();
            box = key.Seal(rows.GetString(0), rows.GetInt64(1), rows.GetFieldValue<byte[]>(2), rows.GetFieldValue<byte[]>(3));
        }

        await database.RunAsync(
            "update line set bytes = @b where casualty = @c and position = @p",
            ("@b", box),
            ("@c", casualty),
            ("@p", position)
        );
    }
}
