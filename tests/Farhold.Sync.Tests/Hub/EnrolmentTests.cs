using System.Net;
using System.Text.Json;
using Farhold.Hub.Access;

namespace Farhold.Sync.Tests.Hub;

/// <summary>Devices let in and out.</summary>
public sealed class EnrolmentTests
{
    [Fact]
    public async Task A_code_lets_one_device_in_once_however_it_is_typed()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        var code = await hub.InviteAsync();
        using var first = new Signer();
        using var second = new Signer();
        var typed = string.Join('-', code.Chunk(4).Select(c => new string(c))).ToUpperInvariant();
        using (var answer = await first.EnrolAsync(client, hub.Port, typed, "a7k3"))
            Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        using (var again = await second.EnrolAsync(client, hub.Port, code, "n95q2x"))
            Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);
        using (var guessed = await second.EnrolAsync(client, hub.Port, "abcd-efgh-jkmn", "n95q2x"))
            Assert.Equal(HttpStatusCode.NotFound, guessed.StatusCode);
    }

    [Fact]
    public async Task Nobody_enrols_a_key_of_somebody_else_nor_under_an_id_that_is_taken()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var held = await hub.EnrolAsync(device: "a7k3");
        using var other = new Signer();
        using (var taken = await other.EnrolAsync(client, hub.Port, await hub.InviteAsync(), "a7k3"))
            Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        var json = JsonSerializer.Serialize(
            new
            {
                code = await hub.InviteAsync(),
                key = Convert.ToBase64String(held.Public),
                device = "n95q2x",
                name = "",
            }
        );
        await SignatureTests.OfAsync(
            client,
            other.Request(HttpMethod.Post, "/hub/devices", hub.Port, json),
            HttpStatusCode.Unauthorized,
            "not signed by the key"
        );
        await SignatureTests.OfAsync(
            client,
            other.Request(HttpMethod.Post, "/hub/devices", hub.Port, "{\"code\":\"x\",\"key\":\"AAAA\",\"device\":\"a b\"}"),
            HttpStatusCode.BadRequest,
            "body:1:"
        );
    }

    [Fact]
    public async Task Until_somebody_has_compared_the_digits_a_device_can_do_nothing_and_once_out_never_again()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var coordinator = await hub.EnrolAsync(HubRole.Coordinator);
        using var phone = await hub.EnrolAsync(beforehand: false);
        const string Roots = "{\"lines\":[\"0000000000000000000000000000000000000000000000000000000000000000\"]}";
        await SignatureTests.OfAsync(
            client,
            phone.Request(HttpMethod.Post, "/hub/casualties/find", hub.Port, Roots),
            HttpStatusCode.Forbidden,
            "unconfirmed"
        );
        var me = await SignatureTests.OfAsync(client, phone.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.OK);
        var digits = JsonDocument.Parse(me).RootElement.GetProperty("digits").GetString()!;
        Assert.Matches("^[0-9]{3} [0-9]{3}$", digits);
        var listed = await SignatureTests.OfAsync(client, coordinator.Request(HttpMethod.Get, "/hub/devices", hub.Port), HttpStatusCode.OK);
        Assert.Contains(digits, listed, StringComparison.Ordinal); // the same on both screens
        await SignatureTests.OfAsync(
            client,
            coordinator.Request(HttpMethod.Post, $"/hub/devices/{phone.Thumb}/confirm", hub.Port, "{}"),
            HttpStatusCode.NoContent
        );
        await SignatureTests.OfAsync(
            client,
            phone.Request(HttpMethod.Post, "/hub/casualties/find", hub.Port, Roots),
            HttpStatusCode.OK,
            "\"opened\":true"
        );
        await SignatureTests.OfAsync(
            client,
            coordinator.Request(HttpMethod.Post, $"/hub/devices/{phone.Thumb}/revoke", hub.Port, "{}"),
            HttpStatusCode.NoContent
        );
        await SignatureTests.OfAsync(client, phone.Request(HttpMethod.Get, "/hub/me", hub.Port), HttpStatusCode.Forbidden, "revoked");
        using var back = await phone.EnrolAsync(client, hub.Port, await hub.InviteAsync(), "x9");
        Assert.Equal(HttpStatusCode.Forbidden, back.StatusCode);
    }

    [Fact]
    public async Task An_invitation_that_has_ended_lets_nobody_in()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var access = (AccessStore)hub.Services.GetService(typeof(AccessStore))!;
        var past = SystemClock.Instance.GetCurrentInstant() - Duration.FromMinutes(1);
        var code = await access.InviteAsync(
            new(HubRole.Carer, "watch", "", past, true),
            "console",
            past,
            TestContext.Current.CancellationToken
        );
        using var client = SignatureTests.Client(hub);
        using var late = new Signer();
        using var answer = await late.EnrolAsync(client, hub.Port, code, "late");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_coordinator_invites_carers_and_advisers_of_its_team_and_nobody_above()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var coordinator = await hub.EnrolAsync(HubRole.Coordinator, "north");
        using var carer = await hub.EnrolAsync(HubRole.Carer, "north");
        foreach (
            var (role, status) in new[]
            {
                ("carer", HttpStatusCode.Created),
                ("adviser", HttpStatusCode.Created),
                ("owner", HttpStatusCode.Forbidden),
                ("coordinator", HttpStatusCode.Forbidden),
            }
        )
            await SignatureTests.OfAsync(
                client,
                coordinator.Request(HttpMethod.Post, "/hub/invitations", hub.Port, $"{{\"role\":\"{role}\",\"team\":\"south\"}}"),
                status
            );
        await SignatureTests.OfAsync(
            client,
            carer.Request(HttpMethod.Post, "/hub/invitations", hub.Port, "{\"role\":\"carer\"}"),
            HttpStatusCode.Forbidden,
            "not-this-role"
        );
        await SignatureTests.OfAsync(
            client,
            coordinator.Request(HttpMethod.Post, "/hub/invitations", hub.Port, "{\"role\":\"adviser\",\"beforehand\":true}"),
            HttpStatusCode.BadRequest,
            "only a carer"
        );
    }

    [Fact]
    public async Task The_trail_says_who_did_what_and_a_changed_row_breaks_it()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var owner = await hub.EnrolAsync(HubRole.Owner);
        using var phone = await hub.EnrolAsync();
        await SignatureTests.OfAsync(
            client,
            owner.Request(HttpMethod.Post, $"/hub/devices/{phone.Thumb}/revoke", hub.Port, "{}"),
            HttpStatusCode.NoContent
        );
        var trail = (AuditTrail)hub.Services.GetService(typeof(AuditTrail))!;
        var rows = await trail.LatestAsync(10, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(["device.revoked", "device.enrolled", "device.enrolled"], rows.Select(r => r.What));
        Assert.Equal(owner.Thumb, rows[0].Who);
        Assert.Null(await trail.BrokenAtAsync(TestContext.Current.CancellationToken));
        var data = (System.Data.Common.DbDataSource)hub.Services.GetService(typeof(System.Data.Common.DbDataSource))!;
        await using (var connection = await data.OpenConnectionAsync(TestContext.Current.CancellationToken))
        await using (var command = connection.CreateCommand())
        {
            command.CommandText = "update audit set about = 'nobody' where position = 2";
            await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }

        Assert.Equal(2, await trail.BrokenAtAsync(TestContext.Current.CancellationToken));
    }
}
