using System.Diagnostics;
using System.Globalization;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Not a check: prints what a first load weighs and how long starts take. Run by tools/measure.</summary>
public class MeasureTool(Browser browser)
{
    [Theory(Explicit = true)]
    [InlineData(1)]
    [InlineData(4)]
    public async Task Weight_and_start_times(int timesSlower)
    {
        await using var server = await AppServer.StartAsync();
        var context = await browser.Chromium.NewContextAsync(Kinds.Phone);
        var page = await context.NewPageAsync();
        var network = await context.NewCDPSessionAsync(page);
        long bytes = 0;
        var files = 0;
        network.Event("Network.loadingFinished").OnEvent += (_, e) =>
        {
            bytes += (long)e!.Value.GetProperty("encodedDataLength").GetDouble();
            files++;
        };
        await network.SendAsync("Network.enable");
        await network.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = timesSlower });

        var first = await StartAsync(page, server.Address);
        Say($"CPU {timesSlower}x slower: first load {bytes / 1e6:0.00} MB in {files} requests (page only), up after {first:0.0} s");
        await page.KeepOfflineAsync();
        for (var i = 1; i <= 3; i++)
        {
            var again = await StartAsync(page, server.Address);
            var paint = await page.EvaluateAsync<double>("() => performance.getEntriesByName('first-contentful-paint')[0].startTime");
            Say($"CPU {timesSlower}x slower: start {i} from the offline copy, first paint {paint:0} ms, up after {again:0.0} s");
        }
        await context.CloseAsync();
    }

    /// <summary>An entry kept in the database alone, and with the second copy beside it, in turns.</summary>
    [Theory(Explicit = true)]
    [InlineData(1)]
    [InlineData(4)]
    public async Task Second_copy(int timesSlower)
    {
        await using var server = await AppServer.StartAsync();
        foreach (var with in (bool[])[false, true, false, true])
        {
            var context = await browser.Chromium.NewContextAsync(Kinds.Phone);
            var page = await context.NewPageAsync();
            if (!with)
                await page.AddInitScriptAsync("globalThis.Worker = class { constructor() { throw new Error('none'); } };");
            await page.GotoAsync(server.Address + "/manifest.webmanifest");
            await (await context.NewCDPSessionAsync(page)).SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = timesSlower });
            var times = await page.EvaluateAsync<double[]>(
                """
                async () => {
                  const store = await import('/store.js');
                  const device = await store.device();
                  const times = [];
                  for (let i = 0; i < 220; i++) {
                    const from = performance.now();
                    await store.append('tor', device, JSON.stringify({ kind: 'note', text: crypto.randomUUID() }), i ? null : JSON.stringify({ id: 'tor' }));
                    times.push(performance.now() - from);
                  }
                  return times.slice(20).sort((a, b) => a - b);
                }
                """
            );
            Say(
                $"CPU {timesSlower}x slower, {(with ? "with" : "without")} the second copy: an entry {times[100]:0.0} ms (median), {times[190]:0.0} ms (95th percentile)"
            );
            await context.CloseAsync();
        }
    }

    /// <summary>Eight legs that share half their luck, as in the benchmark.</summary>
    [Theory(Explicit = true)]
    [InlineData("lognormal", "\"p10\":{0},\"p90\":{1}")]
    [InlineData("PERT", "\"low\":{0},\"likely\":{2},\"high\":{1}")]
    public async Task Way_out_of_eight_legs(string law, string time)
    {
        await using var server = await AppServer.StartAsync();
        var context = await browser.Chromium.NewContextAsync(Kinds.Phone);
        var page = await context.NewPatientPageAsync();
        await page.GotoAsync(server.Address);
        await page.ReadCautionsAsync();
        await page.OpenCasualtyAsync("Tor");
        await page.TightenAsync();
        await page.GoToAsync("Way out");
        await page.GetByText("Load a plan or a track").TapAsync();
        for (var run = 1; run <= 5; run++)
        {
            var legs = string.Join(
                ",",
                Enumerable
                    .Range(1, 8)
                    .Select(i =>
                        $"{{\"name\":\"run {run}\",\"mode\":\"wait\","
                        + $"{string.Format(CultureInfo.InvariantCulture, time, (10 * i) + run, 40 * i + 20, 20 * i)}}}"
                    )
            );
            var start = DateTimeOffset.UtcNow.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
            await page.EvaluateAsync(
                "() => { window.longest = 0; window.seen ??= new PerformanceObserver(l => { for (const e of l.getEntries()) "
                    + "window.longest = Math.max(window.longest, e.duration); }); window.seen.observe({ type: 'longtask' }); }"
            );
            await page.GetByLabel("Plan (JSON) with its tracks, or one GPX track")
                .SetInputFilesAsync(
                    new Microsoft.Playwright.FilePayload
                    {
                        Name = "eight.json",
                        MimeType = "application/json",
                        Buffer = System.Text.Encoding.UTF8.GetBytes($"{{\"start\":\"{start}\",\"legs\":[{legs}]}}"),
                    }
                );
            await page.WaitForFunctionAsync(
                "run => { const main = document.querySelector('main'); return main.textContent.includes(run) && "
                    + "main.querySelector('[data-worked-ms]') && !main.querySelector('progress'); }",
                $"run {run}"
            );
            var told = await page.EvaluateAsync<string>(
                "() => { const p = document.querySelector('[data-worked-ms]'); return p.textContent.split('.')[0] + ' in ' + "
                    + "p.dataset.workedMs + ' ms'; }"
            );
            var longest = await page.EvaluateAsync<double>("() => window.longest");
            Say(
                $"way out, 8 legs, {law}, run {run}: {told}; longest task {longest:0} ms; load {(await File.ReadAllTextAsync("/proc/loadavg", TestContext.Current.CancellationToken)).Split(' ')[0]}"
            );
        }

        await context.CloseAsync();
    }

    private static async Task<double> StartAsync(Microsoft.Playwright.IPage page, string address)
    {
        var watch = Stopwatch.StartNew();
        await page.GotoAsync(address, new() { WaitUntil = Microsoft.Playwright.WaitUntilState.Commit });
        await page.Button("I have read this").WaitForAsync();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Say(FormattableString line) =>
        File.AppendAllText(Path.Combine(Published.Root, "artifacts", "measured.txt"), line.ToString(CultureInfo.InvariantCulture) + "\n");
}
