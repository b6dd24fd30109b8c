using System.Collections.Immutable;
using System.Data.Common;

namespace Farhold.Hub.Storage;

/// <summary>A statement with its values, in the SQL that both stores understand: parameters are <c>@name</c>.</summary>
internal static class Sql
{
    public static async Task<int> RunAsync(
        this DbDataSource rows,
        string sql,
        (string Name, object? Value)[] values,
        CancellationToken cancel = default
    )
    {
        await using var connection = await rows.OpenConnectionAsync(cancel);
        return await RunAsync(connection, sql, values, cancel);
    }

    public static async Task<int> RunAsync(
        this DbConnection connection,
        string sql,
        (string Name, object? Value)[] values,
        CancellationToken cancel = default
    )
    {
        await using var command = connection.Command(sql, values);
        return await command.ExecuteNonQueryAsync(cancel);
    }

    public static async Task<ImmutableArray<T>> ListAsync<T>(
        this DbDataSource rows,
        string sql,
        (string Name, object? Value)[] values,
        Func<DbDataReader, T> read,
        CancellationToken cancel = default
    )
    {
        await using var connection = await rows.OpenConnectionAsync(cancel);
        return await ListAsync(connection, sql, values, read, cancel);
    }

    public static async Task<ImmutableArray<T>> ListAsync<T>(
        this DbConnection connection,
        string sql,
        (string Name, object? Value)[] values,
        Func<DbDataReader, T> read,
        CancellationToken cancel = default
    )
    {
        await using var command = connection.Command(sql, values);
        await using var found = await command.ExecuteReaderAsync(cancel);
        var all = ImmutableArray.CreateBuilder<T>();
        while (await found.ReadAsync(cancel))
            all.Add(read(found));
        return all.ToImmutable();
    }

    /// <summary>Several statements together: all of them, or none.</summary>
    public static async Task<T> TogetherAsync<T>(
        this DbDataSource rows,
        Func<DbConnection, Task<T>> work,
        CancellationToken cancel = default
    )
    {
        await using var connection = await rows.OpenConnectionAsync(cancel);
        await using var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancel);
        var result = await work(connection);
        await transaction.CommitAsync(cancel);
        return result;
    }

    public static long? Whole(this DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInt64(column);

    extension(DbConnection on)
    {
        public DbCommand Command(string sql, params ReadOnlySpan<(string Name, object? Value)> values)
        {
            var command = on.CreateCommand();
            command.CommandText = sql;
            foreach (var (name, value) in values)
            {
                var parameter = command.CreateParameter();
                (parameter.ParameterName, parameter.Value) = (name, value ?? DBNull.Value);
                command.Parameters.Add(parameter);
            }

            return command;
        }

        /// <returns>How many rows were written.</returns>
        public Task<int> RunAsync(string sql, params ReadOnlySpan<(string Name, object? Value)> values) => Run(on.Command(sql, values));

        /// <returns>The first value of the first row; null where there is none.</returns>
        public Task<object?> ScalarAsync(string sql, params ReadOnlySpan<(string Name, object? Value)> values) =>
            Scalar(on.Command(sql, values));

        /// <returns>What is read of every row.</returns>
        public Task<List<T>> AllAsync<T>(
            string sql,
            Func<DbDataReader, T> read,
            params ReadOnlySpan<(string Name, object? Value)> values
        ) => All(on.Command(sql, values), read);
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
