using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Farhold.Hub.Storage;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>One row of the trail.</summary>
/// <param name="Who">A device's thumb, <c>console</c>, or <c>link</c> and the id of a share.</param>
/// <param name="About">What it was done to: a casualty's id, a device's thumb, an id of a share.</param>
internal sealed record Audited(long Position, Instant At, string Who, string What, string About, byte[] Hash);

/// <summary>Who did what, each row holding the hash of the one before it. Rows are never changed and hold no health data.</summary>
internal sealed class AuditTrail(DbDataSource rows) : IDisposable
{
    private const int Tries = 8;

    private static readonly byte[] Nothing = new byte[SHA256.HashSizeInBytes];

    private readonly SemaphoreSlim gate = new(1);

    public async Task AddAsync(string who, string what, string about, Instant now, CancellationToken cancel = default)
    {
        await gate.WaitAsync(cancel);
        try
        {
            for (var attempt = 1; ; attempt++)
                try
                {
                    await AppendAsync(who, what, about, now, cancel);
                    return;
                }
                catch (DbException) when (attempt < Tries)
                {
                    // Another hub on the same store took the position; the row before this one is another by now.
                }
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>The newest rows first.</summary>
    /// <param name="about">Only about these; default: about everything.</param>
    public async Task<ImmutableArray<Audited>> LatestAsync(
        int most,
        ImmutableHashSet<string>? about = null,
        CancellationToken cancel = default
    ) =>
        [
            .. (await rows.ListAsync("select position, at, who, what, about, hash from audit order by position desc", [], Read, cancel))
                .Where(a => about is null || about.Contains(a.About) || about.Contains(a.Who))
                .Take(most),
        ];

    /// <summary>The position of the first row that does not follow from the one before it; null where all do.</summary>
    public async Task<long?> BrokenAtAsync(CancellationToken cancel = default)
    {
        var (before, expected) = (Nothing, 1L);
        foreach (
            var row in await rows.ListAsync("select position, at, who, what, about, hash from audit order by position", [], Read, cancel)
        )
        {
            if (
                row.Position != expected
                || !row.Hash.AsSpan().SequenceEqual(Hash(before, row.Position, row.At, row.Who, row.What, row.About))
            )
                return expected;
            (before, expected) = (row.Hash, expected + 1);
        }

        return null;
    }

    public void Dispose() => gate.Dispose();

    private Task<int> AppendAsync(string who, string what, string about, Instant now, CancellationToken cancel) =>
        rows.TogetherAsync(
            async connection =>
            {
                var last = await connection.ListAsync(
                    "select position, hash from audit order by position desc limit 1",
                    [],
                    r => (Position: r.GetInt64(0), Hash: r.GetFieldValue<byte[]>(1)),
                    cancel
                );
                var (position, before) = last is [var one] ? (one.Position + 1, one.Hash) : (1, Nothing);
                var at = Instant.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
                return await connection.RunAsync(
                    "insert into audit (position, at, who, what, about, hash) values (@p, @at, @who, @what, @about, @hash)",
                    [
                        ("@p", position),
                        ("@at", at.ToUnixTimeMilliseconds()),
                        ("@who", who),
                        ("@what", what),
                        ("@about", about),
                        ("@hash", Hash(before, position, at, who, what, about)),
                    ],
                    cancel
                );
            },
            cancel
        );

    /// <summary>Each part with its length before it, so that no two rows have the same bytes.</summary>
    private static byte[] Hash(byte[] before, long position, Instant at, string who, string what, string about)
    {
        var text = new StringBuilder();
        foreach (
            var part in (string[])
                [
                    position.ToString(CultureInfo.InvariantCulture),
                    at.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture),
                    who,
                    what,
                    about,
                ]
        )
            text.Append(CultureInfo.InvariantCulture, $"{part.Length}:{part},");
        return SHA256.HashData([.. before, .. Encoding.UTF8.GetBytes(text.ToString())]);
    }

    private static Audited Read(DbDataReader row) =>
        new(
            row.GetInt64(0),
            Instant.FromUnixTimeMilliseconds(row.GetInt64(1)),
            row.GetString(2),
            row.GetString(3),
            row.GetString(4),
            row.GetFieldValue<byte[]>(5)
        );
}
