using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>Walks through every screen of the app, from a phone that has never seen it. Add new screens here.</summary>
internal static class Screens
{
    public static readonly string[] Places = ["Now", "Casualty", "Limbs", "Signs", "Care", "Way out", "Hand over", "Log"];

    private static readonly string[] Quicks =
    [
        "Tourniquet tightened",
        "Wound found",
        "Bleeding now?",
        "Signs seen",
        "Tourniquet slackened",
        "Start an attempt",
        "Surgery or clinic: when",
        "Hands here: when",
        "Who can watch",
        "Supplies left",
        "Note",
    ];

    /// <summary>Moments of an attempt that look different on Now and Limbs too.</summary>
    private static readonly string[] Told = ["start", "watch", "bleeding-again"];

    private static readonly (string Address, string Heading)[] Inner =
    [
        ("enter", "Make an entry"),
        ("enter/wound.found", "Wound found"),
        ("enter/tourniquet.tightened", "Tourniquet tightened"),
        ("enter/help.expected", "Help expected"),
        ("enter/advice.received", "Advice received"),
        ("enter/care.ended", "Care ended"),
        ("signs/take", "Take signs"),
        ("signs/take/systolic", "Take signs"),
        ("signs/take/skin", "Take signs"),
        ("reminders", "Reminders"),
        ("position", "Where we are"),
        ("ask", "Ask for advice"),
        ("look", "1 of 8 · Heavy bleeding"),
        ("look/belly", "7 of 8 · Belly, pelvis, pregnancy"),
        ("re-site/left-leg", "Tourniquet's place: left leg"),
        ("look-back", "Look back"),
        ("body/back", "Casualty"),
    ];

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
        foreach (
            var way in (string[])
                [
                    "Read it aloud",
                    "Short message",
                    "Show codes to another phone",
                    "Take entries from another phone by camera",
                    "Import messages about this casualty",
                ]
        )
        {
            await page.GoToAsync("Hand over");
            await page.Link(way).TapAsync();
            await page.Link("Back to Hand over").WaitForAsync();
            yield return way;
        }
        await page.GoToAsync("Hand over");
        await page.Link("Card").TapAsync();
        await page.Link("Back to Hand over").WaitForAsync();
        yield return "card";
        await foreach (var name in PackScenes.EachAsync(page))
            yield return name;
        await page.GoToAsync("Way out");
        await page.Button("Wait").Last.TapAsync();
        await page.Button("Keep this stage").WaitForAsync();
        yield return "way-out-wait";
        await page.Button("Leave it").TapAsync();
        await page.WaitLegAsync("15 min", "30 min", "45 min");
        await page.Heading("Reaching higher care").WaitForAsync(); // the answer moves what is below it
        await page.GetByText("Add a stage", new() { Exact = true }).TapAsync();
        await page.Button("Carry").Last.TapAsync();
        await page.Button("Keep this stage").WaitForAsync();
        yield return "way-out-carry";
        await page.Button("3").TapAsync();
        await page.Button("Keep this stage").TapAsync();
        await page.Heading("The plan").WaitForAsync();
        await page.GetByText("Add a stage", new() { Exact = true }).TapAsync();
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
        await page.ChooseAsync("By the clock");
        await page.GetByRole(AriaRole.Group, new() { Name = "Not before" }).WaitForAsync();
        yield return "note-between";
        await page.ChooseAsync("10 min ago");
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Note" }).FillAsync("Left leg, cloth packed, still oozing");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Log entry: ") }).TapAsync();
        await page.GetByText("Logged: Note").WaitForAsync();
        yield return "now-toast";
        await page.GoToAsync("Log");
        await page.GetByRole(AriaRole.Button, new() { Name = "Change: Note" }).First.TapAsync();
        await page.Button("Withdraw").TapAsync();
        await page.Button("Withdraw the entry").WaitForAsync();
        yield return "log-withdraw";
        await page.GoToAsync("Now");
        foreach (var quick in Quicks)
        {
            await page.Button(quick).Last.TapAsync();
            await page.GetByRole(AriaRole.Dialog).WaitForAsync();
            yield return "choice-" + quick.ToLowerInvariant().Replace(" ", "-").Trim('?');
            await page.Button("Close without logging").TapAsync();
        }
        await page.Link("All reasons").First.TapAsync();
        await page.Heading("All reasons, Left leg").WaitForAsync();
        yield return "why";
        foreach (var (address, heading) in Inner)
        {
            await page.GoToInnerAsync(address);
            await page.Heading(heading).WaitForAsync();
            yield return address.Replace('/', '-').Replace('.', '-');
        }
        await page.GoToAsync("Log");
        await page.GetByRole(AriaRole.Button, new() { Name = "Change: Note" }).First.TapAsync();
        await page.Link("Correct").First.TapAsync();
        await page.Heading("Correct an entry").WaitForAsync();
        yield return "amend";
        foreach (var (name, file, shown) in AttemptScenes.All())
        {
            await page.Link("All casualties").TapAsync();
            await page.Heading("Casualties").WaitForAsync();
            await page.TakeInAsync(name + ".jsonl", file.Bytes);
            await page.EvaluateAsync(
                "alias => [...document.querySelectorAll('a')].find(a => a.textContent.includes(alias)).click()",
                file.Alias
            );
            await page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
            if (Told.Contains(name))
                yield return "now-at-" + name;
            await page.GoToInnerAsync("attempt/left-leg");
            await page.GetByText(shown).First.WaitForAsync();
            yield return "attempt-" + name;
            if (!Told.Contains(name))
                continue;
            await page.GoToInnerAsync("limbs");
            await page.Heading("Limbs").WaitForAsync(new() { State = WaitForSelectorState.Attached });
            yield return "limbs-at-" + name;
        }
        await page.Link("All casualties").TapAsync();
        await page.OpenCasualtyAsync("Doll", practice: true);
        yield return "practice";
        await page.Link("All casualties").TapAsync();
        await page.Heading("Casualties").WaitForAsync();
        yield return "casualties";
        await foreach (var name in PackScenes.PrepareAsync(page))
            yield return name;
        await page.Link("This phone").TapAsync();
        await page.Heading("This phone").WaitForAsync();
        yield return "this-phone";
        await page.EvaluateAsync("() => Blazor.navigateTo('/protocol')");
        await page.Heading("The protocol in force").WaitForAsync();
        yield return "protocol";
        await page.EvaluateAsync("() => Blazor.navigateTo('/how-far')");
        await page.Heading("How far can this be trusted?").WaitForAsync();
        yield return "how-far";
        foreach (var (address, title) in new[] { ("join", "Join a hub"), ("board", "Board"), ("devices", "Phones and desks") })
        {
            await page.EvaluateAsync($"() => Blazor.navigateTo('/{address}')");
            await page.Heading(title).WaitForAsync();
            yield return address;
        }

        await page.EvaluateAsync("() => Blazor.navigateTo('/take-run')");
        await page.Heading("Take a run from another phone").WaitForAsync();
        yield return "take-run";
        await page.EvaluateAsync("() => Blazor.navigateTo('/own-scenario')");
        await page.Heading("A scenario of your own").WaitForAsync();
        await page.Locator("textarea[spellcheck]").WaitForAsync();
        yield return "own-scenario";
        await page.EvaluateAsync("() => Blazor.navigateTo('/no-such-place')");
        await page.GetByRole(AriaRole.Heading).First.WaitForAsync();
        yield return "not-found";
    }
}
