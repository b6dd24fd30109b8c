using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class StoringTests(Browser browser) : PhoneTest(browser)
{
    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
    }

    [Fact]
    public async Task A_reload_keeps_every_entry_and_goes_back_to_the_open_casualty()
    {
        await Page.LogNoteAsync("One");
        await Page.LogNoteAsync("Two");
        await Page.GotoAsync(Server.Address);
        await Page.SeeEntriesAsync(3);
        await Page.GoToAsync("Log");
        await Assertions.Expect(Page.GetByText("Note: Two")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Undo_withdraws_the_entry_and_keeps_it_in_sight()
    {
        await Page.WriteNoteAsync("Wrong casualty");
        await Page.Button("Undo").TapAsync();
        await Page.SeeEntriesAsync(3);
        await Page.GoToAsync("Log");
        var struck = Page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Note: Wrong casualty" });
        await Assertions.Expect(struck).ToContainTextAsync("Withdrawn");
    }

    [Fact]
    public async Task Full_storage_shows_the_entry_and_confirms_nothing_then_takes_it_once_there_is_room()
    {
        Expect("QuotaExceeded");
        var quota = await FillAsync();
        await Page.WriteNoteAsync("Must not get lost");

        var alarm = Page.GetByRole(AriaRole.Alert, new() { Name = "NOT SAFELY STORED" });
        await Assertions.Expect(alarm).ToContainTextAsync("Must not get lost");
        await Assertions.Expect(alarm).ToContainTextAsync("storage is full");
        await Assertions.Expect(Page.GetByText("Logged:")).ToHaveCountAsync(0);
        await Page.SeeEntriesAsync(1);

        await quota.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = Server.Address });
        await Page.Button("Try again").TapAsync();
        await Assertions.Expect(alarm).ToHaveCountAsync(0);
        await Page.SeeEntriesAsync(2);
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(2);
    }

    [Fact]
    public async Task What_could_not_be_stored_is_taken_up_at_the_next_start_exactly_once()
    {
        Expect("QuotaExceeded");
        var quota = await FillAsync();
        await Page.WriteNoteAsync("Rescued");
        await Page.GetByRole(AriaRole.Alert, new() { Name = "NOT SAFELY STORED" }).WaitForAsync();
        await quota.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = Server.Address });

        // As if the phone had died between storing the line and forgetting the rescue.
        var rescue = await Page.EvaluateAsync<string>(
            "() => JSON.stringify(Object.entries(localStorage).find(([k]) => k.startsWith('farhold-rescue-')))"
        );
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(2);
        await Page.EvaluateAsync("text => localStorage.setItem(...JSON.parse(text))", rescue);
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(2);
        Assert.Equal(
            0,
            await Page.EvaluateAsync<int>("() => Object.keys(localStorage).filter(k => k.startsWith('farhold-rescue-')).length")
        );
    }

    [Fact]
    public async Task Two_tabs_on_one_casualty_share_one_row_of_numbers()
    {
        var address = Page.Url;
        var second = await NewTabAsync();
        await second.GotoAsync(address);
        var mark = second.GetByRole(AriaRole.Button, new() { NameRegex = new("Also open in another tab") });
        await Assertions.Expect(mark).ToBeVisibleAsync();
        await mark.TapAsync();
        await Assertions.Expect(second.GetByText("Also open in another tab")).ToBeVisibleAsync();
        await second.Button("Close").TapAsync();

        const string burst = """
            async name => {
              const store = await import('/store.js');
              const casualty = location.pathname.split('/')[2];
              const device = await store.device();
              const numbers = [];
              for (let i = 0; i < 25; i++)
                numbers.push(JSON.parse(await store.append(casualty, device, JSON.stringify({ kind: 'note', text: name + i }))).number);
              return numbers;
            }
            """;
        var both = await Task.WhenAll(Page.EvaluateAsync<int[]>(burst, "first "), second.EvaluateAsync<int[]>(burst, "second "));
        Assert.Equal(Enumerable.Range(2, 50), both.SelectMany(n => n).Order());

        // The burst went past the second tab's own screen, which hears only of other tabs.
        await second.ReloadAsync();
        await second.LogNoteAsync("Seen in both");
        await second.SeeEntriesAsync(52);
        await Page.SeeEntriesAsync(52);
        await Page.CloseAsync();
        await Assertions.Expect(mark).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_clock_set_back_is_told_of_and_numbers_and_entries_go_on()
    {
        await Page.ReloadAsync();
        await Page.SeeEntriesAsync(1);
        await Page.GoToAsync("Log"); // what is due three hours on may shake a phone only once it was touched
        await Page.EvaluateAsync("() => { const real = Date.now; Date.now = () => real() + 3 * 3600e3; }");
        await Page.LogNoteAsync("Clock three hours ahead");
        await Assertions.Expect(Page.GetByText("This phone's clock is")).ToHaveCountAsync(0);

        await Page.ReloadAsync();
        await Assertions.Expect(Page.GetByText("This phone's clock is")).ToBeVisibleAsync();
        await Page.LogNoteAsync("Clock right again");
        await Page.SeeEntriesAsync(3);
        var ids = await Page.EvaluateAsync<string[]>(
            """
            async () => {
              const store = await import('/store.js');
              return (await store.lines(location.pathname.split('/')[2])).split('\n').slice(0, -1).map(l => JSON.parse(l).id.split('-').pop());
            }
            """
        );
        Assert.Equal(["1", "2", "3"], ids);
    }

    [Fact]
    public async Task A_record_that_became_shorter_is_told_of()
    {
        await Page.LogNoteAsync("Soon cleared");
        await Page.EvaluateAsync(
            """
            () => new Promise((done, failed) => {
              const open = indexedDB.open('farhold');
              open.onsuccess = () => {
                const tx = open.result.transaction('lines', 'readwrite');
                tx.objectStore('lines').openCursor(null, 'prev').onsuccess = e => e.target.result.delete();
                tx.oncomplete = () => { open.result.close(); done(); };
                tx.onabort = () => failed(tx.error);
              };
            })
            """
        );
        await Page.Link("All casualties").TapAsync();
        await Assertions.Expect(Page.GetByText("Tor: 1 of at least 2 entries are left.")).ToBeVisibleAsync();
    }

    /// <summary>Leaves no room on the phone, and waits until the browser itself notices (it remembers room it once saw).</summary>
    private async Task<ICDPSession> FillAsync()
    {
        var quota = await Phone.NewCDPSessionAsync(Page);
        await quota.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = Server.Address, ["quotaSize"] = 1 });
        await Page.EvaluateAsync(
            """
            async () => {
              const db = await new Promise((done, failed) => {
                const open = indexedDB.open('filler', 1);
                open.onupgradeneeded = () => open.result.createObjectStore('x', { autoIncrement: true });
                open.onsuccess = () => done(open.result);
                open.onerror = () => done(null);
              });
              const fits = () => new Promise(done => {
                const tx = db.transaction('x', 'readwrite');
                tx.objectStore('x').add('x'.repeat(100_000));
                tx.oncomplete = () => done(true);
                tx.onabort = () => done(false);
              });
              while (db && await fits());
              db?.close();
            }
            """
        );
        return quota;
    }
}
