namespace Farhold.Hub.Storage;

/// <summary>Which database, as it was asked for.</summary>
/// <remarks>How to reach PostgreSQL is a secret: it never stands on the command line, where all may see it.</remarks>
internal static class StoreSettings
{
    public const string Variable = "FARHOLD_STORE";

    /// <param name="kind"><c>sqlite</c> or <c>postgres</c>; null: nothing was said.</param>
    /// <param name="file">With what Npgsql reads, such as <c>Host=db;Database=farhold;Username=farhold;Password=…</c>.</param>
    /// <returns>What Npgsql reads, null for SQLite; or why not.</returns>
    public static (string? Postgres, string? Refusal) Of(string? kind, string? file, Func<string, string?> environment)
    {
        if (kind is not (null or "sqlite" or "postgres"))
            return (null, $"'{kind}' is no store: sqlite or postgres.");
        if (kind is not "postgres")
            return (null, file is null ? null : "--store-settings are those of --store postgres.");
        try
        {
            var settings = file is null ? environment(Variable) : File.ReadAllText(file);
            return string.IsNullOrWhiteSpace(settings)
                ? (null, $"--store postgres needs its settings: --store-settings FILE, or {Variable}.")
                : (settings.Trim(), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, $"The settings of the store can't be read: {e.Message}");
        }
    }
}
