using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>
/// A casualty from the cautions to the hand-over with Tab, the arrows, Enter and Escape alone. At each stop the focus is seen, and what
/// a screen reader says there has a name (WCAG 2.2, 2.1.1, 2.4.7 and 4.1.2).
/// </summary>
public class KeyboardTests(Browser browser) : PhoneTest(browser)
{
    private const int MostStops = 150;

    [Fact]
    public async Task The_whole_way_is_walked_without_a_finger()
    {
        await PressAsync("I have read this");
        await TabToAsync("Your name");
        await Page.Keyboard.TypeAsync("Ane");
        await PressAsync("Go on");
        await PressAsync("New casualty");
        await TabToAsync("What do you call the casualty?");
        await Page.Keyboard.TypeAsync("Tor");
        await PressAsync("Open the record");
        await Page.SeeEntriesAsync(1);

        // The sheet takes the focus, keeps it, and Escape gives it back.
        await PressAsync("Tourniquet tightened");
        var sheet = Page.GetByRole(AriaRole.Dialog);
        await sheet.WaitForAsync();
        Assert.True(await sheet.EvaluateAsync<bool>("e => e.contains(document.activeElement)"));
        await Page.Keyboard.PressAsync("Escape");
        await sheet.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Equal("Tourniquet tightened", await FocusedAsync());

        await PressAsync("Tourniquet tightened");
        await TabToAsync("Now");
        for (var chip = 0; chip < 5; chip++) // 5, 10, 15, 30, 40 minutes ago
            await Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(sheet.GetByRole(AriaRole.Radio, new() { Name = "40 min ago", Exact = true })).ToBeCheckedAsync();
        await PressAsync("Tightened (t1)", within: "Left leg");
        await Page.SeeEntriesAsync(2);

        await PressAsync("Wound found");
        await PressAsync("Left leg", within: "Bleeding");
        await Page.SeeEntriesAsync(3);
        await PressAsync("Bleeding now?");
        await PressAsync("None");
        await Page.SeeEntriesAsync(4);
        await Assertions
            .Expect(Page.Locator("main").GetByRole(AriaRole.Heading, new() { NameRegex = new("LEFT leg: ") }))
            .ToBeVisibleAsync();

        await PressAsync("Hand over", link: true);
        await Page.Heading("Hand over").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await PressAsync("Log", link: true);
        await Page.Heading("Log").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await PressAsync("Change: Tourniquet t1");
        await PressAsync("Withdraw");
        await TabToAsync("Entered twice");
        await Page.Keyboard.PressAsync("Space");
        await PressAsync("Withdraw the entry");
        await Page.SeeEntriesAsync(5);
    }

    /// <summary>Goes on from stop to stop until one begins with these words, and presses Enter there.</summary>
    private async Task PressAsync(string name, string? within = null, bool link = false)
    {
        await TabToAsync(name, within, link);
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
        await Page.Keyboard.PressAsync("Enter");
    }

    private async Task TabToAsync(string name, string? within = null, bool link = false)
    {
        var passed = new List<string>();
        await Page.WaitForFunctionAsync(
            """
            name => [...document.querySelectorAll('a, button, input, textarea, label, legend')]
              .some(e => (e.getAttribute('aria-label') ?? e.textContent).trim().startsWith(name))
            """,
            name
        );
        while (passed.Count < MostStops)
        {
            await Page.Keyboard.PressAsync("Tab");
            var stop = await FocusedAsync();
            if (stop is null)
                continue; // past the last one, out of the page
            Assert.NotEqual("", stop);
            Assert.True(await SeenAsync(), $"The focus on '{stop}' is not seen.");
            passed.Add(stop);
            if (!stop.StartsWith(name, StringComparison.Ordinal))
                continue;
            if (within is not null && await GroupAsync() != within)
                continue;
            if (!link || await Page.EvaluateAsync<bool>("() => document.activeElement.tagName === 'A'"))
                return;
        }
        Assert.Fail($"'{name}' was not reached: {string.Join(" | ", passed)}");
    }

    /// <summary>The name of what has the focus; null where it is the page itself, or only turns the focus round.</summary>
    private Task<string?> FocusedAsync() =>
        Page.EvaluateAsync<string?>(
            """
            () => {
              const e = document.activeElement;
              if (!e || e === document.body || e.classList.contains('turn')) return null;
              const label = e.getAttribute('aria-label')
                ?? (e.getAttribute('aria-labelledby') ?? '').split(' ').map(id => document.getElementById(id)?.textContent ?? '')
                  .join(' ').trim();
              return (label || (e.labels?.length ? e.labels[0].textContent : e.textContent)).replaceAll('\u00ad', '').trim();
            }
            """
        );

    private Task<string?> GroupAsync() =>
        Page.EvaluateAsync<string?>(
            """
            () => {
              const group = document.activeElement.closest('[role=group], fieldset');
              return group?.getAttribute('aria-label') ?? group?.querySelector('legend, h3')?.textContent.trim();
            }
            """
        );

    /// <summary>Outlined, by itself or, as a radio is, by the label that it stands in.</summary>
    private Task<bool> SeenAsync() =>
        Page.EvaluateAsync<bool>(
            """
            () => {
              const e = document.activeElement;
              const outlined = x => x && getComputedStyle(x).outlineStyle !== 'none' && parseFloat(getComputedStyle(x).outlineWidth) > 0;
              return [e, e.nextElementSibling, e.closest('label')].some(outlined);
            }
            """
        );
}
