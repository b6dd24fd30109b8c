using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A phone with the app open, 360 × 740 with touch. Fails if the page wrote an error or broke its content policy.</summary>
public abstract class PhoneTest(Browser browser) : IAsyncLifetime
{
    private readonly ConcurrentQueue<string> complaints = new();
    private readonly List<string> expected = [];

    internal AppServer Server { get; private set; } = null!;

    protected IBrowserContext Phone { get; private set; } = null!;

    protected IPage Page { get; private set; } = null!;

    protected Browser Browser => browser;

    protected virtual BrowserNewContextOptions Kind => Kinds.Phone;

    /// <summary>The folder to serve.</summary>
    protected virtual string Folder => Published.Folder;

    /// <summary>Where the hub keeps records of phones; null: it keeps none.</summary>
    protected virtual string? Records => null;

    public virtual async ValueTask InitializeAsync()
    {
        Server = await AppServer.StartAsync(Folder, records: Records);
        Phone = await browser.Chromium.NewContextAsync(Kind);
        await Phone.AddInitScriptAsync(
            "addEventListener('securitypolicyviolation', e => console.error('CSP: ' + e.violatedDirective + ' ' + e.blockedURI))"
        );
        Page = await NewTabAsync();
        await Page.GotoAsync(Server.Address);
    }

    public virtual async ValueTask DisposeAsync()
    {
        if (TestContext.Current.TestState?.Result == TestResult.Failed)
            await TakePictureAsync();
        await Phone.CloseAsync();
        await Server.DisposeAsync();
        GC.SuppressFinalize(this);
        Assert.DoesNotContain(complaints, c => !expected.Any(e => c.Contains(e, StringComparison.Ordinal)));
    }

    protected async Task<IPage> NewTabAsync()
    {
        var page = await Phone.NewPatientPageAsync();
        page.Console += (_, message) =>
        {
            if (message.Type is "error")
                complaints.Enqueue($"{message.Text} {message.Location}");
        };
        page.PageError += (_, error) => complaints.Enqueue(error);
        return page;
    }

    /// <summary>What was on the screen when a test failed, in artifacts/failures.</summary>
    private async Task TakePictureAsync()
    {
        var name = Path.Combine(Published.Root, "artifacts", "failures", TestContext.Current.TestMethod!.MethodName);
        for (var i = 0; i < Phone.Pages.Count; i++)
            await Phone.Pages[i].ScreenshotAsync(new() { Path = $"{name}-{i}.png", FullPage = true });
        if (!complaints.IsEmpty)
            await File.WriteAllLinesAsync(name + ".txt", complaints);
    }

    /// <summary>An error that belongs to what this test does, such as a stopped server.</summary>
    protected void Expect(string complaint) => expected.Add(complaint);
}
