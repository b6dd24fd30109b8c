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
