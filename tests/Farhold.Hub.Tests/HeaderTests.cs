using System.Net;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests;

public sealed class HeaderTests : IAsyncLifetime
{
    private AppServer server = null!;
    private HttpClient client = null!;

    public async ValueTask InitializeAsync()
    {
        server = await AppServer.StartAsync();
        client = new HttpClient { BaseAddress = new Uri(server.Address) };
        client.DefaultRequestHeaders.AcceptEncoding.ParseAdd("br");
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await server.DisposeAsync();
    }

    [Theory]
    [InlineData("/service-worker.js")]
    [InlineData("/service-worker-assets.js")]
    [InlineData("/index.html")]
    [InlineData("/store.js")]
    public async Task What_can_change_under_its_name_is_asked_for_again(string path) =>
        Assert.Equal("no-cache", (await GetAsync(path)).Headers.CacheControl?.ToString());

    [Fact]
    public async Task What_carries_its_hash_in_its_name_is_kept_for_good()
    {
        var file = Directory.EnumerateFiles(server.Folder, "dotnet.native.*.wasm", SearchOption.AllDirectories).First();
        var answer = await GetAsync("/_framework/" + Path.GetFileName(file));
        Assert.Contains("immutable", answer.Headers.CacheControl?.ToString(), StringComparison.Ordinal);
        Assert.Equal("application/wasm", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("br", Assert.Single(answer.Content.Headers.ContentEncoding));
    }

    [Fact]
    public async Task Every_place_of_the_app_is_its_page_and_a_missing_file_is_missing()
    {
        Assert.Equal("text/html", (await GetAsync("/casualty/c1/now")).Content.Headers.ContentType?.MediaType);
        Assert.Equal(HttpStatusCode.NotFound, (await GetAsync("/_framework/no.wasm")).StatusCode);
    }

    [Theory]
    [InlineData("/..%2f..%2f..%2f..%2f..%2f..%2fetc%2fpasswd")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd")]
    public async Task Nothing_outside_the_folder_is_served(string path) =>
        Assert.DoesNotContain("root:", await (await GetAsync(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);

    [Fact]
    public async Task The_policy_lets_no_inline_code_through_but_the_import_map()
    {
        var policy = Assert.Single((await GetAsync("/")).Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("'unsafe-eval'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self' 'wasm-unsafe-eval' 'sha256-", policy, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_an_address_only_this_machine_is_served()
    {
        Assert.Equal("http://127.0.0.1:5080", HubOptions.From(["--app", server.Folder], _ => null)?.Listen);
        Assert.Equal("http://0.0.0.0:81", HubOptions.From(["--app", server.Folder], _ => "http://0.0.0.0:81")?.Listen);
        Assert.Equal("http://[::1]:82", HubOptions.From(["--app", server.Folder, "--urls", "http://[::1]:82"], _ => "http://0.0.0.0:81")?.Listen);
    }

    [Fact]
    public void An_unknown_argument_or_an_empty_folder_is_refused()
    {
        Assert.Null(HubOptions.From(["--port", "80"], _ => null));
        Assert.Null(HubOptions.From(["--app"], _ => null));
        Assert.Null(HubOptions.From(["--app", AppContext.BaseDirectory], _ => null));
    }

    private Task<HttpResponseMessage> GetAsync(string path) => client.GetAsync(new Uri(server.Address + path), TestContext.Current.CancellationToken);
}
