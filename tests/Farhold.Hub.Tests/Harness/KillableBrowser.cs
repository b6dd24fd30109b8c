using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A whole Chromium with its data in a folder that outlives it, to be killed at any moment.</summary>
internal sealed class KillableBrowser : IAsyncDisposable
{
    private readonly Process process;
    private readonly IBrowser browser;

    private KillableBrowser(Process process, IBrowser browser) => (this.process, this.browser) = (process, browser);

    public async Task<IPage> NewPageAsync()
    {
        var page = await browser.Contexts[0].NewPatientPageAsync();
        return page;
    }

    public static async Task<KillableBrowser> StartAsync(IPlaywright playwright, string dataFolder)
    {
        var portFile = Path.Combine(dataFolder, "DevToolsActivePort");
        File.Delete(portFile);
        // A killed browser leaves its lock; the folder is ours alone.
        File.Delete(Path.Combine(dataFolder, "SingletonLock"));
        var start = new ProcessStartInfo(Browser.Executable) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (
            var flag in (string[])
                [.. Browser.Flags, "--headless=new", "--remote-debugging-port=0", $"--user-data-dir={dataFolder}", "about:blank"]
        )
            start.ArgumentList.Add(flag);
        var process = Process.Start(start)!;
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        var port = await PortAsync(process, portFile);
        return new KillableBrowser(
            process,
            await playwright.Chromium.ConnectOverCDPAsync($"http://127.0.0.1:{port}", new() { Timeout = Browser.PatienceMs })
        );
    }

    /// <summary>SIGKILL to every process of the browser at once.</summary>
    public async Task KillAsync()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
    }

    /// <summary>Closed as a person closes it.</summary>
    public async Task CloseAsync()
    {
        var session = await browser.NewBrowserCDPSessionAsync();
        // The browser may be gone before it has answered.
        try
        {
            await session.SendAsync("Browser.close");
        }
        catch (PlaywrightException) { }
        await process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
            await KillAsync();
        process.Dispose();
        await browser.DisposeAsync();
    }

    private static async Task<int> PortAsync(Process process, string portFile)
    {
        while (true)
        {
            Assert.False(process.HasExited, "Chromium ended before it could be used.");
            if (File.Exists(portFile) && await File.ReadAllLinesAsync(portFile) is [var port, _, ..])
                return int.Parse(port, CultureInfo.InvariantCulture);
            await Task.Delay(20);
        }
    }
}
