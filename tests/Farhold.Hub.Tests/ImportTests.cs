using System.Text;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class ImportTests(Browser browser) : PhoneTest(browser)
{
    private const string Opened =
        """{"id":"7k3f-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Tor"}""";

    private const string Seen =
        """{"id":"7k3f-2","happened":"2031-05-04T02:10:00Z","recorded":"2031-05-04T02:14:30Z","by":"Ane","kind":"note","text":"pale"}""";

    [Fact]
    public async Task A_record_file_merges_by_id_and_loses_nothing_not_even_what_cannot_be_read()
    {
        await Page.ReadCautionsAsync();
        byte[] garbage = [0x7B, 0xFF, 0xFE, 0x22];
        await TakeInAsync("a.jsonl", [.. Bytes(Opened, Seen), .. garbage, (byte)'\n']);
        await Assertions
            .Expect(Page.GetByText("Tor: 2 new entries, 0 already here. Kept beside them: 0 in conflict, 1 unreadable."))
            .ToBeVisibleAsync();

        await TakeInAsync("b.jsonl", Bytes(Opened, Seen.Replace("pale", "not pale", StringComparison.Ordinal)));
        await Page.Button("Take these entries in").TapAsync();
        await Assertions
            .Expect(Page.GetByText("Tor: 0 new entries, 1 already here. Kept beside them: 1 in conflict, 0 unreadable."))
            .ToBeVisibleAsync();

        await Page.Link("To Tor").TapAsync();
        await Page.SeeEntriesAsync(4);
        await Page.GoToAsync("Log");
        await Assertions.Expect(Page.GetByText("Conflict: another entry has the same id")).ToHaveCountAsync(2);
        await Page.GoToAsync("Hand over");
        var download = await Page.RunAndWaitForDownloadAsync(() => Page.Button("Save the record file").TapAsync());
        var exported = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.True(exported.AsSpan().IndexOf(garbage) >= 0);
        var text = Encoding.UTF8.GetString(exported);
        Assert.Contains(Seen, text, StringComparison.Ordinal);
        Assert.Contains("not pale", text, StringComparison.Ordinal);
        Assert.StartsWith(Opened + "\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_JSON_is_refused_in_plain_words_with_its_place()
    {
        await Page.ReadCautionsAsync();
        await Page.GotoAsync(Server.Address + "/phone");
        await Page.GetByLabel("Import a local protocol")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "hut.json",
                    MimeType = "application/json",
                    Buffer = "{\n  \"local\": \"hut\" \"title\": 1\n}"u8.ToArray(),
                }
            );
        await Assertions.Expect(Page.GetByText("Line 2, column 18: this is not JSON from here on")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Practice_and_real_records_never_mix()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Doll", practice: true);
        await Page.GoToAsync("Hand over");
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Assertions.Expect(Page.GetByText("That is a real record, this casualty is practice.")).ToBeVisibleAsync();
        await Page.GoToAsync("Now");
        await Page.SeeEntriesAsync(1);
    }

    [Fact]
    public async Task Two_people_are_shown_side_by_side_kept_apart_and_taken_back()
    {
        await Page.ReadCautionsAsync();
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Page.GetByText("Tor: 2 new entries").WaitForAsync();
        await TakeInAsync("b.jsonl", Bytes(Girl));
        await Assertions.Expect(Page.GetByText("Is this the same person?")).ToBeVisibleAsync();
        await Assertions.Expect(Page.Locator(".person")).ToHaveCountAsync(2);
        await PictureAsync("two-people");
        await Page.Button("Same person: Tor").TapAsync();
        await PictureAsync("what-is-taken-in");
        await Page.Button("Take these entries in").TapAsync();
        await Page.Link("To Tor").TapAsync();
        await Assertions.Expect(Page.GetByText("the casualty is described in more than one way").First).ToBeVisibleAsync();
        await PictureAsync("two-descriptions");
        await Page.GoToAsync("Hand over");
        var batch = Page.GetByText("From b.jsonl, imported");
        await batch.WaitForAsync();
        await Page.Button("Take this back out").First.TapAsync();
        await Page.Button("Yes, take all 1 back out").TapAsync();
        await Assertions.Expect(batch).ToHaveCountAsync(0);
        await Page.SeeEntriesAsync(2);
        await Page.GoToAsync("Now");
        await Assertions.Expect(Page.GetByText("described in more than one way")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_line_that_withdraws_ours_is_listed_first_and_waits_to_be_accepted()
    {
        await Page.ReadCautionsAsync();
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Page.GetByText("Tor: 2 new entries").WaitForAsync();
        await TakeInAsync(
            "b.jsonl",
            Bytes(
                Opened,
                """{"id":"zzz-1","happened":"2031-05-04T02:20:00Z","recorded":"2031-05-04T02:20:00Z","by":"Bo","kind":"entry.withdrawn","target":"7k3f-2","reason":"no"}"""
            )
        );
        await Assertions.Expect(Page.GetByText("It withdraws 1 and corrects 0 of the entries on this phone:")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("Withdraws: Note: pale (Bo: no)")).ToBeVisibleAsync();
        await PictureAsync("what-it-unsays");
        await Page.Button("Take these entries in").TapAsync();
        await Page.Link("To Tor").TapAsync();
        await Assertions.Expect(Page.GetByText("nobody has accepted that").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_casualty_is_erased_with_all_that_the_phone_keeps_of_it()
    {
        await Page.ReadCautionsAsync();
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Page.Link("To Tor").TapAsync();
        await Page.LogNoteAsync("One of my own");
        await Page.GoToAsync("Hand over");
        await Page.Link("Erase Tor from this phone").TapAsync();
        await Assertions.Expect(Page.Button("Erase Tor for good")).ToBeDisabledAsync();
        await PictureAsync("erase");
        await Page.GetByRole(AriaRole.Radio, new() { Name = "I want no copy: nothing may be left" }).TapAsync();
        await Page.Button("Erase Tor for good").TapAsync();
        await Page.Heading("Casualties").WaitForAsync();
        var left = await Page.EvaluateAsync<string>(
            """
            async () => {
              const db = await new Promise(done => { indexedDB.open('farhold').onsuccess = e => done(e.target.result); });
              const all = await Promise.all(['lines', 'asides', 'casualties', 'batches'].map(name => new Promise(done => {
                db.transaction(name).objectStore(name).getAll().onsuccess = e => done(e.target.result); })));
              return JSON.stringify(all) + JSON.stringify(localStorage);
            }
            """
        );
        Assert.DoesNotContain("Tor", left, StringComparison.Ordinal);
        Assert.DoesNotContain("pale", left, StringComparison.Ordinal);
        Assert.DoesNotContain("my own", left, StringComparison.Ordinal);
        Assert.StartsWith("[[],[],[],[]]", left, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_is_erased_and_the_phone_is_as_new()
    {
        await Page.ReadCautionsAsync();
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Page.Link("To Tor").WaitForAsync();
        await Page.GotoAsync(Server.Address + "/phone");
        await Page.Button("Erase everything on this phone").TapAsync();
        await Page.GetByRole(AriaRole.Radio, new() { Name = "Every record was handed over or saved, and I checked" }).TapAsync();
        await Page.Button("Erase everything for good").TapAsync();
        await Page.Button("I have read this").WaitForAsync();
        Assert.Equal(Server.Address + "/", Page.Url);
        Assert.Equal(
            0,
            await Page.EvaluateAsync<int>("() => Object.keys(localStorage).filter(k => /carer|cautions|copied|canary/.test(k)).length")
        );
    }

    [Fact(DisableParallelization = true)] // its thousands of pauses for taps each wait their turn behind whatever else runs
    public async Task Twenty_thousand_entries_are_taken_in_looked_at_and_removed()
    {
        await Page.ReadCautionsAsync();
        var text = new StringBuilder(Opened + "\n");
        for (var i = 2; i <= 20_000; i++)
            text.Append(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $$"""{"id":"7k3f-{{i}}","happened":"2031-05-04T02:10:00Z","recorded":"2031-05-04T02:14:30Z","by":"Ane","kind":"note","text":"{{i}}"}"""
                )
                .Append('\n');
        Page.SetDefaultTimeout(400_000); // only a start that never ends fails
        await TakeInAsync("long.jsonl", Encoding.UTF8.GetBytes(text.ToString()));
        await Page.Link("To Tor").TapAsync();
        await Page.SeeEntriesAsync(20000);
        await Page.GoToAsync("Log");
        await Page.GetByText("Note: 20000").WaitForAsync();
        await Page.GoToAsync("Hand over");
        await Page.Button("Take this back out").TapAsync();
        await Page.Button("Yes, take all 20000 back out").TapAsync();
        await Page.Link("All casualties").First.TapAsync();
        await Page.Heading("Casualties").WaitForAsync();
        await Assertions.Expect(Page.Link("Tor")).ToHaveCountAsync(0);
    }

    private const string Girl =
        """{"id":"m2rt-1","happened":"2031-05-04T01:00:00Z","recorded":"2031-05-04T01:00:00Z","by":"Bo","kind":"casualty.opened","alias":"Siri","sex":"female","ageYears":6,"massKg":20,"allergies":["penicillin"]}""";

    private static byte[] Bytes(params string[] lines) => Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")));

    private async Task PictureAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_PICTURES") is { } folder)
            await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"taking-in-{name}.png"), FullPage = true });
    }

    private Task TakeInAsync(string name, byte[] file) =>
        Page.GetByLabel("record file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "application/jsonl",
                    Buffer = file,
                }
            );
}
