using System.Globalization;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;
using Xunit.Sdk;
using Xunit.v3;

[assembly: AssemblyFixture(typeof(Browser))]
// Each test has a hub and a phone of its own. Two for each core of the smallest machine: one waits while another works.
[assembly: Parallelization(Mode = ParallelMode.All, MaxThreads = 4)]

namespace Farhold.Hub.Tests.Harness;

/// <summary>One headless Chromium for all tests; every phone is a context of its own.</summary>
public sealed class Browser : IAsyncLifetime
{
    /// <summary>Without these, a start looks up hosts that a closed network refuses.</summary>
    public static readonly string[] Flags =
    [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];

    /// <summary>Only ends a test that hangs; no test depends on how fast the machine is.</summary>
    public static readonly float PatienceMs =
        1000 * float.Parse(Environment.GetEnvironmentVariable("FARHOLD_PATIENCE") ?? "180", CultureInfo.InvariantCulture);

    private IPlaywright? playwright;

    public static string Executable => Environment.GetEnvironmentVariable("FARHOLD_CHROMIUM") ?? "/usr/bin/chromium";

    public IPlaywright Playwright => playwright!;

    public IBrowser Chromium { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(PatienceMs);
        playwright = await Microsoft.Playwright.Playwright.CreateAsync();
        Chromium = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Executable, Args = Flags });
    }

    public async ValueTask DisposeAsync()
    {
        await Chromium.CloseAsync();
        playwright?.Dispose();
    }
}
