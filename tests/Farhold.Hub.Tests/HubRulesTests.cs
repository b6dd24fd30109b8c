using System.Net;
using System.Text;
using Farhold.Documents.Tests.Card;
using Farhold.Hub.Tests.Harness;
using NodaTime;

namespace Farhold.Hub.Tests;

/// <summary>A local protocol that the hub was started with stands over its cards; no browser.</summary>
public sealed class HubRulesTests : IDisposable
{
    private const string Record =
        """{"id":"a7k3-1","happened":"2031-05-04T02:01:00Z","recorded":"2031-05-04T02:01:00Z","by":"Ane","kind":"tourniquet.tightened","tourniquet":"t1","limb":"left-leg"}""";

    private static readonly Instant At = Instant.FromUtc(2031, 5, 4, 2, 1);

    private readonly string folder = Directory.CreateTempSubdirectory("farhold-hub-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task The_card_is_made_by_the_local_protocol()
    {
        var rules = Assert.IsType<Read<HubRules>.Usable>(await OfAsync("""{"limit":"PT5H"}""")).Value;
        var laid = Assert.IsType<Read<Rulebook>.Usable>(rules.At(At)).Value;
        Assert.Equal(Duration.FromHours(5), laid.Protocol.Clock.Limit);
        Assert.Contains("Localprotocol,unsigned", await CardAsync(rules), StringComparison.Ordinal);
        Assert.DoesNotContain("Localprotocol,unsigned", await CardAsync(new HubRules(ShippedRules.Book)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_is_not_usable_is_refused_at_the_start() =>
        Assert.Contains(
            "needs a signature",
            Assert.Single(Assert.IsType<Read<HubRules>.Refused>(await OfAsync("""{"limit":"PT7H"}""")).Refusals).Reason,
            StringComparison.Ordinal
        );

    private async Task<Read<HubRules>> OfAsync(string clock)
    {
        var file = Path.Combine(folder, "hut.json");
        await File.WriteAllTextAsync(
            file,
            $$"""{"local":"hut","version":"1","over":"farhold-base","clock":{{clock}}}""",
            TestContext.Current.CancellationToken
        );
        return await HubRules.OfAsync(ShippedRules.Book, file, [], At);
    }

    /// <summary>The text of the card.</summary>
    private static async Task<string> CardAsync(HubRules rules)
    {
        await using var server = await AppServer.StartAsync(Published.PageOnly(), rules: rules);
        using var client = new HttpClient { BaseAddress = new Uri(server.Address) };
        using var record = new StringContent(Record, Encoding.UTF8, "application/jsonl");
        using var answer = await client.PostAsync("/documents/card", record, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var card = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        await server.StopAsync();
        Directory.Delete(server.Folder, true);
        return Tool.Text(card);
    }
}
