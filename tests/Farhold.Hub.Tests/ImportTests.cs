using System.Text;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class ImportTests(Browser browser) : PhoneTest(browser)
{
    private const string Opened =
        """{"id":"7k3f-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Tor"}""";

    private const string Seen = """{"id":"7k3f-2","happened":"2031-05-04T02:10:00Z","recorded":"2031-05-04T02:14:30Z","by":"Ane","kind":"note","text":"pale"}""";

    [Fact]
    public async Task A_record_file_merges_by_id_and_loses_nothing_not_even_what_cannot_be_read()
    {
        await Page.ReadCautionsAsync();
        byte[] garbage = [0x7B, 0xFF, 0xFE, 0x22];
        await TakeInAsync("a.jsonl", [.. Bytes(Opened, Seen), .. garbage, (byte)'\n']);
        await Assertions.Expect(Page.GetByText("Tor: 2 new entries, 0 already here. Kept beside them: 0 in conflict, 1 unreadable.")).ToBeVisibleAsync();

        await TakeInAsync("b.jsonl", Bytes(Opened, Seen.Replace("pale", "not pale", StringComparison.Ordinal)));
        await Assertions.Expect(Page.GetByText("Tor: 0 new entries, 1 already here. Kept beside them: 1 in conflict, 0 unreadable.")).ToBeVisibleAsync();

        await Page.Link("Tor").TapAsync();
        await Page.SeeEntriesAsync(4);
        await Page.GoToAsync("Log");
        await Assertions.Expect(Page.GetByText("Conflict: another entry has the same id")).ToHaveCountAsync(2);
        await Page.GoToAsync("Hand-over");
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
        await Page.GetByLabel("Take in a local protocol").SetInputFilesAsync(new FilePayload
        {
            Name = "hut.json", MimeType = "application/json", Buffer = "{\n  \"local\": \"hut\" \"title\": 1\n}"u8.ToArray(),
        });
        await Assertions.Expect(Page.GetByText("Line 2, column 18: this is not JSON from here on")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Practice_and_real_records_never_mix()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Doll", practice: true);
        await Page.GoToAsync("Hand-over");
        await TakeInAsync("a.jsonl", Bytes(Opened, Seen));
        await Assertions.Expect(Page.GetByText("The file is a real record, this casualty is practice.")).ToBeVisibleAsync();
        await Page.GoToAsync("Now");
        await Page.SeeEntriesAsync(1);
    }

    private static byte[] Bytes(params string[] lines) => Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")));

    private Task TakeInAsync(string name, byte[] file) =>
        Page.GetByLabel("record file").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/jsonl", Buffer = file });
}
