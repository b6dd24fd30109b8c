using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>A tablet or a desk has room for what is to be done now beside the place that is looked at.</summary>
public class TwoPanesTests(Browser browser) : PhoneTest(browser)
{
    private const string Beside = "aside.beside";

    [Fact]
    public async Task Now_stands_beside_every_other_place_and_can_be_acted_on_there()
    {
        await Page.SetViewportSizeAsync(1280, 800);
        await OpenAsync();
        Assert.Equal(0, await Page.Locator(Beside).CountAsync());
        foreach (var place in (string[])["Casualty", "Care", "Way out", "Hand over"])
        {
            await Page.GoToAsync(place);
            await Page.Locator(Beside).GetByText("Try to convert").First.WaitForAsync();
            Assert.Empty(
                await Page.EvaluateAsync<string[]>(
                    """
                    () => {
                      const box = s => document.querySelector(s).getBoundingClientRect();
                      const [beside, main] = [box('aside.beside'), box('main')];
                      const faults = [];
                      if (beside.right > main.left + 0.5) faults.push(`pane to ${beside.right}, place from ${main.left}`);
                      if (document.documentElement.scrollWidth > innerWidth) faults.push('scrolls sideways');
                      if (main.right > innerWidth + 0.5) faults.push('the place is cut');
                      return faults;
                    }
                    """
                )
            );
        }

        await Page.Locator(Beside)
            .GetByRole(AriaRole.Button, new() { Name = "Start the attempt" })
            .Or(Page.Locator($"{Beside} > .act"))
            .First.TapAsync();
        await Page.Locator(".attempt-live").WaitForAsync();
        Assert.Equal(0, await Page.Locator(Beside).CountAsync());
    }

    [Fact]
    public async Task A_window_drawn_narrow_has_one()
    {
        await Page.SetViewportSizeAsync(1280, 800);
        await OpenAsync();
        await Page.GoToAsync("Care");
        await Page.Locator(Beside).WaitForAsync();
        await Page.SetViewportSizeAsync(1000, 800);
        await Page.Locator(Beside).WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    [Fact]
    public async Task Back_closes_a_choice_and_leaves_the_place_as_it_was()
    {
        await OpenAsync();
        await Page.Button("Bleeding now?").TapAsync();
        await Page.GetByRole(AriaRole.Dialog).WaitForAsync();
        await Page.GoBackAsync();
        await Page.GetByRole(AriaRole.Dialog).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.EndsWith("/now", new Uri(Page.Url).AbsolutePath, StringComparison.Ordinal);
        await Page.Button("Bleeding now?").TapAsync();
        await Page.GetByRole(AriaRole.Dialog).WaitForAsync();
    }

    private async Task OpenAsync()
    {
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "start").File);
        await Page.GoToAsync("Now");
    }
}
