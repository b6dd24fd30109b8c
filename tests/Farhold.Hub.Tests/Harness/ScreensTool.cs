using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Not a check: makes pictures of every screen in artifacts/screens. Run by tools/screens.</summary>
public class ScreensTool(Browser browser)
{
    public static TheoryData<string, string> Ways =>
        new()
        {
            { "phone", "night" },
            { "phone", "day" },
            { "tablet", "night" },
            { "tablet", "day" },
        };

    [Theory(Explicit = true), MemberData(nameof(Ways))]
    public async Task Every_screen_as_a_picture(string size, string look)
    {
        await using var server = await AppServer.StartAsync();
        var context = await browser.Chromium.NewContextAsync(size == "phone" ? Kinds.Phone : Kinds.Tablet);
        var page = await context.NewPatientPageAsync();
        await page.GotoAsync(server.Address);
        await foreach (var name in Screens.EachAsync(page, look))
            await SaveAsync(page, $"{size}-{look}-{name}");
        await page.EvaluateAsync(GlanceTests.Remember, GlanceTests.Picture);
        await page.RouteAsync("**/_framework/**", route => route.AbortAsync());
        await page.ReloadAsync();
        await page.GetByText("Check first").WaitForAsync();
        await SaveAsync(page, $"{size}-{look}-glance");
        await context.CloseAsync();
    }

    private static Task<byte[]> SaveAsync(IPage page, string name) =>
        page.ScreenshotAsync(new() { Path = Path.Combine(Published.Root, "artifacts", "screens", name.ToLowerInvariant() + ".png") });
}
