using System.Net;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

/// <summary>Documents from the hub; no browser.</summary>
public sealed class DocumentsTests : IAsyncLifetime
{
    private static readonly string[] Lines =
    [
        """{"id":"a7k3-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Runa","sex":"female","ageYears":34}""",
        """{"id":"a7k3-2","happened":"2031-05-04T02:01:00Z","recorded":"2031-05-04T02:01:00Z","by":"Ane","kind":"tourniquet.tightened","tourniquet":"t1","limb":"left-leg"}""",
    ];

    private AppServer server = null!;
    private HttpClient client = null!;

    public async ValueTask InitializeAsync()
    {
        server = await AppServer.StartAsync();
        client = new HttpClient { BaseAddress = new Uri(server.Address) };
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task A_record_comes_back_from_its_fhir_document_line_for_line()
    {
        var document = await PostAsync("/documents/fhir", string.Join('\n', Lines) + "\n");
        Assert.Equal((HttpStatusCode.OK, "application/fhir+json"), (document.StatusCode, document.Content.Headers.ContentType?.MediaType));
        var text = await document.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("\"resourceType\":\"Bundle\"", text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var back = await PostAsync("/documents/record", text);
        Assert.Equal(Lines, (await back.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task The_card_is_a_pdf()
    {
        var card = await PostAsync("/documents/card?paper=a5&zone=Europe/Oslo", string.Join('\n', Lines));
        Assert.Equal("application/pdf", card.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith("%PDF-", System.Text.Encoding.ASCII.GetString(await card.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken), 0, 5), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/documents/fhir", "no record", "record:1:")]
    [InlineData("/documents/record", "{}", "document:1:")]
    [InlineData("/documents/card?paper=a3", "", "paper is a4 or a5")]
    public async Task What_can_not_be_used_is_refused_with_the_reason(string path, string body, string reason)
    {
        var refused = await PostAsync(path, body.Length == 0 ? string.Join('\n', Lines) : body);
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains(reason, await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private Task<HttpResponseMessage> PostAsync(string path, string body) =>
        client.PostAsync(new Uri(path, UriKind.Relative), new StringContent(body), TestContext.Current.CancellationToken);
}
