using System.IO.Compression;
using System.Security.Cryptography;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>What a phone does when the address it got the app from offers something else.</summary>
public sealed class TrustTests : PhoneTest
{
    private const string Foreign = "isn't signed by the people whose app this is";

    private readonly ECDsa own = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly ECDsa other = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly string folder = Published.Copy();

    public TrustTests(Browser browser)
        : base(browser) => NewerBuild.Sign(folder, own);

    protected override string Folder => folder;

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(folder, true);
        own.Dispose();
        other.Dispose();
    }

    [Fact]
    public async Task A_newer_build_of_the_same_people_is_offered_as_ever()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        NewerBuild.Deploy(folder, "newer", own);
        await UpdateTests.FetchAsync(Page, "newer");
        await Page.ReloadAsync();
        await Page.Button("Start the newer build").TapAsync();
        await Page.WaitForFunctionAsync("() => document.querySelector('meta[name=build]') !== null");
        Assert.Equal(("newer", "newer"), await UpdateTests.BuildAsync(Page));
        await Assertions.Expect(Page.GetByText(Foreign)).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_build_of_nobody_or_of_others_is_never_started_and_one_line_says_so(bool signed)
    {
        Expect("ServiceWorker");
        Expect("not signed by a key");
        Expect("ERR_CONNECTION_REFUSED");
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.KeepOfflineAsync();
        NewerBuild.Deploy(folder, "evil", signed ? [other] : []);
        await UpdateAsync();
        await Page.Link("All casualties").TapAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Alert).GetByText(Foreign)).ToBeVisibleAsync();
        await Assertions.Expect(Page.Button("Start the newer build")).ToHaveCountAsync(0);
        Assert.False(await Page.EvaluateAsync<bool>("() => caches.has('farhold-files-evil')"));

        await Server.StopAsync();
        Expect($"net::ERR_FAILED {Server.Address}/service-worker"); // the start asks what is offered
        await Page.ReloadAsync();
        await Page.Link("Tor").TapAsync();
        await Page.SeeEntriesAsync(1);
        Assert.Equal(("", ""), await UpdateTests.BuildAsync(Page));
    }

    /// <summary>The worker of others takes over at once, as a browser lets it; the page that is still open says so.</summary>
    [Fact]
    public async Task Another_service_worker_under_a_true_list_is_said()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        NewerBuild.Change(folder, "service-worker.js", _ => "self.addEventListener('install', () => self.skipWaiting());");
        await UpdateAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Alert).GetByText(Foreign)).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Keys_follow_one_another_only_where_a_known_one_says_so()
    {
        Expect("ServiceWorker");
        Expect("not signed by a key");
        using var next = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        NewerBuild.Deploy(folder, "both", own, next);
        NewerBuild.SignBeside(folder, other); // a true list with a stranger's signature beside it makes no friend of the stranger
        await UpdateTests.FetchAsync(Page, "both");
        NewerBuild.Deploy(folder, "next", next);
        await UpdateTests.FetchAsync(Page, "next");
        NewerBuild.Deploy(folder, "evil", other, own);
        await UpdateAsync();
        await Page.ReloadAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Alert).GetByText(Foreign)).ToBeVisibleAsync();
        Assert.Equal(
            "next",
            await Page.EvaluateAsync<string>("() => caches.open('farhold-serving').then(c => c.match('latest')).then(r => r.text())")
        );
    }

    [Fact]
    public async Task The_check_of_the_copy_asks_for_the_signature_and_shows_the_keys()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        await Page.Link("This phone").TapAsync();
        await Page.Button("Check the offline copy").TapAsync();
        await Assertions.Expect(Page.GetByText("files checked, signed. Fingerprint of the keys:")).ToBeVisibleAsync();

        await Page.EvaluateAsync(
            """
            async () => {
              const name = (await caches.keys()).find(k => k.startsWith('farhold-files-'));
              await (await caches.open(name)).put('farhold-signatures.json', new Response('[]'));
            }
            """
        );
        await Page.Button("Check the offline copy").TapAsync();
        await Assertions.Expect(Page.GetByText("Damaged: 1 files.")).ToBeVisibleAsync();
    }

    /// <summary>A browser takes the compressed one, and both the worker it then runs and the list are judged by the plain one.</summary>
    [Fact]
    public void What_is_served_compressed_is_the_file_itself()
    {
        var differing = Directory
            .EnumerateFiles(Published.Folder, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".br" or ".gz")
            .Where(f => !Unpacked(f).SequenceEqual(File.ReadAllBytes(Path.ChangeExtension(f, null))));
        Assert.Empty(differing);
    }

    private static byte[] Unpacked(string file)
    {
        using var packed = File.OpenRead(file);
        using Stream unpacking =
            Path.GetExtension(file) == ".br"
                ? new BrotliStream(packed, CompressionMode.Decompress)
                : new GZipStream(packed, CompressionMode.Decompress);
        using var unpacked = new MemoryStream();
        unpacking.CopyTo(unpacked);
        return unpacked.ToArray();
    }

    /// <summary>As a browser does on its own at a visit; what is refused is refused by then.</summary>
    /// <summary>
    /// Asks until another worker is found: the page may be asking as the files change, and the browser answers both with what the page
    /// found before.
    /// </summary>
    private Task<System.Text.Json.JsonElement?> UpdateAsync() =>
        Page.EvaluateAsync(
            """
            async () => {
              const registration = await navigator.serviceWorker.getRegistration();
              let worker;
              registration.addEventListener('updatefound', () => worker ??= registration.installing);
              for (let i = 0; !worker && i < 100; i++) {
                await registration.update().catch(() => { });
                await new Promise(done => setTimeout(done, 50));
              }
              if (worker.state === 'installing') await new Promise(done => worker.addEventListener('statechange', done, { once: true }));
            }
            """
        );
}
