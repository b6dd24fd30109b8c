using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public sealed class UpdateTests(Browser browser) : PhoneTest(browser)
{
    private readonly string folder = Published.Copy();

    protected override string Folder => folder;

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(folder, true);
    }

    [Fact]
    public async Task A_newer_build_waits_for_the_carers_tap_and_is_never_mixed_with_the_old_one()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        await Page.OpenCasualtyAsync("Tor");
        NewerBuild.Deploy(folder, "newer");
        await FetchAsync(Page, "newer");

        // With the casualty open: reloading, closing and starting again all keep the old build, whole.
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(1);
        Assert.Equal(("", ""), await BuildAsync(Page));
        await Page.CloseAsync();
        var page = await NewTabAsync();
        await page.GotoAsync(Server.Address);
        await page.SeeEntriesAsync(1);
        Assert.Equal(("", ""), await BuildAsync(page));
        await page.LogNoteAsync("Still the old build");

        await page.Link("All casualties").TapAsync();
        await page.Heading("A newer build is ready").WaitForAsync();
        Assert.Equal(("", ""), await BuildAsync(page));
        await page.Button("Start the newer build").TapAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('meta[name=build]') !== null");
        await page.Link("Tor").TapAsync();
        await page.SeeEntriesAsync(2);
        Assert.Equal(("newer", "newer"), await BuildAsync(page));

        await Server.StopAsync();
        Expect("ERR_CONNECTION_REFUSED");
        await page.ReloadAsync();
        await page.SeeEntriesAsync(2);
        Assert.Equal(("newer", "newer"), await BuildAsync(page));
    }

    [Fact]
    public async Task A_newer_build_is_not_started_while_another_tab_is_open()
    {
        await Page.ReadCautionsAsync();
        await Page.KeepOfflineAsync();
        NewerBuild.Deploy(folder, "newer");
        await FetchAsync(Page, "newer");
        var second = await NewTabAsync();
        await second.GotoAsync(Server.Address);
        await Assertions.Expect(second.GetByText("once the other tabs of this app are closed")).ToBeVisibleAsync();
        await Assertions.Expect(second.Button("Start the newer build")).ToHaveCountAsync(0);
        await Page.CloseAsync();
        await second.ReloadAsync();
        await second.Button("Start the newer build").WaitForAsync();
    }

    /// <summary>
    /// Asks for the newer build until it is here whole: the page may itself be asking while the build is put down, meets a list half
    /// written, and the browser then refuses whoever asks in that moment.
    /// </summary>
    internal static Task FetchAsync(IPage page, string version) =>
        page.WaitForPromisedAsync(
            """
            async version => {
              const registration = await navigator.serviceWorker.getRegistration();
              await registration.update().catch(() => { });
              const latest = await (await caches.open('farhold-serving')).match('latest');
              return await latest?.text() === version;
            }
            """,
            version
        );

    internal static async Task<(string Page, string Style)> BuildAsync(IPage page)
    {
        var both = await page.EvaluateAsync<string[]>(
            """
            () => [document.querySelector('meta[name=build]')?.content ?? '',
                   getComputedStyle(document.documentElement).getPropertyValue('--build').replaceAll('"', '').trim()]
            """
        );
        return (both[0], both[1]);
    }
}
