using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Drink, drugs, supplies and preparing, one screen after another.</summary>
internal static class PackScenes
{
    /// <summary>From any place of an open casualty; ends on Now.</summary>
    public static async IAsyncEnumerable<string> EachAsync(IPage page)
    {
        await page.OpenPackAsync("Supplies");
        yield return "supplies-empty";
        await page.Link("Count the pack").TapAsync();
        await page.Heading("Count the pack").WaitForAsync();
        await page.Button("More: Plain gauze").TapAsync();
        await page.Button("More: Drinking water").TapAsync();
        await page.Button("More: Heat packs").TapAsync();
        yield return "supplies-count";
        await page.Button("Log counts: 3").TapAsync();
        await page.Heading("Supplies").WaitForAsync();
        await page.Button("Close this message").TapAsync();
        await page.GetByText("2 people, Warmth not said, resting").TapAsync();
        yield return "supplies";
        await page.Link("Fluids").TapAsync();
        await page.Heading("Fluids").WaitForAsync();
        await page.GetByRole(AriaRole.Group, new() { Name = "Drank water" })
            .GetByRole(AriaRole.Button, new() { Name = "200 mL" })
            .TapAsync();
        await page.Button("Close this message").TapAsync();
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        yield return "fluids";
        await page.Link("Drugs").TapAsync();
        await page.Heading("Drugs").WaitForAsync();
        yield return "drugs";
        await page.GoToAsync("Now");
    }

    /// <summary>From the list of casualties, and back to it.</summary>
    public static async IAsyncEnumerable<string> PrepareAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "Prepare", Exact = true }).TapAsync();
        await page.Heading("Prepare").WaitForAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ane");
        await page.Button("Add to the party").TapAsync();
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        yield return "prepare";
        await page.Link("Plan to leave behind").TapAsync();
        await page.Heading("Plan to leave behind").First.WaitForAsync();
        yield return "prepare-plan";
        await page.Link("Prepare").Last.TapAsync();
        await page.Link("Paper forms").TapAsync();
        await page.Heading("Paper forms").WaitForAsync();
        yield return "prepare-forms";
        await page.Link("All casualties").TapAsync();
        await page.Heading("Casualties").WaitForAsync();
    }

    public static async Task OpenPackAsync(this IPage page, string place)
    {
        await page.GoToAsync("Care");
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Drink, drugs and supplies" })
            .GetByRole(AriaRole.Link, new() { Name = place })
            .TapAsync();
        await page.Heading(place).WaitForAsync();
    }
}
