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
          const head = JSON.stringify({ id: 'tor', alias: 'Tor', practice: false, opened: '2031-05-04T02:00:00Z' });
          for (let i = 0; ; i++) {
            const answer = JSON.parse(await store.append('tor', device, JSON.stringify({ kind: 'note', text: crypto.randomUUID() }), head));
            confirmed(JSON.stringify(answer));
          }
        }
        """;

    private const string Read =
        "async () => JSON.parse(await (await import('/store.js')).lines('tor')).lines";

    [Fact]
    public async Task Killed_at_any_moment_the_browser_keeps_every_confirmed_entry_and_leaves_no_gap()
    {
        await using var server = await AppServer.StartAsync();
        var data = Directory.CreateTempSubdirectory("farhold-kill-").FullName;
        var confirmed = new ConcurrentDictionary<string, string>();
        var random = new Random(20310504);
        string[] stored = [];
        for (var round = 0; round <= Rounds; round++)
        {
            await using var phone = await KillableBrowser.StartAsync(browser.Playwright, data);
            var page = await phone.Context.NewPageAsync();
            await page.GotoAsync(server.Address + Page);
            stored = await page.EvaluateAsync<string[]>(Read);
            AssertWhole(stored, confirmed.Values);
            if (round == Rounds)
                break;
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

    private static void AssertWhole(string[] stored, ICollection<string> confirmed)
    {
        Assert.Empty(confirmed.Except(stored));
        var numbers = stored.Select(l => int.Parse(l.Split('"')[3].Split('-')[1]));
        Assert.Equal(Enumerable.Range(1, stored.Length), numbers.Order());
    }
}
