using System.Collections.Concurrent;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class KillTests(Browser browser)
{
    private const int Rounds = 50;

    // The manifest is a page of the app's origin that starts nothing, so that a round is short.
    private const string Page = "/manifest.webmanifest";

    private const string Append =
        """
        async () => {
          const store = await import('/store.js');
          const device = await store.device();
          const at = () => new Date().toISOString().slice(0, 19) + 'Z';
          const head = JSON.stringify({ id: 'tor', alias: 'Tor', practice: false, opened: at() });
          const log = said => store.append('tor', device, JSON.stringify({ happened: at(), recorded: at(), by: 'Ane', ...said }), head);
          const said = [
            () => ({ kind: 'note', text: crypto.randomUUID() }),
            () => ({ kind: 'signs.taken', heartRate: 60 + Math.floor(Math.random() * 90), mental: 'alert' }),
            () => ({ kind: 'bleeding.checked', wound: 'w1', bleeding: Math.random() < 0.5 ? 'none' : 'oozing' }),
            () => ({ kind: 'watch.stated', able: Math.random() < 0.5 }),
          ];
          if (!(await store.lines('tor')).includes('\n')) {
            await log({ kind: 'casualty.opened', alias: 'Tor' });
            await log({ kind: 'wound.found', wound: 'w1', limb: 'left-leg', nature: 'bleeding' });
            await log({ kind: 'tourniquet.tightened', tourniquet: 't1', limb: 'left-leg', wound: 'w1' });
          }
          for (let i = 0; ; i++) {
            const answer = JSON.parse(await log(said[i % said.length]()));
            confirmed(JSON.stringify(answer));
          }
        }
        """;

    private const string Read =
        "async () => (await (await import('/store.js')).lines('tor')).split('\\n').slice(0, -1)";

    [Fact]
    public async Task Killed_at_any_moment_the_browser_keeps_every_confirmed_entry_leaves_no_gap_and_tells_what_the_command_line_tells()
    {
        await using var server = await AppServer.StartAsync();
        var data = Directory.CreateTempSubdirectory("farhold-kill-").FullName;
        await SettleAsync(server, data);
        var confirmed = new ConcurrentDictionary<string, string>();
        var random = new Random(20310504);
        string[] stored = [];
        for (var round = 0; round <= Rounds; round++)
        {
            await using var phone = await KillableBrowser.StartAsync(browser.Playwright, data);
            var page = await phone.NewPageAsync();
            await page.GotoAsync(server.Address + Page);
            stored = await page.EvaluateAsync<string[]>(Read);
            AssertWhole(stored, confirmed.Values);
            if (round == Rounds)
            {
                await AssertToldAlikeAsync(page, server.Address);
                break;
            }
            var before = confirmed.Count;
            var first = new TaskCompletionSource();
            await page.ExposeFunctionAsync("confirmed", (string answer) =>
            {
                using var json = System.Text.Json.JsonDocument.Parse(answer);
                if (!json.RootElement.GetProperty("ok").GetBoolean())
                    first.TrySetException(new InvalidOperationException(answer));
                var line = json.RootElement.GetProperty("line").GetString()!;
                confirmed[line] = line;
                first.TrySetResult();
            });
            var logging = page.EvaluateAsync(Append);
            await Task.WhenAny(first.Task, logging).Unwrap();
            await Task.Delay(random.Next(0, 200), TestContext.Current.CancellationToken);
            await phone.KillAsync();
            await Assert.ThrowsAnyAsync<PlaywrightException>(() => logging);
            Assert.True(confirmed.Count > before);
        }
        TestContext.Current.SendDiagnosticMessage($"{Rounds} kills, {confirmed.Count} confirmed, {stored.Length} stored");
        Directory.Delete(data, true);
    }

    /// <summary>A browser that has been used and closed before: what is tested is the record, not the first second of a new profile.</summary>
    private async Task SettleAsync(AppServer server, string data)
    {
        await using var phone = await KillableBrowser.StartAsync(browser.Playwright, data);
        var page = await phone.NewPageAsync();
        await page.GotoAsync(server.Address + Page);
        await page.EvaluateAsync("async () => (await import('/store.js')).device()");
        await phone.CloseAsync();
    }

    /// <summary>The app, started on what is left, shows the verdict that the command line tells of the same record.</summary>
    private static async Task AssertToldAlikeAsync(IPage page, string address)
    {
        await page.EvaluateAsync("() => { localStorage.setItem('farhold-cautions', 'read'); localStorage.setItem('farhold-carer', 'Ane'); }");
        var record = await page.EvaluateAsync<string>("async () => (await (await import('/store.js')).recordFile('tor')).text()");
        var told = await CommandLine.TellAsync(record, DateTimeOffset.UtcNow.AddSeconds(1));
        var limb = Assert.Single(told.GetProperty("limbs").EnumerateArray());
        await page.GotoAsync(address + "/casualty/tor/now");
        await page.Heading($"Left leg: {CommandLine.Head(limb)}").WaitForAsync();
    }

    private static void AssertWhole(string[] stored, ICollection<string> confirmed)
    {
        Assert.Empty(confirmed.Except(stored));
        var numbers = stored.Select(l => int.Parse(l.Split('"')[3].Split('-')[1]));
        Assert.Equal(Enumerable.Range(1, stored.Length), numbers.Order());
    }
}
