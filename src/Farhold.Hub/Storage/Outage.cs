using System.Data.Common;

namespace Farhold.Hub.Storage;

/// <summary>The database is away for a while, as against: it says no.</summary>
internal static class Outage
{
    /// <summary>What PostgreSQL says that is about to end, or only just starting (class 57 of its error codes).</summary>
    private static readonly HashSet<string> Ending = new(["57P01", "57P02", "57P03"], StringComparer.Ordinal);

    public static bool IsOne(Exception e) =>
        e is StoreAwayException
        || e is DbException failure && (failure.IsTransient || failure.SqlState is { } state && Ending.Contains(state));
}
