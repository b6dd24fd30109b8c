using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>What a carer does, found by role and name.</summary>
internal static class Carer
{
    public static ILocator Button(this IPage page, string name) =>
        page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public static ILocator Link(this IPage page, string name) =>
        page.GetByRole(AriaRole.Link, new() { Name = name });

    public static ILocator Heading(this IPage page, string name) =>
        page.GetByRole(AriaRole.Heading, new() { Name = name, Exact = true });

    public static Task ChooseAsync(this IPage page, string option) =>
        page.GetByRole(AriaRole.Radio, new() { Name = option, Exact = true }).TapAsync();

    public static async Task ReadCautionsAsync(this IPage page, string carer = "Ane")
    {
        await page.Button("I have read this").TapAsync();
        await page.GetByLabel("Your name").FillAsync(carer);
        await page.Button("Go on").TapAsync();
        await page.Heading("Casualties").WaitForAsync();
    }

    public static async Task OpenCasualtyAsync(this IPage page, string alias, bool practice = false)
    {
        await page.Link(practice ? "Practice casualty" : "New casualty").TapAsync();
        await page.GetByLabel("What do you call the casualty?").FillAsync(alias);
        await page.Button("Open the record").TapAsync();
        await page.Heading("Now").WaitForAsync();
    }

    public static async Task WriteNoteAsync(this IPage page, string text)
    {
        await page.GetByLabel("Note").FillAsync(text);
        await page.Button("Log note").TapAsync();
    }

    public static async Task LogNoteAsync(this IPage page, string text)
    {
        await page.WriteNoteAsync(text);
        await Assertions.Expect(page.GetByText("Stored on this phone.")).ToBeVisibleAsync();
        await page.Button("Close this message").TapAsync();
    }

    public static async Task SeeEntriesAsync(this IPage page, int count) =>
        await Assertions.Expect(page.GetByText($"{count} entries in this record")).ToBeVisibleAsync();

    /// <summary>Waits until the app can start without network.</summary>
    public static async Task KeepOfflineAsync(this IPage page)
    {
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => null)");
        await page.WaitForFunctionAsync("() => caches.open('farhold-serving').then(c => c.match('current')).then(Boolean)");
    }
}
