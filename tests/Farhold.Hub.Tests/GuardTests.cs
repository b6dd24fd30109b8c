using System.Net;
using System.Text;
using Farhold.Hub.Tests.Harness;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.Hub.Tests;

/// <summary>Who may ask the hub, and what it lets out when it refuses or fails; no browser.</summary>
public sealed class GuardTests : IAsyncLifetime
{
    private const string Fhir = "application/fhir+json";

    private const string Secret = "Runa, left leg, at the hut";

    private const string Line = """
        {"id":"a7k3-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"note","text":"Runa"}
        """;

    private AppServer server = null!;
    private HttpClient client = null!;

    public async ValueTask InitializeAsync()
    {
        server = await AppServer.StartAsync(Published.PageOnly(), Failing);
        client = new HttpClient { BaseAddress = new Uri(server.Address) };
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await server.DisposeAsync();
        Directory.Delete(server.Folder, true);
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("farhold.example.evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("10.0.0.1")]
    [InlineData("localhost.")]
    public async Task A_name_it_was_not_started_for_is_refused_on_every_route(string host)
    {
        foreach (var (method, path) in Routes())
            await RefusedAsync(HttpStatusCode.MisdirectedRequest, await SendAsync(method, path, r => r.Headers.Host = host));
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("[::1]")]
    [InlineData("farhold.example")]
    [InlineData("FARHOLD.example:443")]
    public async Task The_names_of_this_machine_and_those_it_was_given_are_answered(string host) =>
        Assert.Equal(HttpStatusCode.OK, (await SendAsync(HttpMethod.Get, "/", r => r.Headers.Host = host)).StatusCode);

    [Theory]
    [InlineData("https://evil.example")]
    [InlineData("http://127.0.0.1")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("http://localhost:0")]
    [InlineData("null")]
    [InlineData("")]
    public async Task A_page_of_another_origin_is_refused_on_every_route(string origin)
    {
        foreach (var (method, path) in Routes())
            await RefusedAsync(
                HttpStatusCode.Forbidden,
                await SendAsync(method, path, r => r.Headers.TryAddWithoutValidation("Origin", origin))
            );
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData(null, "own")]
    [InlineData("farhold.example", "https://farhold.example")]
    public async Task A_page_of_its_own_and_a_program_without_origin_are_answered(string? host, string? origin) =>
        Assert.Equal(
            HttpStatusCode.OK,
            (
                await SendAsync(
                    HttpMethod.Post,
                    "/documents/fhir",
                    r =>
                    {
                        r.Headers.Host = host;
                        if (origin is not null)
                            r.Headers.Add("Origin", origin == "own" ? server.Address : origin);
                    }
                )
            ).StatusCode
        );

    [Theory]
    [InlineData(null)]
    [InlineData("text/plain")]
    [InlineData("application/json")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    [InlineData("application/jsonl; charset=utf-16")]
    [InlineData("application/jsonl; boundary=x")]
    [InlineData("text/plain; application/jsonl")]
    [InlineData("application/jsonl, text/plain")]
    public async Task What_is_sent_as_something_else_is_refused(string? type)
    {
        foreach (var path in new[] { "/documents/fhir", "/documents/card", "/documents/record" })
            await RefusedAsync(
                HttpStatusCode.UnsupportedMediaType,
                await SendAsync(
                    HttpMethod.Post,
                    path,
                    r =>
                    {
                        r.Content!.Headers.Remove("Content-Type");
                        if (type is not null)
                            Assert.True(r.Content.Headers.TryAddWithoutValidation("Content-Type", type));
                    }
                )
            );
    }

    [Fact]
    public void Every_route_that_takes_something_says_of_what_type()
    {
        var takers = server
            .Services.GetServices<EndpointDataSource>()
            .SelectMany(s => s.Endpoints)
            .Where(e => e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Except(["GET", "HEAD"]).Any() ?? true)
            .ToArray();
        Assert.Equal(3, takers.Length);
        Assert.All(takers, e => Assert.NotNull(e.Metadata.GetMetadata<Takes>()));
    }

    [Theory(DisableParallelization = true)] // the environment is the whole process's
    [InlineData("Production")]
    [InlineData("Development")]
    public async Task A_failure_is_one_line_in_every_environment(string environment)
    {
        Environment.SetEnvironmentVariable("ASPNETCORE_ENVIRONMENT", environment);
        await using var other = await AppServer.StartAsync(server.Folder, Failing);
        Environment.SetEnvironmentVariable("ASPNETCORE_ENVIRONMENT", null);
        var failed = await client.GetAsync(new Uri(other.Address + "/fails"), TestContext.Current.CancellationToken);
        Assert.Equal("The hub failed at this. Nothing of it was kept.\n", await RefusedAsync(HttpStatusCode.InternalServerError, failed));
    }

    [Theory]
    [InlineData("GET", "/")]
    [InlineData("GET", "/no-such-file.js")]
    [InlineData("GET", "/fails")]
    [InlineData("POST", "/documents/fhir")]
    [InlineData("DELETE", "/documents/fhir")]
    public async Task Every_answer_has_the_headers_that_keep_others_out(string method, string path)
    {
        var answer = await SendAsync(new(method), path, _ => { });
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Resource-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Contains("default-src 'self'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Contains("microphone=()", Assert.Single(answer.Headers.GetValues("Permissions-Policy")), StringComparison.Ordinal);
        Assert.False(answer.Headers.Contains("Server"));
        Assert.DoesNotContain("*", answer.Headers.TryGetValues("Access-Control-Allow-Origin", out var open) ? open : []);
    }

    /// <summary>Every route that works: pages, files, documents.</summary>
    private static IEnumerable<(HttpMethod Method, string Path)> Routes() =>
        [
            (HttpMethod.Get, "/"),
            (HttpMethod.Get, "/index.html"),
            (HttpMethod.Head, "/"),
            (HttpMethod.Get, "/fails"),
            (HttpMethod.Post, "/documents/fhir"),
            (HttpMethod.Post, "/documents/record"),
            (HttpMethod.Post, "/documents/card"),
        ];

    private static void Failing(WebApplication app) => app.MapGet("/fails", IResult () => throw new InvalidOperationException(Secret));

    private Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, Action<HttpRequestMessage> with)
    {
        var request = new HttpRequestMessage(method, path);
        if (method == HttpMethod.Post)
            request.Content = new StringContent(Line, Encoding.UTF8, path == "/documents/record" ? Fhir : "application/jsonl");
        with(request);
        return client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static async Task<string> RefusedAsync(HttpStatusCode status, HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("text/plain", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("no-store", answer.Headers.CacheControl?.ToString());
        if (answer.RequestMessage!.Method == HttpMethod.Head)
            return text;
        Assert.Equal(1, text.Count(c => c == '\n'));
        Assert.EndsWith("\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain(Secret, text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        return text;
    }
}
