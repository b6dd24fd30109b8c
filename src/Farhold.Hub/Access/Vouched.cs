using System.Collections.Immutable;
using System.Data.Common;
using Farhold.Hub.Storage;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>A device's signature over what it holds: it vouches for its own lines up to a number.</summary>
/// <param name="Head">The first line of the message.</param>
/// <param name="Base">What was signed, the digest of the head in it.</param>
internal sealed record Seal(string Thumb, string Device, int Number, byte[] Head, string Base, byte[] Signature, Instant At);

/// <summary>What senders have said and signed of the casualties: seals, and lines that they hold and the hub does not.</summary>
internal sealed class Vouched(DbDataSource rows)
{
    /// <summary>Keeps the newest seal of a device over a casualty.</summary>
    public Task SealAsync(string casualty, Seal seal, CancellationToken cancel = default) =>
        rows.RunAsync(
            "insert into seal (casualty, thumb, device, number, head, base, signature, at) "
                + "values (@c, @t, @d, @n, @h, @b, @s, @at) on conflict (casualty, thumb) do update set device = excluded.device, "
                + "number = excluded.number, head = excluded.head, base = excluded.base, signature = excluded.signature, at = excluded.at "
                + "where excluded.number >= seal.number",
            [
                ("@c", casualty),
                ("@t", seal.Thumb),
                ("@d", seal.Device),
                ("@n", seal.Number),
                ("@h", seal.Head),
                ("@b", seal.Base),
                ("@s", seal.Signature),
                ("@at", seal.At.ToUnixTimeMilliseconds()),
            ],
            cancel
        );

    public Task<ImmutableArray<Seal>> SealsAsync(string casualty, CancellationToken cancel = default) =>
        rows.ListAsync(
            "select thumb, device, number, head, base, signature, at from seal where casualty = @c order by thumb",
            [("@c", casualty)],
            r => new Seal(
                r.GetString(0),
                r.GetString(1),
                r.GetInt32(2),
                r.GetFieldValue<byte[]>(3),
                r.GetString(4),
                r.GetFieldValue<byte[]>(5),
                Instant.FromUnixTimeMilliseconds(r.GetInt64(6))
            ),
            cancel
        );

    /// <summary>Remembers, or forgets, what a device says it holds of a casualty and is lacking here.</summary>
    /// <param name="head">Null: nothing of it is lacking.</param>
    public Task SaidAsync(string casualty, string thumb, Head? head, Instant now, CancellationToken cancel = default) =>
        head is null
            ? rows.RunAsync("delete from said where casualty = @c and thumb = @t", [("@c", casualty), ("@t", thumb)], cancel)
            : rows.RunAsync(
                "insert into said (casualty, thumb, head, at) values (@c, @t, @h, @at) "
                    + "on conflict (casualty, thumb) do update set head = excluded.head, at = excluded.at",
                [("@c", casualty), ("@t", thumb), ("@h", head.Write()), ("@at", now.ToUnixTimeMilliseconds())],
                cancel
            );

    /// <summary>What each device has said it holds and was lacking here then.</summary>
    public async Task<ImmutableDictionary<string, Head>> SaidAsync(string casualty, CancellationToken cancel = default) =>
        (
            await rows.ListAsync(
                "select thumb, head from said where casualty = @c order by thumb",
                [("@c", casualty)],
                r => (Thumb: r.GetString(0), Head: Head.Read(r.GetFieldValue<byte[]>(1), "said")),
                cancel
            )
        )
            .Where(s => s.Head is Read<Head>.Usable)
            .ToImmutableDictionary(s => s.Thumb, s => ((Read<Head>.Usable)s.Head).Value);

    /// <summary>Remembers when a device last exchanged lines of a casualty.</summary>
    public Task HeardAsync(string casualty, string thumb, Instant now, CancellationToken cancel = default) =>
        rows.RunAsync(
            "insert into heard (casualty, thumb, at) values (@c, @t, @at) on conflict (casualty, thumb) do update set at = excluded.at",
            [("@c", casualty), ("@t", thumb), ("@at", now.ToUnixTimeMilliseconds())],
            cancel
        );

    /// <summary>When each device last exchanged lines of a casualty.</summary>
    public async Task<ImmutableDictionary<string, Instant>> HeardAsync(string casualty, CancellationToken cancel = default) =>
        (
            await rows.ListAsync(
                "select thumb, at from heard where casualty = @c",
                [("@c", casualty)],
                r => (Thumb: r.GetString(0), At: Instant.FromUnixTimeMilliseconds(r.GetInt64(1))),
                cancel
            )
        ).ToImmutableDictionary(h => h.Thumb, h => h.At);
}
