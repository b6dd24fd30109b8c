using System.Collections.Immutable;
using System.Data.Common;
using Farhold.Hub.Storage;
using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>Who is enrolled, who is invited, and which casualties a device may see. Every answer is read from the rows, so what is
/// taken away is gone with the next request.</summary>
internal sealed class AccessStore(DbDataSource rows)
{
    private const string DeviceColumns = "thumb, key, device, name, role, team, enrolled, confirmed, revoked";

    /// <summary>Keeps an invitation and answers its code, which nobody can read again.</summary>
    public async Task<string> InviteAsync(Invitation invitation, string by, Instant now, CancellationToken cancel = default)
    {
        var code = Codes.NewInvitation();
        await rows.RunAsync(
            "insert into invitation (hash, role, team, name, made, made_by, until, beforehand) "
                + "values (@hash, @role, @team, @name, @made, @by, @until, @beforehand)",
            [
                ("@hash", Codes.Hash(code)),
                ("@role", Wire.Word(invitation.Role)),
                ("@team", invitation.Team),
                ("@name", invitation.For),
                ("@made", now.ToUnixTimeMilliseconds()),
                ("@by", by),
                ("@until", invitation.Until.ToUnixTimeMilliseconds()),
                ("@beforehand", invitation.Beforehand ? 1 : 0),
            ],
            cancel
        );
        return code;
    }

    /// <summary>Enrols a key by the code of an invitation, which is used up by it.</summary>
    public Task<Enrolment> EnrolAsync(string code, byte[] key, string id, string name, Instant now, CancellationToken cancel = default) =>
        rows.TogetherAsync<Enrolment>(
            async connection =>
            {
                var thumb = Codes.Thumb(key);
                if (await OneAsync(connection, "thumb = @t", ("@t", thumb), cancel) is { Revoked: not null })
                    return new Enrolment.WasRevoked();
                if (await OneAsync(connection, "device = @d", ("@d", id), cancel) is { } holder && holder.Thumb != thumb)
                    return new Enrolment.IdTaken();
                var open = await connection.ListAsync(
                    "select role, team, name, beforehand from invitation "
                        + "where hash = @hash and used is null and withdrawn is null and until > @now",
                    [("@hash", Codes.Hash(code)), ("@now", now.ToUnixTimeMilliseconds())],
                    r => (Role: r.GetString(0), Team: r.GetString(1), For: r.GetString(2), Beforehand: r.GetInt64(3) != 0),
                    cancel
                );
                if (open is not [var invitation])
                    return new Enrolment.NoSuchCode();
                var used = await connection.RunAsync(
                    "update invitation set used = @now where hash = @hash and used is null",
                    [("@hash", Codes.Hash(code)), ("@now", now.ToUnixTimeMilliseconds())],
                    cancel
                );
                if (used != 1)
                    return new Enrolment.NoSuchCode();
                await connection.RunAsync("delete from device where thumb = @t", [("@t", thumb)], cancel);
                await connection.RunAsync(
                    $"insert into device ({DeviceColumns}) "
                        + "values (@thumb, @key, @device, @name, @role, @team, @enrolled, @confirmed, null)",
                    [
                        ("@thumb", thumb),
                        ("@key", key),
                        ("@device", id),
                        ("@name", name.Length > 0 ? name : invitation.For),
                        ("@role", invitation.Role),
                        ("@team", invitation.Team),
                        ("@enrolled", now.ToUnixTimeMilliseconds()),
                        ("@confirmed", invitation.Beforehand ? now.ToUnixTimeMilliseconds() : null),
                    ],
                    cancel
                );
                return new Enrolment.Done((await OneAsync(connection, "thumb = @t", ("@t", thumb), cancel))!);
            },
            cancel
        );

    public async Task<Device?> DeviceAsync(string thumb, CancellationToken cancel = default)
    {
        await using var connection = await rows.OpenConnectionAsync(cancel);
        return await OneAsync(connection, "thumb = @t", ("@t", thumb), cancel);
    }

    /// <param name="team">Null: of every team.</param>
    public Task<ImmutableArray<Device>> DevicesAsync(string? team, CancellationToken cancel = default) =>
        rows.ListAsync(
            $"select {DeviceColumns} from device where @team = '' or team = @team order by enrolled, thumb",
            [("@team", team ?? "")],
            Read,
            cancel
        );

    /// <summary>Somebody has compared the digits. False where there is no such device waiting.</summary>
    public async Task<bool> ConfirmAsync(string thumb, Instant now, CancellationToken cancel = default) =>
        await rows.RunAsync(
            "update device set confirmed = @now where thumb = @t and confirmed is null and revoked is null",
            [("@t", thumb), ("@now", now.ToUnixTimeMilliseconds())],
            cancel
        ) == 1;

    /// <summary>Lets a device out, for good. What it brought stays.</summary>
    public async Task<bool> RevokeAsync(string thumb, Instant now, CancellationToken cancel = default) =>
        await rows.RunAsync(
            "update device set revoked = @now where thumb = @t and revoked is null",
            [("@t", thumb), ("@now", now.ToUnixTimeMilliseconds())],
            cancel
        ) == 1;

    /// <summary>Whether a device may see a casualty. One that does not exist is one that it may not see.</summary>
    public async Task<bool> MaySeeAsync(Device device, Reach reach, string casualty, CancellationToken cancel = default)
    {
        if (reach == Reach.None)
            return false;
        var found = await rows.ListAsync(
            "select b.team, (select 1 from allowed a where a.casualty = b.casualty and a.thumb = @t) from belongs b where b.casualty = @c",
            [("@c", casualty), ("@t", device.Thumb)],
            r => (Team: r.GetString(0), Given: r.Whole(1) is not null),
            cancel
        );
        return found is [var one] && (reach == Reach.All || one.Given || (reach == Reach.Team && one.Team == device.Team));
    }

    /// <summary>The team that a casualty belongs to; where it belonged to none, it is the given one from now on.</summary>
    public async Task<(string Team, bool IsNew)> BelongsAsync(string casualty, string team, CancellationToken cancel = default)
    {
        var added = await rows.RunAsync(
            "insert into belongs (casualty, team) values (@c, @team) on conflict do nothing",
            [("@c", casualty), ("@team", team)],
            cancel
        );
        var found = await rows.ListAsync("select team from belongs where casualty = @c", [("@c", casualty)], r => r.GetString(0), cancel);
        return (found[0], added == 1);
    }

    /// <summary>Gives a casualty to a device. True where it had not been before.</summary>
    public async Task<bool> GiveAsync(string casualty, string thumb, string by, Instant now, CancellationToken cancel = default) =>
        await rows.RunAsync(
            "insert into allowed (casualty, thumb, since, by) values (@c, @t, @now, @by) on conflict do nothing",
            [("@c", casualty), ("@t", thumb), ("@now", now.ToUnixTimeMilliseconds()), ("@by", by)],
            cancel
        ) == 1;

    public async Task<bool> TakeAwayAsync(string casualty, string thumb, CancellationToken cancel = default) =>
        await rows.RunAsync("delete from allowed where casualty = @c and thumb = @t", [("@c", casualty), ("@t", thumb)], cancel) == 1;

    /// <summary>Whether there was such a casualty and it has been erased: whoever knows its id is told so.</summary>
    public async Task<bool> WasErasedAsync(string casualty, CancellationToken cancel = default) =>
        await rows.ListAsync("select at from tombstone where casualty = @c", [("@c", casualty)], r => r.GetInt64(0), cancel) is not [];

    /// <summary>Every casualty with its team, and the devices it was given to.</summary>
    public async Task<ImmutableArray<(string Casualty, string Team, ImmutableHashSet<string> Given)>> CasualtiesAsync(
        CancellationToken cancel = default
    )
    {
        var given = (
            await rows.ListAsync("select casualty, thumb from allowed", [], r => (r.GetString(0), Thumb: r.GetString(1)), cancel)
        ).ToLookup(g => g.Item1, g => g.Thumb);
        return await rows.ListAsync(
            "select casualty, team from belongs order by casualty",
            [],
            r => (r.GetString(0), r.GetString(1), given[r.GetString(0)].ToImmutableHashSet()),
            cancel
        );
    }

    private static async Task<Device?> OneAsync(
        DbConnection connection,
        string where,
        (string Name, object? Value) value,
        CancellationToken cancel
    )
    {
        var found = await connection.ListAsync($"select {DeviceColumns} from device where {where}", [value], Read, cancel);
        return found is [var one] ? one : null;
    }

    private static Device Read(DbDataReader row) =>
        new(
            row.GetString(0),
            row.GetFieldValue<byte[]>(1),
            row.GetString(2),
            row.GetString(3),
            Wire.Parse<HubRole>(row.GetString(4)) ?? HubRole.Carer,
            row.GetString(5),
            Instant.FromUnixTimeMilliseconds(row.GetInt64(6)),
            At(row, 7),
            At(row, 8)
        );

    private static Instant? At(DbDataReader row, int column) =>
        row.Whole(column) is { } milliseconds ? Instant.FromUnixTimeMilliseconds(milliseconds) : null;
}
