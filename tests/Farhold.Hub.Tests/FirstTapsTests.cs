using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>What the page logs before the app is up.</summary>
public class FirstTapsTests(Browser browser) : PhoneTest(browser)
{
    private const string Kept = "() => localStorage.getItem('farhold-first-taps')?.includes('\"t1\"')";

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await Page.ReadCautionsAsync();
        await Page.GetByLabel("record file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "tor.jsonl",
                    MimeType = "application/jsonl",
                    Buffer = Harness.RecordFile.Ready("aaaa", "Tor").Bytes,
                }
            );
        await Page.Link("To Tor").TapAsync();
        await Page.SeeEntriesAsync(11);
        await Page.WaitForFunctionAsync(Kept);
    }

    [Fact]
    public async Task Without_the_runtime_a_fact_is_on_disk_before_it_is_confirmed_and_can_be_taken_back()
    {
        await StopTheRuntimeAsync();
        await SayAsync("Bleeding now?", "Bleeding");
        await Assertions.Expect(Page.GetByText("Stop it now: tighten until bleeding and the pulse below it stop.")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("The verdict above does not know this yet.")).ToBeVisibleAsync();
        Assert.Contains("\"kind\":\"bleeding.checked\"", (await LinesAsync())[^1], StringComparison.Ordinal);

        await Page.WaitForTimeoutAsync(600);
        await SayAsync("Note", "Called for help");
        await Assertions.Expect(Page.GetByText(new Regex(@"^Saved at \d\d:\d\d: Note: Called for help$"))).ToBeVisibleAsync();
        await Page.Button("Undo").First.TapAsync();
        await Assertions.Expect(Page.GetByText("Taken back: Note: Called for help")).ToBeVisibleAsync();
        Assert.Contains("\"kind\":\"entry.withdrawn\"", (await LinesAsync())[^1], StringComparison.Ordinal);

        await Page.UnrouteAllAsync();
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(14);
        await Page.GoToAsync("Log");
        var struck = Page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Note: Called for help" });
        await Assertions.Expect(struck).ToContainTextAsync("Withdrawn");
    }

    [Fact]
    public async Task A_new_name_is_given_away_once()
    {
        await StopTheRuntimeAsync();
        // This phone did not open the record, so it marks the names that it gives away.
        await SayAsync("Tourniquet tightened", new Regex(@"^Tightened \(t2-\w+\)$"), "right arm");
        await Page.GetByText("Tourniquet tightened", new() { Exact = true }).TapAsync();
        await Assertions.Expect(Page.Button("t1 tightened again")).ToBeVisibleAsync();
        await Assertions.Expect(Page.Locator("#first-taps button").Filter(new() { HasText = "t2-" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_fact_that_could_not_be_stored_is_said_aloud_and_comes_at_the_next_start()
    {
        Expect("QuotaExceeded");
        await StopTheRuntimeAsync();
        await Page.EvaluateAsync(
            "() => { const real = IDBObjectStore.prototype.add; window.room = () => { IDBObjectStore.prototype.add = real; }; "
                + "IDBObjectStore.prototype.add = () => { throw new DOMException('', 'QuotaExceededError'); }; }"
        );
        await SayAsync("Bleeding now?", "Oozing");
        await Assertions.Expect(Page.GetByText("NOT SAVED: Wound w1 looked at: oozing.")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("tried again at the next start")).ToBeVisibleAsync();
        await Page.UnrouteAllAsync();
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(12);
    }

    [Fact]
    public async Task The_app_takes_in_what_was_logged_while_it_started()
    {
        await Page.RouteAsync(
            "**/_framework/Farhold.Core.*",
            async route =>
            {
                await Task.Delay(3000);
                await route.ContinueAsync();
            }
        );
        await Page.EvaluateAsync(
            "() => navigator.serviceWorker.getRegistration().then(r => r?.unregister()).then(() => caches.keys()).then(k => "
                + "Promise.all(k.map(n => caches.delete(n)))).then(() => null)"
        );
        await Page.ReloadAsync();
        await SayAsync("Bleeding now?", "Oozing");
        await Page.SeeEntriesAsync(12);
        await Assertions.Expect(Page.GetByText("Log it now")).ToHaveCountAsync(0);
        await Page.Button("Note").Last.TapAsync();
        await Page.Button("Called for help").TapAsync();
        await Page.SeeEntriesAsync(13);
    }

    [Fact]
    public async Task The_app_takes_the_place_only_when_the_choice_is_made()
    {
        await StopTheRuntimeAsync();
        // The app shows its first place the moment after a choice was opened. In one go: an open choice is waited for 10 s only.
        var held = await Page.EvaluateAsync<bool>(
            """
            async () => {
              const named = (kind, text) => [...document.querySelectorAll('#starting ' + kind)].find(e => e.textContent === text);
              const summary = named('summary', 'Bleeding now?');
              summary.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
              summary.click();
              const app = document.getElementById('app');
              app.innerHTML = '<main><h1 tabindex="-1">Now</h1></main>';
              await new Promise(done => setTimeout(done, 1000));
              const held = app.inert && Boolean(named('button', 'Go on in the app'));
              named('button', 'Oozing').click();
              return held;
            }
            """
        );
        Assert.True(held);
        await Assertions.Expect(Page.GetByText("Log it now")).ToHaveCountAsync(0);
        await Assertions.Expect(Page.Locator("#app[inert]")).ToHaveCountAsync(0);
        await Assertions.Expect(Page.Heading("Now")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Every_choice_is_big_and_axe_finds_no_fault()
    {
        await StopTheRuntimeAsync();
        foreach (var choice in await Page.Locator("#first-taps summary").AllAsync())
            await choice.TapAsync();
        await Page.NoAxeFaultAsync("first taps");
        var small = await Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, summary')].filter(e => e.checkVisibility())
              .map(e => [e.textContent, e.getBoundingClientRect()]).filter(([, r]) => r.width < 56 || r.height < 56).map(([t, r]) => `${t} ${r.width} x ${r.height}`)
            """
        );
        Assert.Empty(small);
        await Page.SetViewportSizeAsync(180, 370);
        Assert.Empty(
            await Page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('#starting *')].filter(e => e.checkVisibility() && "
                    + "e.getBoundingClientRect().right > innerWidth + 1).map(e => e.outerHTML.slice(0, 90))"
            )
        );
    }

    private async Task StopTheRuntimeAsync()
    {
        Expect("ERR_FAILED");
        Expect("dotnet");
        Expect("Failed to fetch");
        Expect("WebAssembly");
        await Page.EvaluateAsync("() => navigator.serviceWorker.getRegistration().then(r => r?.unregister()).then(() => null)");
        await Page.RouteAsync("**/_framework/**", route => route.AbortAsync());
        await Page.ReloadAsync();
        await Page.Heading("Log it now").WaitForAsync();
    }

    private Task SayAsync(string title, string option) => SayAsync(title, new Regex($"^{Regex.Escape(option)}$"), null);

    private async Task SayAsync(string title, Regex option, string? of)
    {
        await Page.GetByText(title, new() { Exact = true }).TapAsync();
        var within = of is null ? Page.Locator("#first-taps") : Page.GetByRole(AriaRole.Group, new() { Name = of });
        await within.GetByRole(AriaRole.Button, new() { NameRegex = option }).First.TapAsync();
        await Assertions.Expect(Page.GetByText(new Regex(@"Saved at \d|NOT SAVED")).First).ToBeVisibleAsync();
    }

    /// <summary>What this phone has added to the record, as it is on disk.</summary>
    private Task<string[]> LinesAsync() =>
        Page.EvaluateAsync<string[]>(
            """
            () => new Promise(done => { indexedDB.open('farhold').onsuccess = e =>
              e.target.result.transaction('lines').objectStore('lines').getAll().onsuccess = r => done(r.target.result.filter(line => !line.startsWith('{"id":"aaaa-'))); })
            """
        );
}
