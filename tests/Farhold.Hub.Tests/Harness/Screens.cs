using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Walks through every screen of the app, from a phone that has never seen it. Add new screens here.</summary>
internal static class Screens
{
    public static readonly string[] Places = ["Now", "Limbs", "Signs", "Way out", "Hand-over", "Log"];

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
        await page.Heading("Casualties").WaitForAsync();
        await page.OpenCasualtyAsync("Tor");
        foreach (var place in Places)
        {
            await page.GoToAsync(place);
            yield return place + "-empty";
        }
        await page.TightenAsync();
        foreach (var place in Places)
        {
            await page.GoToAsync(place);
            yield return place;
        }
        foreach (var way in (string[])["Read it aloud", "Short message", "Show codes to another phone", "Take entries from another phone by camera"])
        {
            await page.GoToAsync("Hand-over");
            await page.Link(way).TapAsync();
            await page.Link("Back to Hand-over").WaitForAsync();
            yield return way;
        }
        await page.GoToAsync("Way out");
        await page.Button("Wait").Last.TapAsync();
        await page.Button("Keep this leg").WaitForAsync();
        yield return "way-out-wait";
        await page.Button("Leave it").TapAsync();
        await page.WaitLegAsync("15 min", "30 min", "45 min");
        await page.GetByText("Add a leg", new() { Exact = true }).TapAsync();
        await page.Button("Carry").Last.TapAsync();
        await page.Button("Keep this leg").WaitForAsync();
        yield return "way-out-carry";
        await page.Button("3").TapAsync();
        await page.Button("Keep this leg").TapAsync();
        await page.Heading("The plan").WaitForAsync();
        await page.GetByText("Add a leg", new() { Exact = true }).TapAsync();
        await page.Button("One way or another, by chance").TapAsync();
        await page.Heading("Reaching higher care").WaitForAsync();
        await page.GetByLabel("Where you are").FillAsync("44.1 S 169.8 E");
        await page.GetByLabel("Where you are").BlurAsync();
        await page.GetByText("Taken as").WaitForAsync();
        await page.Heading("Reaching higher care").WaitForAsync();
        await page.EvaluateAsync("() => scrollTo(0, 0)");
        yield return "way-out-told";
        await page.Locator("main svg").First.EvaluateAsync("e => e.scrollIntoView()");
        await page.EvaluateAsync("() => scrollBy(0, -80)");
        yield return "way-out-line";
        await page.GetByText("Arrival, in figures").EvaluateAsync("e => e.scrollIntoView()");
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        yield return "way-out-details";
        await page.OpenNoteAsync();
        await page.ChooseAsync("Between … and …");
        await page.GetByRole(AriaRole.Group, new() { Name = "Not after" }).WaitForAsync();
        yield return "note-between";
        await page.ChooseAsync("10 min ago");
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Note" }).FillAsync("Left leg, cloth packed, still oozing");
        await page.Button("Log entry").TapAsync();
        await page.GetByText("Logged: Note").WaitForAsync();
        yield return "now-toast";
        await page.GoToAsync("Log");
        await page.GetByRole(AriaRole.Button, new() { Name = "Change: Note" }).First.TapAsync();
        await page.Button("Withdraw").TapAsync();
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
