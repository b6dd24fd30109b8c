using System.Globalization;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>
/// Not a check: prints how long a start and a tap take with a long record, also on a CPU four times slower. Run by tools/measure.
/// </summary>
public class MeasureCare(Browser browser)
{
    private const int Taps = 60;

    private const string Watch = """
        (() => {
          const once = (name, find) => { const look = () => { if (find()) window[name] = performance.now(); else requestAnimationFrame(look); }; look(); };
          once('glanceAt', () => document.querySelector('.glance')?.textContent.includes('Since'));
          once('tapsAt', () => document.querySelector('#first-taps button'));
          once('liveAt', () => !document.getElementById('starting') && document.querySelector('main#content .card'));
        })();
        """;

    /// <summary>Milliseconds from the tap on the answer until it is on disk, confirmed, and the new verdict is drawn.</summary>
    private const string Tap = """
        async ([quick, option]) => {
          const next = () => new Promise(done => requestAnimationFrame(() => setTimeout(done)));
          const until = async find => { for (;;) { const found = find(); if (found) return found; await next(); } };
          const named = (within, text) => [...within.querySelectorAll('button')].findLast(b => b.textContent.trim() === text);
          document.querySelector('.toast button:last-child')?.click();
          await until(() => !document.querySelector('.toast'));
          named(document, quick).click();
          const dialog = await until(() => document.querySelector('[role=dialog]'));
          const button = named(dialog, option);
          await next();
          const tapped = performance.now();
          button.click();
          await until(() => document.querySelector('.toast'));
          await next();
          return performance.now() - tapped;
        }
        """;

    [Theory(Explicit = true)]
    [InlineData(100, 4)]
    [InlineData(500, 4)]
    [InlineData(500, 1)]
    [InlineData(2000, 4)]
    public async Task Starts_and_taps_with_a_record_of(int entries, int timesSlower)
    {
        await using var server = await AppServer.StartAsync();
        var context = await browser.Chromium.NewContextAsync(Kinds.Phone);
        await context.AddInitScriptAsync(Watch);
        var page = await context.NewPatientPageAsync();
        await page.GotoAsync(server.Address);
        await page.ReadCautionsAsync();
        var file = RecordFile.Ready("aaaa", "Tor");
        for (var i = 9; i < entries; i++)
            file.At(
                20 - (i * 15.0 / entries),
                "signs.taken",
                $"\"heartRate\":{80 + (i % 9)},\"breathRate\":{14 + (i % 5)},\"mental\":\"alert\""
            );
        await page.GetByLabel("record file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "long.jsonl",
                    MimeType = "application/jsonl",
                    Buffer = file.Bytes,
                }
            );
        await page.Link("To Tor").TapAsync();
        await page.SeeEntriesAsync(entries);
        await page.KeepOfflineAsync();
        await page.WaitForFunctionAsync("() => localStorage.getItem('farhold-first-taps')");

        var network = await context.NewCDPSessionAsync(page);
        await network.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = timesSlower });
        for (var start = 1; start <= 3; start++)
        {
            await page.ReloadAsync();
            await page.WaitForFunctionAsync("() => window.liveAt");
            Say(
                $"{entries} entries, CPU {timesSlower}x slower, start {start} from the offline copy: last verdict from plain HTML after {await At(page, "glanceAt"):0} ms, facts can be logged after {await At(page, "tapsAt"):0} ms, live after {await At(page, "liveAt"):0} ms; load {Load()}"
            );
        }

        var took = new List<double>();
        for (var i = 0; i < Taps; i++)
            took.Add(await page.EvaluateAsync<double>(Tap, new[] { "Bleeding now?", i % 2 == 0 ? "None" : "Oozing" }));
        took.Sort();
        Say(
            $"{entries} entries, CPU {timesSlower}x slower, tap to durable entry and new verdict drawn: median {took[Taps / 2]:0} ms, 95th percentile {took[Taps * 95 / 100]:0} ms, of {Taps} taps; load {Load()}"
        );
        foreach (var place in (string[])["Limbs", "Signs", "Log", "Now"])
        {
            var went = await page.EvaluateAsync<double>(
                """
                async place => {
                  const from = performance.now();
                  [...document.querySelectorAll('nav.places a')].find(a => a.textContent.trim() === place).click();
                  const heading = () => [...document.querySelectorAll('main h1')].some(h => h.textContent.trim() === place);
                  while (!heading()) await new Promise(done => requestAnimationFrame(done));
                  await new Promise(done => requestAnimationFrame(() => setTimeout(done)));
                  return performance.now() - from;
                }
                """,
                place
            );
            Say($"{entries} entries, CPU {timesSlower}x slower: {place} after {went:0} ms");
        }
        await context.CloseAsync();
    }

    private static Task<double> At(IPage page, string name) => page.EvaluateAsync<double>("name => window[name] ?? NaN", name);

    private static string Load() => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    private static void Say(FormattableString line) =>
        File.AppendAllText(Path.Combine(Published.Root, "artifacts", "measured.txt"), line.ToString(CultureInfo.InvariantCulture) + "\n");
}
