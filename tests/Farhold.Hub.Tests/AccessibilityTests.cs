using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class AccessibilityTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task No_screen_has_a_fault_that_axe_can_find_or_lacks_contrast_by_day()
    {
        await foreach (var name in Screens.EachAsync(Page, "night"))
        {
            await Page.NoAxeFaultAsync(name);
            // The looks differ in nothing but colour.
            await Page.InLookAsync("day", () => Page.NoAxeFaultAsync(name + " by day", "color-contrast"));
        }
    }

    /// <summary>Started by day, since the limb line takes its colours where it is drawn.</summary>
    [Fact]
    public async Task The_limb_line_has_no_fault_by_day_either()
    {
        await Page.EvaluateAsync("() => localStorage.setItem('farhold-look', 'day')");
        await Page.ReloadAsync();
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "watch").File);
        foreach (var place in Screens.Places)
        {
            await Page.GoToAsync(place);
            await Page.NoAxeFaultAsync(place);
        }
    }

    /// <summary>Else no screen could fail.</summary>
    [Fact]
    public async Task A_button_without_a_name_and_grey_on_grey_are_faults()
    {
        var page = await Phone.NewPageAsync();
        await page.SetContentAsync("<main><h1>A</h1><button></button><p style='color: #777; background: #888'>grey words</p></main>");
        Assert.Contains(await page.AxeFaultsAsync(), f => f.StartsWith("button-name <button", StringComparison.Ordinal));
        Assert.StartsWith("color-contrast <p", Assert.Single(await page.AxeFaultsAsync("color-contrast")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task At_200_percent_nothing_is_cut_off_sideways()
    {
        // Zoom to 200 % halves the width that the page has.
        await Page.SetViewportSizeAsync(180, 370);
        await foreach (var name in Screens.EachAsync(Page, "night"))
        {
            var wide = await Page.EvaluateAsync<string[]>(
                """
                () => [...document.querySelectorAll('#app *')].filter(e => e.checkVisibility() && e.getBoundingClientRect().right > innerWidth + 1
                    && !e.parentElement.closest('[role=region][tabindex="0"]')) // a table that scrolls within its own frame
                  .map(e => e.outerHTML.slice(0, 90))
                """
            );
            Assert.True(wide.Length == 0, name + ": " + string.Join("; ", wide));
        }
    }

    [Fact]
    public async Task By_keyboard_alone_a_note_is_logged_and_the_focus_is_seen()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await TabToAsync("Every other entry");
        await Page.Keyboard.PressAsync("Enter");
        await Page.Heading("Make an entry").WaitForAsync();
        await TabToAsync("Note");
        await Page.Keyboard.PressAsync("Enter");
        await Page.Heading("Note").WaitForAsync();
        for (var presses = 0; presses < MostPresses && await FocusedAsync("e => e.tagName") != "TEXTAREA"; presses++)
            await Page.Keyboard.PressAsync("Tab");
        await Page.Keyboard.TypeAsync("Typed without touch");
        Assert.NotEqual("none", await FocusedAsync("e => getComputedStyle(e).outlineStyle"));
        await TabToAsync("Log entry");
        await Page.Keyboard.PressAsync("Enter");
        await Page.SeeEntriesAsync(2);
    }

    [Fact]
    public async Task On_a_wide_screen_the_next_step_does_not_lie_over_what_was_just_logged()
    {
        await Page.SetViewportSizeAsync(1024, 768);
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync(); // ends with a tap on the message
        await Page.SeeEntriesAsync(2);
    }

    [Fact]
    public async Task By_keyboard_alone_the_focus_comes_back_to_what_opened_a_choice()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        var choice = Page.GetByRole(AriaRole.Dialog);

        await TabToAsync("Surgery or clinic: when");
        await Page.Keyboard.PressAsync("Enter");
        await choice.WaitForAsync();
        await Page.Keyboard.PressAsync("Escape");
        await SeeFocusAsync("Surgery or clinic: when");

        await Page.Keyboard.PressAsync("Enter");
        await choice.WaitForAsync();
        await TabToAsync("✕");
        await Page.Keyboard.PressAsync("Space");
        await SeeFocusAsync("Surgery or clinic: when");

        await Page.Keyboard.PressAsync("Enter");
        await choice.WaitForAsync();
        await TabToAsync("Surgery within 4 h");
        await Page.Keyboard.PressAsync("Enter");
        await Page.SeeEntriesAsync(2);
        await SeeFocusAsync("Surgery or clinic: when");

        // What opened it says something else by now: the heading of the place is the safe ground.
        await TabToAsync("Note");
        await Page.Keyboard.PressAsync("Enter");
        await choice.WaitForAsync();
        await Page.EvaluateAsync(
            "() => [...document.querySelectorAll('main .quick button')].find(b => b.textContent.trim() === "
                + "'Note').replaceChildren('Something else')"
        );
        await Page.Keyboard.PressAsync("Escape");
        await SeeFocusAsync("Now");
    }

    private async Task SeeFocusAsync(string name) =>
        await Page.WaitForFunctionAsync(
            "name => !document.querySelector('[role=dialog]') && document.activeElement.matches('button, h1') && "
                + "document.activeElement.textContent.trim() === name",
            name
        );

    private const int MostPresses = 80;

    private async Task TabToAsync(string name)
    {
        // By the name that is shown, or, where more stands on it, by the name that is read out.
        var named = $"e => e.textContent.trim() === '{name}' ? '{name}' : e.getAttribute('aria-label') ?? e.textContent.trim()";
        for (var presses = 0; presses < MostPresses && await FocusedAsync(named) != name; presses++)
            await Page.Keyboard.PressAsync("Tab");
        Assert.Equal(name, await FocusedAsync(named));
    }

    private Task<string> FocusedAsync(string ask) => Page.EvaluateAsync<string>($"() => ({ask})(document.activeElement)");
}
