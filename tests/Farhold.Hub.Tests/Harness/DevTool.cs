using System.Diagnostics;
using System.Runtime.Versioning;

namespace Farhold.Hub.Tests.Harness;

/// <summary>How long ./dev takes until the demo's first page shows its verdict. No test: run by tools/dev-time.</summary>
[UnsupportedOSPlatform("windows")]
public class DevTool(Browser browser)
{
    private const string Demo = "http://127.0.0.1:5099/demo";

    [Fact(Explicit = true)]
    public async Task Measure()
    {
        await using var phone = await browser.Chromium.NewContextAsync(Kinds.Phone);
        var page = await phone.NewPageAsync();
        page.SetDefaultTimeout(Browser.PatienceMs);
        var clock = Stopwatch.StartNew();
        using var dev = Process.Start(
            new ProcessStartInfo(Path.Combine(Published.Root, "dev"), ["--non-interactive"]) { RedirectStandardOutput = true }
        )!;
        dev.OutputDataReceived += (_, _) => { };
        dev.BeginOutputReadLine();
        try
        {
            using var client = new HttpClient();
            while (!await AnswersAsync(client))
                await Task.Delay(100, TestContext.Current.CancellationToken);
            var served = clock.Elapsed;
            await page.GotoAsync(Demo);
            await page.WaitForURLAsync("**/casualty/*/now");
            await page.GetByRole(Microsoft.Playwright.AriaRole.Main).GetByText("Left leg").First.WaitForAsync();
            await page.ScreenshotAsync(new() { Path = Path.Combine(Published.Root, "artifacts", "dev.png") });
            await File.WriteAllTextAsync(
                Path.Combine(Published.Root, "artifacts", "dev.txt"),
                $"served after {served.TotalSeconds:0.0} s, the demo's page shown after {clock.Elapsed.TotalSeconds:0.0} s\n",
                TestContext.Current.CancellationToken
            );
        }
        finally
        {
            dev.Kill(entireProcessTree: true);
        }
    }

    private static async Task<bool> AnswersAsync(HttpClient client)
    {
        try
        {
            using var answer = await client.GetAsync(new Uri(Demo), TestContext.Current.CancellationToken);
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
