using System.Data.Common;

namespace Farhold.Hub.Storage;

/// <summary>SQL with parameters by name, on any database.</summary>
internal static class Sql
{
    extension(DbConnection on)
    {
        public DbCommand Command(string sql, params ReadOnlySpan<(string Name, object Value)> values)
        {
            var command = on.CreateCommand();
            command.CommandText = sql;
            foreach (var (name, value) in values)
            {
                var parameter = command.CreateParameter();
                (parameter.ParameterName, parameter.Value) = (name, value);
                command.Parameters.Add(parameter);
            }

            return command;
        }

        /// <returns>How many rows were written.</returns>
        public Task<int> RunAsync(string sql, params ReadOnlySpan<(string Name, object Value)> values) => Run(on.Command(sql, values));

        /// <returns>The first value of the first row; null where there is none.</returns>
        public Task<object?> ScalarAsync(string sql, params ReadOnlySpan<(string Name, object Value)> values) =>
            Scalar(on.Command(sql, values));

        /// <returns>What is read of every row.</returns>
        public Task<List<T>> AllAsync<T>(string sql, Func<DbDataReader, T> read, params ReadOnlySpan<(string Name, object Value)> values) =>
            All(on.Command(sql, values), read);
    }

    private static async Task<int> Run(DbCommand command)
    {
        await using (command)
            return await command.ExecuteNonQueryAsync();
    }

    private static async Task<object?> Scalar(DbCommand command)
    {
        await using (command)
            return await command.ExecuteScalarAsync() is { } value and not DBNull ? value : null;
    }

    private static async Task<List<T>> All<T>(DbCommand command, Func<DbDataReader, T> read)
    {
        await using var ending = command;
        await using var rows = await command.ExecuteReaderAsync();
        var all = new List<T>();
        while (await rows.ReadAsync())
            all.Add(read(rows));
        return all;
    }
}
