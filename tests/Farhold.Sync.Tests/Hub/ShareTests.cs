using System.Net;
using System.Text;
using System.Text.Json;
using Farhold.Hub.Access;

namespace Farhold.Sync.Tests.Hub;

/// <summary>The link for a receiving clinician, and FHIR behind it.</summary>
public sealed class ShareTests
{
    [Fact]
    public async Task A_link_shows_one_casualty_counts_how_often_and_ends_when_it_is_told_to()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (phone, client) = await DemoAsync(hub);
        using (client)
        using (var web = SignatureTests.Client(hub))
        {
            var signer = await phone.SignerAsync();
            var made = await MadeAsync(web, hub, signer, phone.Casualty, "{\"hours\":2,\"code\":true}");
            var (id, secret, spoken) = (made.Id, made.Secret, made.Spoken!);
            await OpenAsync(web, id, secret, null, HttpStatusCode.Unauthorized);
            await OpenAsync(web, id, secret, "00000", HttpStatusCode.Unauthorized);
            await OpenAsync(web, id, secret + "x", spoken, HttpStatusCode.NotFound);
            await OpenAsync(web, "abcdefghjkmn", secret, spoken, HttpStatusCode.NotFound);
            var page = JsonDocument
                .Parse(await OpenAsync(web, id, secret, spoken, HttpStatusCode.OK))
                .RootElement.GetProperty("html")
                .GetString()!;
            Assert.Contains("read only", page, StringComparison.Ordinal);
            Assert.Contains("No entry is known to be missing.", page, StringComparison.Ordinal);
            Assert.Contains("<svg class=\"lanes\"", page, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
            var listed = JsonDocument
                .Parse(
                    await SignatureTests.OfAsync(
                        web,
                        signer.Request(HttpMethod.Get, $"/hub/casualties/{phone.Casualty}/shares", hub.Port),
                        HttpStatusCode.OK
                    )
                )
                .RootElement[0];
            Assert.Equal(1, listed.GetProperty("opened").GetInt32());
            await SignatureTests.OfAsync(
                web,
                signer.Request(HttpMethod.Delete, $"/hub/casualties/{phone.Casualty}/shares/{id}", hub.Port),
                HttpStatusCode.NoContent
            );
            await OpenAsync(web, id, secret, spoken, HttpStatusCode.NotFound);
        }
    }

    [Fact]
    public async Task Five_wrong_codes_end_a_link()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (phone, client) = await DemoAsync(hub);
        using (client)
        using (var web = SignatureTests.Client(hub))
        {
            var made = await MadeAsync(web, hub, await phone.SignerAsync(), phone.Casualty, "{\"code\":true}");
            for (var i = 0; i < 5; i++)
                await OpenAsync(web, made.Id, made.Secret, "12345", HttpStatusCode.Unauthorized);
            await OpenAsync(web, made.Id, made.Secret, made.Spoken, HttpStatusCode.NotFound);
        }
    }

    [Fact]
    public async Task The_page_itself_holds_nothing_of_any_record_and_the_secret_never_is_in_an_address()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        using var web = SignatureTests.Client(hub);
        var page = await SignatureTests.OfAsync(web, new(HttpMethod.Get, "/hub/link"), HttpStatusCode.OK, "read only");
        Assert.Contains("noindex", page, StringComparison.Ordinal);
        var script = await SignatureTests.OfAsync(web, new(HttpMethod.Get, "/hub/link.js"), HttpStatusCode.OK, "location.hash");
        Assert.Contains("JSON.stringify({ secret", script, StringComparison.Ordinal);
        await SignatureTests.OfAsync(web, new(HttpMethod.Get, "/hub/link.css"), HttpStatusCode.OK);
    }

    [Fact]
    public async Task FHIR_is_read_and_searched_with_the_secret_and_says_what_it_can_do()
    {
        await using var hub = await HubOverLoopback.StartAsync();
        var (phone, client) = await DemoAsync(hub);
        using (client)
        using (var web = SignatureTests.Client(hub))
        {
            var made = await MadeAsync(web, hub, await phone.SignerAsync(), phone.Casualty, "{\"hours\":1}");
            var root = $"/hub/fhir/{made.Id}";
            var statement = JsonDocument.Parse(
                await SignatureTests.OfAsync(web, new(HttpMethod.Get, root + "/metadata"), HttpStatusCode.OK)
            );
            Assert.Equal("4.0.1", statement.RootElement.GetProperty("fhirVersion").GetString());
            var types = statement
                .RootElement.GetProperty("rest")[0]
                .GetProperty("resource")
                .EnumerateArray()
                .Select(r => r.GetProperty("type").GetString()!)
                .ToHashSet();
            await SignatureTests.OfAsync(web, new(HttpMethod.Get, root + "/Patient"), HttpStatusCode.Unauthorized, "OperationOutcome");
            await FhirAsync(web, root + "/Patient", "another", HttpStatusCode.Unauthorized);
            var patients = await FhirAsync(web, root + "/Patient", made.Secret, HttpStatusCode.OK);
            Assert.Equal(1, patients.GetProperty("total").GetInt32());
            var patient = patients.GetProperty("entry")[0].GetProperty("resource").GetProperty("id").GetString()!;
            var read = await FhirAsync(web, $"{root}/Patient/{patient}", made.Secret, HttpStatusCode.OK);
            Assert.Equal("Patient", read.GetProperty("resourceType").GetString());
            var seen = await FhirAsync(web, $"{root}/Observation?patient={patient}", made.Secret, HttpStatusCode.OK);
            Assert.True(seen.GetProperty("total").GetInt32() > 20);
            var first = seen.GetProperty("entry")[0].GetProperty("resource");
            Assert.Equal($"Patient/{patient}", first.GetProperty("subject").GetProperty("reference").GetString());
            Assert.Equal(
                0,
                (await FhirAsync(web, $"{root}/Observation?patient=nobody", made.Secret, HttpStatusCode.OK)).GetProperty("total").GetInt32()
            );
            await FhirAsync(web, $"{root}/Observation?code=1", made.Secret, HttpStatusCode.BadRequest);
            await FhirAsync(web, $"{root}/Observation/none", made.Secret, HttpStatusCode.NotFound);

            // Every resource of the whole demo can be read at the address by which others refer to it.
            foreach (var type in types)
            {
                var all = await FhirAsync(web, $"{root}/{type}", made.Secret, HttpStatusCode.OK);
                Assert.Equal(all.GetProperty("total").GetInt32() > 0, all.TryGetProperty("entry", out _));
            }

            var opener = (Farhold.Hub.Shares.Opener)hub.Services.GetService(typeof(Farhold.Hub.Shares.Opener))!;
            var (shown, _) = await opener.ShownAsync(
                made.Id,
                made.Secret,
                null,
                false,
                SystemClock.Instance.GetCurrentInstant(),
                TestContext.Current.CancellationToken
            );
            var whole = Farhold.Hub.Fhir.FhirRecord.Of(
                Farhold.Documents.Fhir.FhirDocument.Write(shown!.Record, shown.Book, shown.At, TestContext.Current.CancellationToken)
            );
            Assert.All(whole.All, r => Assert.Contains(r.Type, types));
            Assert.All(
                whole.All,
                r =>
                    Assert.DoesNotContain(
                        "urn:uuid:",
                        r
                            .Resource.ToJsonString()
                            .Replace("\"system\":\"urn:ietf:rfc:3986\"", "", StringComparison.Ordinal)
                            .Split("\"identifier\"")[0],
                        StringComparison.Ordinal
                    )
            );
        }
    }

    private static async Task<(PhoneClient Phone, IDisposable Keep)> DemoAsync(HubOverLoopback hub)
    {
        var side = new Side("none") { Hint = Head.Empty };
        foreach (var line in await File.ReadAllLinesAsync(Path.Combine(AppContext.BaseDirectory, "demo", "hollvika.jsonl")))
            side.Lines.Add(Encoding.UTF8.GetBytes(line));
        var phone = new PhoneClient(side, hub);
        await phone.FindAsync();
        Assert.Equal(HttpStatusCode.OK, await phone.SyncAsync());
        return (phone, phone);
    }

    private static async Task<(string Id, string Secret, string? Spoken)> MadeAsync(
        HttpClient web,
        HubOverLoopback hub,
        Signer by,
        string casualty,
        string wanted
    )
    {
        var made = JsonDocument
            .Parse(
                await SignatureTests.OfAsync(
                    web,
                    by.Request(HttpMethod.Post, $"/hub/casualties/{casualty}/shares", hub.Port, wanted),
                    HttpStatusCode.Created
                )
            )
            .RootElement;
        var link = made.GetProperty("link").GetString()!;
        Assert.StartsWith("/hub/link#", link, StringComparison.Ordinal);
        var parts = link["/hub/link#".Length..].Split('.');
        return (parts[0], parts[1], made.GetProperty("code").GetString());
    }

    private static async Task<string> OpenAsync(HttpClient web, string id, string secret, string? code, HttpStatusCode status)
    {
        using var body = new StringContent(
            JsonSerializer.Serialize(
                new
                {
                    secret,
                    code = code ?? "",
                    zone = "Europe/Oslo",
                }
            ),
            Encoding.UTF8,
            "application/json"
        );
        return await SignatureTests.OfAsync(web, new(HttpMethod.Post, $"/hub/shares/{id}/open") { Content = body }, status);
    }

    private static async Task<JsonElement> FhirAsync(HttpClient web, string path, string secret, HttpStatusCode status)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Authorization = new("Bearer", secret);
        return JsonDocument.Parse(await SignatureTests.OfAsync(web, request, status)).RootElement;
    }
}
