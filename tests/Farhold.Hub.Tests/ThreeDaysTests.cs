using System.Globalization;
using System.Text.Json;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>Three days of the demo's hut, on the phone: its record comes in day by day, with the clock set along it.</summary>
public class ThreeDaysTests(Browser browser) : PhoneTest(browser)
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(Published.Root, "demo", "hollvika.jsonl"));

    [Fact]
    public async Task From_the_release_through_the_nights_to_the_fever_the_plan_fits_the_casualty_and_stays_short()
    {
        await Page.ReadCautionsAsync("Mika");
        await GoToAsync("2033-06-07T08:05:00Z"); // 20:05 in the hut, three and a half hours after the release
        await Assertions.Expect(Page.Heading("After the release, right leg")).ToBeVisibleAsync();
        await Assertions
            .Expect(Page.Heading("Right leg: Too little urine after a long tourniquet: the kidneys may be failing."))
            .ToBeVisibleAsync();
        await ShortAsync();
        await NamePartyAsync("Mika", "Jon", "Runa");
        await LookAsync("release");

        await GoToAsync("2033-06-08T11:30:00Z"); // 23:30, the second night, stable
        await Assertions.Expect(Page.GetByText("Not known to be stable")).ToHaveCountAsync(0);
        await Assertions
            .Expect(Page.Heading("Right leg: Too little urine after a long tourniquet: the kidneys may be failing."))
            .ToHaveCountAsync(0);
        await Page.GetByText("Later: ").TapAsync();
        await Assertions.Expect(Later("Offer a drink")).ToContainTextAsync("with the change of watch");
        await Assertions.Expect(Later("Clean and wet mouth")).ToContainTextAsync("with the change of watch");
        await Assertions.Expect(Later("Take the signs again")).Not.ToContainTextAsync("with the change of watch");
        await Assertions.Expect(Later("turn them")).Not.ToContainTextAsync("with the change of watch");
        await ShortAsync();
        await LookAsync("night");

        await GoToAsync("2033-06-09T01:05:00Z"); // 13:05, the third day: nothing of the night waits any more
        await Assertions.Expect(Page.Heading("Infection, or sepsis.")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("with the change of watch")).ToHaveCountAsync(0);
        await ShortAsync();
        await LookAsync("fever");

        // A round of care, ticked and taken back.
        await GoToAsync("2033-06-09T05:30:00Z", until: "2033-06-09T03:00:00Z");
        await ShortAsync(most: 9);
        var due = await Page.Locator("li.due.overdue").CountAsync();
        Assert.True(due > 0);
        var tick = Page.Locator("li.due.overdue").GetByRole(AriaRole.Button, new() { NameRegex = new("^Done: ") }).First;
        await tick.TapAsync();
        await Assertions.Expect(Page.Locator("li.due.overdue")).ToHaveCountAsync(due - 1);
        await Page.Button("Undo").TapAsync();
        await Assertions.Expect(Page.Locator("li.due.overdue")).ToHaveCountAsync(due);
        await tick.TapAsync();
        await Assertions.Expect(Page.Locator("li.due.overdue")).ToHaveCountAsync(due - 1);
    }

    private ILocator Later(string task) => Page.Locator(".care-later li.due").Filter(new() { HasText = task });

    /// <summary>
    /// At most three tasks on the screen at once, and few behind them: what a tired person can read. Leaves all of them shown.
    /// </summary>
    private async Task ShortAsync(int most = 6)
    {
        Assert.True(await Page.Locator("section[aria-labelledby=care-title] > ol > li").CountAsync() <= 3);
        var more = Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Show .* more that are due") });
        if (await more.CountAsync() == 0)
            return;
        await more.TapAsync();
        Assert.True(await Page.Locator("section[aria-labelledby=care-title] > ol > li").CountAsync() <= most);
    }

    private async Task NamePartyAsync(params string[] names)
    {
        foreach (var name in names)
        {
            await Page.GetByRole(AriaRole.Textbox, new() { Name = "Name" }).FillAsync(name);
            await Page.Button("Add to the watch").TapAsync();
            await Page.Button($"Take out: {name}").WaitForAsync();
        }

        await Assertions.Expect(Page.GetByText("Mika has the watch until")).ToBeVisibleAsync();
    }

    private async Task LookAsync(string name)
    {
        await Page.NoAxeFaultAsync(name);
        if (Environment.GetEnvironmentVariable("FARHOLD_PICTURES") is { } folder)
            await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"sustain-{name}.png"), FullPage = true });
    }

    /// <summary>The phone's clock shows this instant, and the record has come in up to then, or only up to some time before.</summary>
    private async Task GoToAsync(string instant, string? until = null)
    {
        if (await Page.Link("All casualties").CountAsync() > 0)
            await Page.Link("All casualties").First.TapAsync();
        var at = DateTimeOffset.Parse(instant, CultureInfo.InvariantCulture);
        await Page.EvaluateAsync(
            "at => { window.trueNow ??= Date.now; const real = window.trueNow, ahead = at - real(); Date.now = () => real() + ahead; }",
            at.ToUnixTimeMilliseconds()
        );
        var last = until is null ? at : DateTimeOffset.Parse(until, CultureInfo.InvariantCulture);
        var lines = Lines.Where(l => Recorded(l) <= last).ToArray();
        await Page.TakeInAsync("hollvika.jsonl", System.Text.Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n"))));
        await Page.Link("Signe").First.TapAsync();
        await Page.GoToAsync("Care");
    }

    private static DateTimeOffset Recorded(string line)
    {
        using var json = JsonDocument.Parse(line);
        return json.RootElement.GetProperty("recorded").GetDateTimeOffset();
    }
}
