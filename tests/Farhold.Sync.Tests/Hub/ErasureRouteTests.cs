using System.Net;
using Farhold.Hub.Access;

namespace Farhold.Sync.Tests.Hub;

/// <summary>A casualty erased by two people; and what says whether the hub can work.</summary>
public sealed class ErasureRouteTests
{
    [Fact]
    public async Task It_takes_two_people_and_one_of_them_an_owner()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var carer = await hub.EnrolAsync();
        using var first = await hub.EnrolAsync(HubRole.Coordinator);
        using var second = await hub.EnrolAsync(HubRole.Coordinator);
        using var owner = await hub.EnrolAsync(HubRole.Owner, "office");
        var casualty = await RightsTests.FindAsync(client, hub, carer, 7);
        async Task AskAsync(Signer by, HttpStatusCode status, string says, string body = "{\"reason\":\"asked for by the person\"}") =>
            await SignatureTests.OfAsync(
                client,
                by.Request(HttpMethod.Post, $"/hub/casualties/{casualty}/erase", hub.Port, body),
                status,
                says
            );

        await AskAsync(carer, HttpStatusCode.Forbidden, "not-this-role");
        await AskAsync(first, HttpStatusCode.BadRequest, "reason", "{}");
        await AskAsync(first, HttpStatusCode.Accepted, "second person");
        await AskAsync(first, HttpStatusCode.Accepted, "second person"); // the same person twice is one person
        await AskAsync(second, HttpStatusCode.Forbidden, "owner");
        await AskAsync(owner, HttpStatusCode.OK, "true");
        await SignatureTests.OfAsync(
            client,
            carer.Request(HttpMethod.Post, "/hub/casualties/find", hub.Port, RightsTests.Roots(7)),
            HttpStatusCode.Gone
        );
        var trail = (AuditTrail)hub.Services.GetService(typeof(AuditTrail))!;
        var rows = await trail.LatestAsync(3, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(["casualty.erased", "erasure.asked", "erasure.asked"], rows.Select(r => r.What));
        Assert.Null(await trail.BrokenAtAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Whether_it_lives_is_told_to_everybody_and_whether_it_works_to_this_machine()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        await SignatureTests.OfAsync(client, new(HttpMethod.Get, "/hub/alive"), HttpStatusCode.OK, "alive");
        await SignatureTests.OfAsync(client, new(HttpMethod.Get, "/hub/ready"), HttpStatusCode.OK, "ready");
        await SignatureTests.OfAsync(client, new(HttpMethod.Get, "/hub/alive?x=1"), HttpStatusCode.BadRequest);
    }
}
