using System.Collections.Immutable;
using System.Data.Common;
using System.Security.Cryptography;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using NodaTime;

namespace Farhold.Hub.Shares;

/// <summary>The links that were made. Of a secret only its hash is kept.</summary>
internal sealed class ShareStore(DbDataSource rows)
{
    /// <summary>Wrong digits after which a link ends by itself.</summary>
    public const int MostWrong = 5;

    private const string Columns = "id, casualty, made, made_by, until, ended, opened, last_opened, code";

    /// <summary>Makes a link; its secret and its digits can't be read again.</summary>
    public async Task<(Share Share, string Secret, string? Spoken)> MakeAsync(
        string casualty,
        string by,
        Instant until,
        bool withCode,
        Instant now,
        CancellationToken cancel = default
    )
    {
        var (id, secret, spoken) = (Codes.NewInvitation(), Codes.NewSecret(), withCode ? Codes.NewSpoken() : null);
        await rows.RunAsync(
            "insert into share (id, casualty, secret, code, wrong, made, made_by, until, opened) "
                + "values (@id, @c, @secret, @code, 0, @made, @by, @until, 0)",
            [
                ("@id", id),
                ("@c", casualty),
                ("@secret", Codes.Hash(secret)),
                ("@code", spoken is null ? null : Codes.Hash(id + spoken)),
                ("@made", now.ToUnixTimeMilliseconds()),
                ("@by", by),
                ("@until", until.ToUnixTimeMilliseconds()),
            ],
            cancel
        );
        return ((await OneAsync(id, cancel))!, secret, spoken);
    }

    public Task<ImmutableArray<Share>> OfAsync(string casualty, CancellationToken cancel = default) =>
        rows.ListAsync($"select {Columns} from share where casualty = @c order by made desc, id", [("@c", casualty)], Read, cancel);

    /// <summary>Ends a link now. False where it is none of the casualty's, or has ended before.</summary>
    public async Task<bool> EndAsync(string id, string casualty, Instant now, CancellationToken cancel = default) =>
        await rows.RunAsync(
            "update share set ended = @now where id = @id and casualty = @c and ended is null",
            [("@id", id), ("@c", casualty), ("@now", now.ToUnixTimeMilliseconds())],
            cancel
        ) == 1;

    /// <summary>Looks at what somebody who followed a link brings.</summary>
    /// <param name="counts">Whether it counts as an opening.</param>
    public async Task<(ShareAnswer Answer, Share? Share)> AskAsync(
        string id,
        string secret,
        string? spoken,
        bool counts,
        Instant now,
        CancellationToken cancel = default
    )
    {
        var found = await rows.ListAsync(
            "select secret, code, wrong from share where id = @id",
            [("@id", id)],
            r => (Secret: r.GetFieldValue<byte[]>(0), Code: r.IsDBNull(1) ? null : r.GetFieldValue<byte[]>(1), Wrong: r.GetInt64(2)),
            cancel
        );
        if (
            found is not [var kept]
            || !CryptographicOperations.FixedTimeEquals(kept.Secret, Codes.Hash(secret))
            || kept.Wrong >= MostWrong
            || await OneAsync(id, cancel) is not { } share
            || !share.IsOpenAt(now)
        )
            return (ShareAnswer.NotThere, null);
        if (kept.Code is not null && (spoken is null || !CryptographicOperations.FixedTimeEquals(kept.Code, Codes.Hash(id + spoken))))
        {
            if (spoken is { Length: > 0 })
                await rows.RunAsync("update share set wrong = wrong + 1 where id = @id", [("@id", id)], cancel);
            return (ShareAnswer.CodeWanted, null);
        }

        if (counts)
            await rows.RunAsync(
                "update share set opened = opened + 1, last_opened = @now where id = @id",
                [("@id", id), ("@now", now.ToUnixTimeMilliseconds())],
                cancel
            );
        return (ShareAnswer.Open, await OneAsync(id, cancel));
    }

    private async Task<Share?> OneAsync(string id, CancellationToken cancel) =>
        await rows.ListAsync($"select {Columns} from share where id = @id", [("@id", id)], Read, cancel) is [var one] ? one : null;

    private static Share Read(DbDataReader row) =>
        new(
            row.GetString(0),
            row.GetString(1),
            Instant.FromUnixTimeMilliseconds(row.GetInt64(2)),
            row.GetString(3),
            Instant.FromUnixTimeMilliseconds(row.GetInt64(4)),
            row.Whole(5) is { } ended ? Instant.FromUnixTimeMilliseconds(ended) : null,
            (int)row.GetInt64(6),
            row.Whole(7) is { } last ? Instant.FromUnixTimeMilliseconds(last) : null,
            !row.IsDBNull(8)
        );
}
