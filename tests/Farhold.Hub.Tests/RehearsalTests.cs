using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>A rehearsal on the phone from its start to its debrief, with the model and the storage of a real browser.</summary>
public class RehearsalTests(Browser browser) : PhoneTest(browser)
{
    /// <summary>All that is kept of real casualties. What crosses, by design, is one line for each rehearsal that ended.</summary>
    private const string Real = """
        async () => {
          const crosses = key => key.startsWith('farhold-practice-') || key === 'farhold-rehearsals';
          // What the phone says of now, and what each start of the app lays out anew for the first taps of the next.
          const passing = key => key === 'farhold-battery' || key.startsWith('farhold-first-taps');
          const settings = Object.keys(localStorage).filter(k => !crosses(k) && !passing(k)).sort().map(k => [k, localStorage[k]]);
          const database = await new Promise(done => { indexedDB.open('farhold').onsuccess = e => done(e.target.result); });
          const stores = [];
          for (const name of [...database.objectStoreNames].sort())
            stores.push([name, await new Promise(done => {
              database.transaction(name).objectStore(name).getAll().onsuccess = e => done(e.target.result);
            })]);
          database.close();
          return JSON.stringify([settings, stores]);
        }
        """;

    [Fact]
    public async Task Nothing_real_is_touched_from_the_start_of_a_rehearsal_to_its_end()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        await Page.Link("All casualties").First.TapAsync();
        await Page.Heading("Casualties").WaitForAsync();
        var before = await Page.EvaluateAsync<string>(Real);
        Assert.Contains("tourniquet", before, StringComparison.Ordinal);

        await BeginAsync();
        await LookAsync();
        var noticed = await Page.Locator(".noticed").InnerTextAsync();
        Assert.Contains("pulse", noticed, StringComparison.OrdinalIgnoreCase);
        await LaidOutAsync("rehearsal");
        await Page.Button("To the next thing").TapAsync();
        await Page.GoToInnerAsync("now");
        await Page.TightenAsync();
        await PracticeAsync();
        await LaidOutAsync("now");

        // The same truth, made anew from what was done.
        await Page.ReloadAsync();
        await PracticeAsync();
        await Page.GoToInnerAsync("rehearsal");
        await Assertions.Expect(Page.Locator(".noticed")).ToContainTextAsync("Pulse", new() { IgnoreCase = true });

        await EndAsync();
        await Page.Button("PRACTICE: once more").WaitForAsync();
        await LaidOutAsync("debrief");
        await Page.Button("End the rehearsal").TapAsync();
        await Page.WaitForFunctionAsync(
            "() => sessionStorage.getItem('farhold-rehearsing') === null && document.querySelector('#app h1') !== null"
        );

        Assert.Equal(before, await Page.EvaluateAsync<string>(Real));
        Assert.DoesNotContain(
            "farhold-practice",
            await Page.EvaluateAsync<string>("async () => (await indexedDB.databases()).map(d => d.name).join(' ')"),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "",
            await Page.EvaluateAsync<string>("() => Object.keys(localStorage).filter(k => k.startsWith('farhold-practice-')).join(' ')")
        );
    }

    /// <summary>The hashes were made on x64; here the same code runs in the browser's WebAssembly.</summary>
    [Fact]
    public async Task The_browser_works_the_model_out_to_the_bit()
    {
        await Page.ReadCautionsAsync();
        await Page.ShowOuterAsync("how-far");
        await Page.Button("Check this phone").TapAsync();
        await Page.GetByText("1 of 8 courses worked out").WaitForAsync();
        await Assertions
            .Expect(Page.Locator(".bit-check [role=status]"))
            .ToHaveTextAsync("All 8 courses agree to the last bit.", new() { Timeout = 10 * Browser.PatienceMs });
    }

    private async Task BeginAsync()
    {
        await Page.Link("Rehearse").TapAsync();
        await Page.GetByText("The quarry road").TapAsync();
        await Page.Button("PRACTICE: start").TapAsync();
        await PracticeAsync();
        await Page.Locator("main a.button.act").First.TapAsync();
        await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>Counts a pulse, at the quarter of an hour a minute.</summary>
    private async Task LookAsync()
    {
        await Page.GetByRole(AriaRole.Link, new() { NameRegex = new("^PRACTICE: look") }).First.TapAsync();
        await Page.Button("Count the pulse").TapAsync();
        await Page.Button("15×").TapAsync();
        await Assertions.Expect(Page.Locator(".noticed")).ToContainTextAsync("Pulse", new() { IgnoreCase = true });
    }

    private async Task EndAsync()
    {
        await Page.Button("End the rehearsal").TapAsync();
        await Page.Button("End, to the debrief").TapAsync();
        await Page.Button("What the run says").TapAsync();
    }

    /// <summary>No place of <see cref="EveryPlaceTests"/> rehearses: the frame and the word in the head leave less room.</summary>
    private async Task LaidOutAsync(string place)
    {
        foreach (var width in (int[])[320, 360])
        {
            await Page.SetViewportSizeAsync(width, 640);
            await Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
            Assert.Equal([], (await Page.LayoutFaultsAsync()).Select(f => $"{place} at {width}: {f}"));
        }

        await Page.SetViewportSizeAsync(360, 740);
    }

    private async Task PracticeAsync()
    {
        await Page.Locator("html[data-practice] #app h1").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await Assertions.Expect(Page.GetByText("PRACTICE").First).ToBeVisibleAsync();
    }
}
