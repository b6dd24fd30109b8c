using System.Net;
using System.Text;
using System.Text.Json;
using Farhold.Hub.Access;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Farhold.Sync.Tests.Hub;

/// <summary>Every route of the hub, for every role, with a casualty of its own and a foreign one: made from the list of routes itself.</summary>
public sealed class RightsTests
{
    [Fact]
    public async Task Every_route_says_who_may_ask_it()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var routes = Routes(hub);
        Assert.True(routes.Count > 15, $"{routes.Count} routes");
        Assert.All(
            routes,
            r =>
                Assert.True(
                    (r.Metadata.GetMetadata<Needs>() is null) != (r.Metadata.GetMetadata<OpenTo>() is null),
                    $"{r.DisplayName} says neither what it needs nor why it is open, or both"
                )
        );
        Assert.All(
            routes.Where(r => r.Metadata.GetMetadata<OpenTo>() is not null),
            r => Assert.NotEmpty(r.Metadata.GetMetadata<OpenTo>()!.Why)
        );
    }

    [Fact]
    public async Task Nobody_reaches_a_route_unsigned_and_no_role_a_casualty_that_is_not_its_own()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var foreign = await hub.EnrolAsync(HubRole.Carer, "south");
        var casualty = await FindAsync(client, hub, foreign, 1);
        foreach (var role in Enum.GetValues<HubRole>())
        {
            using var device = await hub.EnrolAsync(role, "north");
            foreach (var route in Routes(hub).Where(r => r.Metadata.GetMetadata<Needs>() is not null))
            {
                var (method, path) = Address(route, casualty, foreign.Thumb);
                using (var unsigned = new HttpRequestMessage(method, path))
                {
                    if (method != HttpMethod.Get && method != HttpMethod.Delete)
                        unsigned.Content = Body(route);
                    using var answer = await client.SendAsync(unsigned, TestContext.Current.CancellationToken);
                    Assert.True(answer.StatusCode == HttpStatusCode.Unauthorized, $"{path} unsigned: {answer.StatusCode}");
                }

                if (!path.Contains(casualty, StringComparison.Ordinal))
                    continue;
                using var request = Signed(device, route, method, path, hub.Port);
                using var refused = await client.SendAsync(request, TestContext.Current.CancellationToken);
                var text = await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
                var may = Rights.Of(role, route.Metadata.GetMetadata<Needs>()!.Act) == Reach.All;
                Assert.True(
                    may || refused.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Forbidden,
                    $"{role} {method} {path}: {refused.StatusCode} {text}"
                );
                Assert.DoesNotContain("calm", text, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task A_casualty_is_seen_by_who_brought_it_by_its_teams_coordinator_and_by_whom_it_was_given_until_it_is_taken_away()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var client = SignatureTests.Client(hub);
        using var carer = await hub.EnrolAsync(HubRole.Carer, "north");
        using var coordinator = await hub.EnrolAsync(HubRole.Coordinator, "north");
        using var adviser = await hub.EnrolAsync(HubRole.Adviser, "north");
        using var elsewhere = await hub.EnrolAsync(HubRole.Coordinator, "south");
        using var owner = await hub.EnrolAsync(HubRole.Owner, "north");
        var casualty = await FindAsync(client, hub, carer, 1);
        async Task<bool> SeesAsync(Signer who) =>
            (await SignatureTests.OfAsync(client, who.Request(HttpMethod.Get, "/hub/casualties", hub.Port), HttpStatusCode.OK)).Contains(
                casualty,
                StringComparison.Ordinal
            );
        Assert.True(await SeesAsync(carer));
        Assert.True(await SeesAsync(coordinator));
        Assert.False(await SeesAsync(adviser));
        Assert.False(await SeesAsync(elsewhere));
        await SignatureTests.OfAsync(client, owner.Request(HttpMethod.Get, "/hub/casualties", hub.Port), HttpStatusCode.Forbidden);
        await SignatureTests.OfAsync(
            client,
            coordinator.Request(HttpMethod.Post, $"/hub/casualties/{casualty}/given/{adviser.Thumb}", hub.Port, "{}"),
            HttpStatusCode.NoContent
        );
        Assert.True(await SeesAsync(adviser));
        await SignatureTests.OfAsync(
            client,
            coordinator.Request(HttpMethod.Delete, $"/hub/casualties/{casualty}/given/{adviser.Thumb}", hub.Port),
            HttpStatusCode.NoContent
        );
        Assert.False(await SeesAsync(adviser)); // from the next request on

        // Another team's phone that knows the root is told no, and the casualty stays where it is.
        using var guest = await hub.EnrolAsync(HubRole.Carer, "south");
        await SignatureTests.OfAsync(
            client,
            guest.Request(HttpMethod.Post, "/hub/casualties/find", hub.Port, Roots(1)),
            HttpStatusCode.Forbidden,
            "other-team"
        );
    }

    [Theory]
    [InlineData(HubRole.Owner, Act.Read, Reach.None)]
    [InlineData(HubRole.Owner, Act.Sync, Reach.None)]
    [InlineData(HubRole.Carer, Act.Invite, Reach.None)]
    [InlineData(HubRole.Adviser, Act.Share, Reach.None)]
    [InlineData(HubRole.Instructor, Act.Sync, Reach.None)]
    [InlineData(HubRole.Coordinator, Act.Watch, Reach.Team)]
    [InlineData(HubRole.Carer, Act.Share, Reach.Own)]
    [InlineData(HubRole.Owner, Act.Revoke, Reach.All)]
    internal void A_role_may_do_what_its_row_says(HubRole role, Act act, Reach reach) => Assert.Equal(reach, Rights.Of(role, act));

    internal static string Roots(int seed) => $"{{\"lines\":[\"{seed:x64}\"]}}";

    internal static async Task<string> FindAsync(HttpClient client, HubOverLoopback hub, Signer by, int seed)
    {
        var found = await SignatureTests.OfAsync(
            client,
            by.Request(HttpMethod.Post, "/hub/casualties/find", hub.Port, Roots(seed)),
            HttpStatusCode.OK
        );
        return JsonDocument.Parse(found).RootElement.GetProperty("id").GetString()!;
    }

    private static List<RouteEndpoint> Routes(HubOverLoopback hub) =>
        [
            .. ((IEnumerable<EndpointDataSource>)hub.Services.GetService(typeof(IEnumerable<EndpointDataSource>))!)
                .SelectMany(s => s.Endpoints)
                .OfType<RouteEndpoint>()
                .Where(r => r.RoutePattern.RawText!.StartsWith("/hub", StringComparison.Ordinal)),
        ];

    private static (HttpMethod Method, string Path) Address(RouteEndpoint route, string casualty, string thumb) =>
        (
            HttpMethod.Parse(route.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods[0]),
            route
                .RoutePattern.RawText!.Replace("{id}", casualty, StringComparison.Ordinal)
                .Replace("{thumb}", thumb, StringComparison.Ordinal)
                .Replace("{share}", "abcd", StringComparison.Ordinal)
        );

    private static ByteArrayContent Body(RouteEndpoint route)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(IsLines(route) ? "{\"sync\":1,\"have\":{}}\n" : "{}"));
        content.Headers.ContentType = new(IsLines(route) ? "application/jsonl" : "application/json");
        return content;
    }

    private static bool IsLines(RouteEndpoint route) => route.RoutePattern.RawText!.EndsWith("/sync", StringComparison.Ordinal);

    private static HttpRequestMessage Signed(Signer by, RouteEndpoint route, HttpMethod method, string path, int port)
    {
        if (!IsLines(route))
            return by.Request(method, path, port, method == HttpMethod.Post ? "{}" : null);
        var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = Body(route) };
        by.Sign(request, port, Signer.HeadOf("{\"sync\":1,\"have\":{}}\n"u8));
        return request;
    }
}
