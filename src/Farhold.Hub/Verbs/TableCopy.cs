using System.Data.Common;
using System.Text.Json;
using System.Text.Json.Nodes;
using Farhold.Hub.Storage;
using Microsoft.Data.Sqlite;

namespace Farhold.Hub.Verbs;

/// <summary>Whole tables as JSON: by table a list of rows, by column a text, a number, or <c>{"base64":"…"}</c>.</summary>
internal static class TableCopy
{
    private const string Bytes = "base64";

    /// <summary>Those of which a backup has its own form, or that a database is begun with.</summary>
    private static readonly HashSet<string> Apart = new(["line", "data_key", "version", "hub_key"], StringComparer.Ordinal);

    /// <summary>Every table there is, also of later forms, but for those kept apart.</summary>
    public static async Task<List<string>> TablesAsync(DbConnection database)
    {
        var all = await database.AllAsync(
            "select name from sqlite_master where type = 'table' and name not like 'sqlite%' order by name",
            row => row.GetString(0)
        );
        return [.. all.Where(t => !Apart.Contains(t))];
    }

    public static async Task<JsonArray> ReadAsync(DbConnection database, string table)
    {
        var rows = await database.AllAsync($"select * from {table}", Row);
        return [.. rows];
    }

    /// <param name="keep">Whether a row is to come in.</param>
    /// <returns>How many came in.</returns>
    /// <exception cref="RefusedException">There is no such table or column, or it holds what a table can't hold.</exception>
    public static async Task<int> WriteAsync(DbConnection database, string table, JsonArray rows, Func<JsonObject, bool> keep)
    {
        var columns = (await database.AllAsync("select name from pragma_table_info(@t)", row => row.GetString(0), ("@t", table))).ToHashSet(
            StringComparer.Ordinal
        );
        if (columns.Count == 0 || Apart.Contains(table))
            throw new RefusedException($"The backup holds a table {Plain.Line(table)} that this version of the hub does not restore.");
        var count = 0;
        foreach (var row in rows.OfType<JsonObject>().Where(keep))
        {
            if (row.Select(c => c.Key).FirstOrDefault(c => !columns.Contains(c)) is { } odd)
                throw new RefusedException($"The table {table} has no column {Plain.Line(odd)}.");
            await using var command = database.Command("");
            var names = row.Select((c, i) => (Column: c.Key, Parameter: $"@p{i}", Value: Value(c.Value))).ToArray();
            foreach (var (_, parameter, value) in names)
                command.Parameters.Add(new SqliteParameter(parameter, value));
            command.CommandText =
                $"insert into {table} ({string.Join(", ", names.Select(n => n.Column))}) "
                + $"values ({string.Join(", ", names.Select(n => n.Parameter))})";
            await command.ExecuteNonQueryAsync();
            count++;
        }

        return count;
    }

    private static JsonNode? Row(DbDataReader row)
    {
        var values = new JsonObject();
        for (var i = 0; i < row.FieldCount; i++)
            values[row.GetName(i)] = row.GetValue(i) switch
            {
                DBNull => null,
                long number => number,
                string text => text,
                byte[] bytes => new JsonObject { [Bytes] = Convert.ToBase64String(bytes) },
                var other => throw new RefusedException($"A column {row.GetName(i)} holds a {other.GetType().Name}."),
            };
        return values;
    }

    private static object Value(JsonNode? node) =>
        node switch
        {
            null => DBNull.Value,
            JsonObject bytes => bytes[Bytes]!.GetValue<string>() is var text ? Convert.FromBase64String(text) : [],
            _ when node.GetValueKind() == JsonValueKind.Number => node.GetValue<long>(),
            _ => node.GetValue<string>(),
        };
}
