using System.Net;
using System.Text;
using System.Threading.RateLimiting;
using Farhold.Hub.Tests.Harness;
using Microsoft.Extensions.DependencyInjection;

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

    private DocumentDesk Desk => server.Services.GetRequiredService<DocumentDesk>();

    public async ValueTask InitializeAsync()
    {
        server = await AppServer.StartAsync(Published.PageOnly());
        client = new HttpClient { BaseAddress = new Uri(server.Address) };
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await server.DisposeAsync();
        Directory.Delete(server.Folder, true);
    }

    [Fact]
    public async Task A_record_comes_back_from_its_fhir_document_line_for_line()
    {
        var document = await PostAsync("/documents/fhir", string.Join('\n', Lines) + "\n");
        Assert.Equal((HttpStatusCode.OK, "application/fhir+json"), (document.StatusCode, document.Content.Headers.ContentType?.MediaType));
        var text = await document.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("\"resourceType\":\"Bundle\"", text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var back = await PostAsync("/documents/record", text);
        Assert.Equal(
            Lines,
            (await back.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries)
        );
    }

    [Fact]
    public async Task The_card_is_a_pdf()
    {
        var card = await PostAsync("/documents/card?paper=a5&zone=Europe/Oslo", string.Join('\n', Lines));
        Assert.Equal("application/pdf", card.Content.Headers.ContentType?.MediaType);
        Assert.StartsWith("%PDF-", await TextAsync(card), StringComparison.Ordinal);
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

    [Theory]
    [InlineData("/documents/fhir")]
    [InlineData("/documents/record")]
    [InlineData("/documents/card")]
    public async Task No_document_and_no_refusal_is_kept_anywhere(string path)
    {
        Assert.Equal("no-store", (await PostAsync(path, Line)).Headers.CacheControl?.ToString());
        Assert.Equal("no-store", (await PostAsync(path, "no record")).Headers.CacheControl?.ToString());
    }

    [Theory]
    [InlineData(1, false, false)]
    [InlineData(1, true, false)]
    [InlineData(1, false, true)]
    [InlineData(Documents.MostSentBytes - Documents.LargestBytes, false, false)]
    public async Task A_body_above_four_mebibytes_is_refused_in_one_line(int above, bool inPieces, bool asksFirst)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/documents/fhir");
        request.Content = new StringContent(new string(' ', Documents.LargestBytes + above), Encoding.UTF8, "application/jsonl");
        (request.Headers.TransferEncodingChunked, request.Headers.ExpectContinue) = (inPieces, asksFirst);
        var refused = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, refused.StatusCode);
        Assert.Equal("Too large: at most 4194304 bytes.\n", await TextAsync(refused));
    }

    [Theory]
    [InlineData("/documents/fhir")]
    [InlineData("/documents/card")]
    public async Task A_record_of_too_many_entries_is_refused_before_it_is_read(string path)
    {
        var refused = await PostAsync(path, string.Concat(Enumerable.Repeat("x\n", Documents.MostEntries + 1)));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Equal("record:5001:1: a record of 5001 lines; documents are made of at most 5000\n", await TextAsync(refused));
    }

    [Fact]
    public async Task Two_documents_are_made_at_a_time_and_the_next_one_waits_for_a_place()
    {
        var places = await TakePlacesAsync();
        var third = PostAsync("/documents/fhir", Line);
        await WaitingAsync(1);
        Assert.False(third.IsCompleted);
        places[0].Dispose();
        Assert.Equal(HttpStatusCode.OK, (await third).StatusCode);
        places[1].Dispose();
    }

    [Fact]
    public async Task A_client_that_leaves_gives_up_its_place_in_the_queue()
    {
        var places = await TakePlacesAsync();
        using var leaving = new CancellationTokenSource();
        var third = PostAsync("/documents/fhir", Line, leaving.Token);
        await WaitingAsync(1);
        await leaving.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => third);
        await WaitingAsync(0);
        Array.ForEach(places, p => p.Dispose());
        Assert.Equal(HttpStatusCode.OK, (await PostAsync("/documents/fhir", Line)).StatusCode);
    }

    [Fact]
    public async Task Who_finds_the_queue_full_is_asked_to_come_back()
    {
        var places = await TakePlacesAsync();
        var waiting = Enumerable.Range(0, DocumentDesk.MostWaiting).Select(_ => PostAsync("/documents/fhir", Line)).ToArray();
        await WaitingAsync(DocumentDesk.MostWaiting);
        var refused = await PostAsync("/documents/fhir", Line);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        Assert.NotNull(refused.Headers.RetryAfter);
        Array.ForEach(places, p => p.Dispose());
        Assert.All(await Task.WhenAll(waiting), answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
    }

    private static string Line => string.Join('\n', Lines) + "\n";

    private async Task<RateLimitLease[]> TakePlacesAsync()
    {
        var places = new RateLimitLease[DocumentDesk.Places];
        for (var i = 0; i < places.Length; i++)
            Assert.True((places[i] = await Desk.Queue.AcquireAsync(1, TestContext.Current.CancellationToken)).IsAcquired);
        return places;
    }

    private async Task WaitingAsync(int count)
    {
        while (Desk.Queue.GetStatistics()!.CurrentQueuedCount != count)
            await Task.Delay(10, TestContext.Current.CancellationToken);
    }

    private static Task<string> TextAsync(HttpResponseMessage answer) =>
        answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private Task<HttpResponseMessage> PostAsync(string path, string body, CancellationToken? leaving = null) =>
        client.PostAsync(
            new Uri(path, UriKind.Relative),
            new StringContent(body, Encoding.UTF8, path == "/documents/record" ? "application/fhir+json" : "application/jsonl"),
            leaving ?? TestContext.Current.CancellationToken
        );
}
