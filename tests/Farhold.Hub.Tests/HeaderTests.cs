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
        Assert.DoesNotContain(
            "root:",
            await (await GetAsync(path)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task The_policy_lets_no_inline_code_through_but_the_import_map()
    {
        var policy = Assert.Single((await GetAsync("/")).Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("'unsafe-eval'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self' 'wasm-unsafe-eval' 'sha256-", policy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_environment_names_where_to_listen_and_an_option_goes_before_it()
    {
        Assert.Equal("http://0.0.0.0:81", HubOptions.From(["--app", server.Folder], Named)?.Listen);
        Assert.Equal("http://[::1]:82", HubOptions.From(["--app", server.Folder, "--urls", "http://[::1]:82"], Named)?.Listen);
        Assert.Equal(["a.example", "b.example"], HubOptions.From(["--app", server.Folder, "--host", "b.example"], Named)!.Hosts);

        static string? Named(string name) =>
            name switch
            {
                "FARHOLD_LISTEN" => "http://0.0.0.0:81",
                "FARHOLD_HOSTS" => "a.example",
                _ => null,
            };
    }

    [Theory]
    [InlineData("--color", "80")]
    [InlineData("--port", "0")]
    [InlineData("--port", "65536")]
    [InlineData("--port", "80x")]
    [InlineData("--host", "https://farhold.example")]
    [InlineData("--host", "farhold.example:443")]
    [InlineData("--host", "")]
    public void An_unknown_or_unusable_argument_is_refused(string option, string value) =>
        Assert.Null(HubOptions.From(["--app", server.Folder, option, value], n => n == "FARHOLD_LISTEN" ? "http://[::1]:82" : null));

    [Fact]
    public void A_missing_value_or_an_empty_folder_is_refused()
    {
        Assert.Null(HubOptions.From(["--app"], _ => null));
        Assert.Null(HubOptions.From(["--app", AppContext.BaseDirectory], _ => null));
    }

    /// <summary>What the app's scripts ask of the browser, by the words they ask with.</summary>
    [Theory]
    [InlineData("camera", "getUserMedia")]
    [InlineData("microphone", "audio: true")]
    [InlineData("screen-wake-lock", "wakeLock")]
    [InlineData("web-share", "navigator.share")]
    [InlineData("clipboard-write", "clipboard.write")]
    [InlineData("clipboard-read", "clipboard.read")]
    [InlineData("geolocation", "geolocation")]
    [InlineData("autoplay", "AudioContext")]
    [InlineData("fullscreen", "requestFullscreen")]
    [InlineData("display-capture", "getDisplayMedia")]
    [InlineData("accelerometer", "devicemotion")]
    [InlineData("gyroscope", "deviceorientation")]
    [InlineData("bluetooth", "navigator.bluetooth")]
    [InlineData("publickey-credentials-get", "credentials.get")]
    public void A_permission_is_on_exactly_where_a_script_of_the_app_uses_it(string permission, string word)
    {
        var scripts = Directory.GetFiles(Path.Combine(Published.Root, "src", "Farhold.App", "wwwroot"), "*.js").Select(File.ReadAllText);
        Assert.Equal(scripts.Any(s => s.Contains(word, StringComparison.Ordinal)), SecurityHeaders.Used.Contains(permission));
        Assert.NotEqual(SecurityHeaders.Used.Contains(permission), SecurityHeaders.Unused.Contains(permission));
    }

    private Task<HttpResponseMessage> GetAsync(string path) =>
        client.GetAsync(new Uri(server.Address + path), TestContext.Current.CancellationToken);
}
