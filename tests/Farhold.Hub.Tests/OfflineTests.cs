using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class OfflineTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task From_the_second_start_the_app_needs_no_server_and_still_takes_entries()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.KeepOfflineAsync();
        await Server.StopAsync();
        Expect("ERR_CONNECTION_REFUSED");

        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(1);
        await Page.LogNoteAsync("Written with no network at all");
        await Page.CloseAsync();

        var again = await NewTabAsync();
        await again.GotoAsync(Server.Address);
        await again.SeeEntriesAsync(2);
    }

    [Theory]
    [InlineData("Promise.reject(new TypeError('refused by policy'))")]
    [InlineData("Promise.resolve(undefined)")]
    [InlineData("new Promise(() => {})")]
    public async Task A_browser_that_takes_no_copy_still_runs_the_app_and_says_so(string answer)
    {
        await Page.Button("I have read this").WaitForAsync();
        var page = await Phone.NewPatientPageAsync();
        await page.AddInitScriptAsync(
            $"navigator.serviceWorker.register = () => {answer}; navigator.serviceWorker.getRegistration = () => Promise.resolve(undefined)"
        );
        await page.GotoAsync(Server.Address);
        await page.ReadCautionsAsync();
        await page.OpenCasualtyAsync("Tor");
        if (answer.StartsWith("new ", StringComparison.Ordinal))
            return; // nothing can be said before the browser has answered
        await page.Link("All casualties").TapAsync();
        await page.Link("This phone").TapAsync();
        await Assertions.Expect(page.GetByText("It needs network at every start.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task From_the_second_start_assemblies_come_straight_from_the_copy()
    {
        const string fetched =
            "() => performance.getEntriesByType('resource').map(e => e.name).filter(n => n.includes('_framework/assemblies.'))";
        await Page.Button("I have read this").WaitForAsync();
        Assert.NotEmpty(await Page.EvaluateAsync<string[]>(fetched));
        await Page.KeepOfflineAsync();
        await Page.ReloadAsync();
        await Page.Button("I have read this").WaitForAsync();
        Assert.Empty(await Page.EvaluateAsync<string[]>(fetched));
    }

    [Fact]
    public async Task The_offline_copy_can_be_checked_and_damage_is_named()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        await Page.Link("This phone").TapAsync();
        await Page.Button("Check the offline copy").TapAsync();
        await Assertions.Expect(Page.GetByText("Whole:")).ToBeVisibleAsync();

        await Page.EvaluateAsync(
            """
            async () => {
              const name = (await caches.keys()).find(k => k.startsWith('farhold-files-'));
              await (await caches.open(name)).put('app.css', new Response('body { display: none }'));
            }
            """
        );
        await Page.Button("Check the offline copy").TapAsync();
        await Assertions.Expect(Page.GetByText("Damaged: 1 files.")).ToContainTextAsync("app.css");
    }

    [Fact]
    public async Task Every_published_file_is_in_the_offline_copy()
    {
        await Page.KeepOfflineAsync();
        var kept = await Page.EvaluateAsync<string[]>(
            """
            async () => {
              const name = (await caches.keys()).find(k => k.startsWith('farhold-files-'));
              return (await (await caches.open(name)).keys()).map(r => new URL(r.url).pathname.slice(1));
            }
            """
        );
        var manifest = await File.ReadAllTextAsync(Path.Combine(Folder, "service-worker-assets.js"), TestContext.Current.CancellationToken);
        var published = Directory
            .EnumerateFiles(Folder, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/'))
            .Where(f => !f.EndsWith(".br", StringComparison.Ordinal) && !f.EndsWith(".gz", StringComparison.Ordinal))
            .Where(f => !f.StartsWith("service-worker", StringComparison.Ordinal))
            .Where(f => !f.EndsWith("/LICENSE.txt", StringComparison.Ordinal)) // no page asks for it
            // An earlier build's fingerprinted files may still lie in the folder; no page asks for them.
            .Where(f => !f.StartsWith("_framework/", StringComparison.Ordinal) || manifest.Contains($"\"{f}\"", StringComparison.Ordinal));
        Assert.Empty(published.Except(kept));
    }

    [Fact]
    public async Task A_half_finished_deployment_leaves_no_copy_behind()
    {
        await Page.CloseAsync();
        var broken = Published.Copy();
        await File.AppendAllTextAsync(
            Path.Combine(broken, "app.css"),
            "/* not what the manifest says */",
            TestContext.Current.CancellationToken
        );
        File.Delete(Path.Combine(broken, "app.css.br"));
        File.Delete(Path.Combine(broken, "app.css.gz"));
        await using var server = await AppServer.StartAsync(broken);
        Expect("integrity");
        Expect("Failed to fetch");
        Expect("ServiceWorker");

        var page = await NewTabAsync();
        await page.GotoAsync(server.Address);
        await page.Button("I have read this").WaitForAsync();
        var left = await page.EvaluateAsync<string[]>(
            """
            async () => {
              const { installing } = await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
              if (installing && installing.state !== 'redundant')
                await new Promise(done => installing.addEventListener('statechange', done, { once: true }));
              const served = await (await caches.open('farhold-serving')).keys();
              return [installing?.state ?? 'redundant', ...(await caches.keys()).filter(k => k !== 'farhold-serving'), ...served.map(r => r.url)];
            }
            """
        );
        Assert.Equal(["redundant"], left);
        await page.CloseAsync();
        Directory.Delete(broken, true);
    }
}
