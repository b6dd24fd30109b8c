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
        await using var command = Command(connection, sql, values);
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
        await using var command = Command(connection, sql, values);
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

    private static DbCommand Command(DbConnection on, string sql, (string Name, object? Value)[] values)
    {
        var command = on.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value ?? DBNull.Value;
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
