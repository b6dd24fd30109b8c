using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>What a carer does, found by role and name.</summary>
internal static class Carer
{
    /// <summary>
    /// A page as patient as the tests are; like a carer, it does not tap while what is under the finger is being replaced.
    /// </summary>
    public static async Task<IPage> NewPatientPageAsync(this IBrowserContext phone)
    {
        var page = await phone.NewPageAsync();
        page.SetDefaultTimeout(Browser.PatienceMs);
        await page.AddLocatorHandlerAsync(page.Locator("html[data-blind]"), _ => Task.CompletedTask);
        return page;
    }

    public static ILocator Button(this IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public static ILocator Link(this IPage page, string name) => page.GetByRole(AriaRole.Link, new() { Name = name });

    public static ILocator Heading(this IPage page, string name) => page.GetByRole(AriaRole.Heading, new() { Name = name, Exact = true });

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
        await page.SeeEntriesAsync(1);
    }

    /// <summary>Fills in a note and presses Log entry, whatever comes of it.</summary>
    public static async Task WriteNoteAsync(this IPage page, string text)
    {
        await page.OpenNoteAsync();
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Note" }).FillAsync(text);
        await page.Button("Log entry").TapAsync();
    }

    public static async Task OpenNoteAsync(this IPage page)
    {
        await page.GoToAsync("Now");
        await page.Link("Every other entry").TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Note", Exact = true }).TapAsync();
        await page.Heading("Note").WaitForAsync();
    }

    public static async Task LogNoteAsync(this IPage page, string text)
    {
        await page.WriteNoteAsync(text);
        await Assertions.Expect(page.GetByText("Logged: Note")).ToBeVisibleAsync();
        await page.Button("Close this message").TapAsync();
    }

    /// <summary>A first tourniquet on the left leg, now, in two taps.</summary>
    public static async Task TightenAsync(this IPage page)
    {
        await page.GoToAsync("Now");
        await page.Button("Tourniquet tightened").First.TapAsync();
        await page.GetByRole(AriaRole.Group, new() { Name = "left leg" }).GetByRole(AriaRole.Button).First.TapAsync();
        await Assertions.Expect(page.GetByText("Logged:")).ToBeVisibleAsync();
        await page.Button("Close this message").TapAsync();
    }

    /// <summary>On the way-out page: a wait of three times, each a chip.</summary>
    public static async Task WaitLegAsync(this IPage page, params string[] times)
    {
        await page.Button("Wait").Last.TapAsync();
        foreach (var time in times)
            await page.Button(time).TapAsync();
        await page.Button("Keep this stage").TapAsync();
        await page.Heading("The plan").WaitForAsync();
    }

    /// <summary>On the way-out page, with a leg there already: a carry over so many kilometres.</summary>
    public static async Task CarryLegAsync(this IPage page, string km)
    {
        await page.GetByText("Add a stage", new() { Exact = true }).TapAsync();
        await page.Button("Carry").Last.TapAsync();
        foreach (var key in km)
            await page.Button(key.ToString()).TapAsync();
        await page.Button("Keep this stage").TapAsync();
        await page.Heading("The plan").WaitForAsync();
    }

    /// <summary>To a place of the bar, or to one within it: the limbs and the signs of the casualty, the log to hand over.</summary>
    public static async Task GoToAsync(this IPage page, string place)
    {
        var (first, within) = place switch
        {
            "Limbs" => ("Casualty", "List"),
            "Signs" => ("Casualty", "Signs"),
            "Log" => ("Hand over", "Log"),
            _ => (place, null),
        };
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Places" }).GetByRole(AriaRole.Link, new() { Name = first }).TapAsync();
        await page.Heading(first).WaitForAsync(new() { State = WaitForSelectorState.Attached });
        if (within is null)
            return;
        await page.Locator("main").GetByRole(AriaRole.Link, new() { Name = within, Exact = true }).TapAsync();
        await page.Heading(place).WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>Keeps the choice of a language as the app does, and starts anew.</summary>
    public static async Task SpeakAsync(this IPage page, string language)
    {
        await page.EvaluateAsync("language => localStorage.setItem('farhold-language', language)", language);
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", language);
        await page.Locator("#app h1").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>To an address within the open casualty, by no words of any language, until something else is drawn.</summary>
    public static async Task ShowInnerAsync(this IPage page, string place)
    {
        if (!page.Url.EndsWith("/" + place, StringComparison.Ordinal))
            await page.DrawnAnewAsync(() => page.GoToInnerAsync(place));
        await page.Locator("main h1").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>The same to one outside of any.</summary>
    public static async Task ShowOuterAsync(this IPage page, string place)
    {
        await page.DrawnAnewAsync(() => page.EvaluateAsync("place => Blazor.navigateTo('/' + place)", place));
        await page.Locator("main h1").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    private static async Task DrawnAnewAsync(this IPage page, Func<Task> go)
    {
        await page.EvaluateAsync("() => document.querySelectorAll('main > *').forEach(e => e.dataset.before = 'yes')");
        await go();
        await page.Locator("main > :not([data-before])").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>
    /// Takes in a record file: into its own casualty, or, where others are on the phone and it is nobody's known there, as another.
    /// </summary>
    public static async Task TakeInAsync(this IPage page, string name, byte[] file)
    {
        await page.GetByLabel("record file")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "application/jsonl",
                    Buffer = file,
                }
            );
        var another = page.Button("Another casualty: keep them apart");
        var take = page.Button("Take these entries in");
        var done = page.GetByRole(AriaRole.Link, new() { NameRegex = new("^To ") });
        await done.Or(another).Or(take).Or(page.GetByText("Nothing is new.")).First.WaitForAsync();
        if (await another.CountAsync() > 0)
            await another.TapAsync();
        var nothing = page.GetByText("Nothing is new.");
        await done.Or(take).Or(nothing).First.WaitForAsync();
        if (await nothing.CountAsync() > 0)
            return;
        if (await take.CountAsync() > 0)
            await take.TapAsync();
        await done.WaitForAsync();
    }

    /// <summary>Takes in a record file and opens its casualty.</summary>
    public static async Task TakeInAsync(this IPage page, RecordFile file)
    {
        await page.TakeInAsync(file.Alias + ".jsonl", file.Bytes);
        await page.EvaluateAsync(
            "alias => [...document.querySelectorAll('a')].find(a => a.textContent.includes(alias)).click()",
            file.Alias
        );
        await page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>To an address within the open casualty, without loading the app anew.</summary>
    public static Task GoToInnerAsync(this IPage page, string address) =>
        page.EvaluateAsync("address => Blazor.navigateTo(location.pathname.split('/').slice(0, 3).join('/') + '/' + address)", address);

    /// <summary>Counted by the mark that is on every screen, as long as nothing was exported.</summary>
    public static async Task SeeEntriesAsync(this IPage page, int count) =>
        await Assertions
            .Expect(
                page.GetByRole(
                    AriaRole.Button,
                    new() { NameRegex = new($"Only on this phone: {(count == 1 ? "1 entry" : $"{count} entries")}\\.") }
                )
            )
            .ToBeVisibleAsync();

    /// <summary>Waits until the app can start without network.</summary>
    public static async Task KeepOfflineAsync(this IPage page)
    {
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => null)");
        await page.WaitForPromisedAsync("() => caches.open('farhold-serving').then(c => c.match('current')).then(Boolean)");
    }

    /// <summary>
    /// Waits until what a function promises is true; <see cref="IPage.WaitForFunctionAsync"/> takes the promise itself for true.
    /// </summary>
    public static Task WaitForPromisedAsync(this IPage page, string function, object? argument = null) =>
        page.EvaluateAsync(
                $$"""
                async argument => {
                  while (!await ({{function}})(argument)) await new Promise(done => setTimeout(done, 50));
                }
                """,
                argument
            )
            .WaitAsync(TimeSpan.FromMilliseconds(Browser.PatienceMs));
}
