using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Walks through every screen of the app, from a phone that has never seen it. Add new screens here.</summary>
internal static class Screens
{
    private static readonly string[] Places = ["Now", "Hand-over", "Log"];

    /// <summary>Stands on one screen after another; the caller looks at each and goes on.</summary>
    public static async IAsyncEnumerable<string> EachAsync(IPage page, string look)
    {
        await page.EvaluateAsync("look => localStorage.setItem('farhold-look', look)", look);
        await page.ReloadAsync();
        await page.Button("I have read this").WaitForAsync();
        yield return "cautions";
        await page.Button("I have read this").TapAsync();
        await page.GetByLabel("Your name").WaitForAsync();
        yield return "name";
        await page.GetByLabel("Your name").FillAsync("Ane");
        await page.Button("Go on").TapAsync();
        await page.Heading("Casualties").WaitForAsync();
        yield return "no-casualties";
        await page.Link("New casualty").TapAsync();
        await page.Heading("New casualty").WaitForAsync();
        yield return "new-casualty";
        await page.Link("All casualties").TapAsync();
        await page.OpenCasualtyAsync("Tor");
        foreach (var place in Places)
        {
            await page.Link(place).TapAsync();
            await page.Heading(place).WaitForAsync();
            yield return place;
        }
        await page.Link("Now").TapAsync();
        await page.ChooseAsync("Between … and …");
        await page.GetByRole(AriaRole.Group, new() { Name = "Not after" }).WaitForAsync();
        yield return "now-between";
        await page.ChooseAsync("10 min ago");
        await page.WriteNoteAsync("Left leg, cloth packed, still oozing");
        await page.GetByText("Stored on this phone.").WaitForAsync();
        yield return "now-toast";
        await page.Link("Log").TapAsync();
        await page.Button("Withdraw").First.TapAsync();
        await page.Button("Withdraw the entry").WaitForAsync();
        yield return "log-withdraw";
        await page.Link("All casualties").TapAsync();
        await page.OpenCasualtyAsync("Doll", practice: true);
        yield return "practice";
        await page.Link("All casualties").TapAsync();
        await page.Heading("Casualties").WaitForAsync();
        yield return "casualties";
        await page.Link("This phone").TapAsync();
        await page.Heading("This phone").WaitForAsync();
        yield return "this-phone";
    }
}
