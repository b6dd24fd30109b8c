using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>Drink, drugs, supplies, preparing and the battery by touch, on a phone of 360 × 740.</summary>
public class PackTests(Browser browser) : PhoneTest(browser)
{
    /// <summary>
    /// What saves the battery also draws otherwise, so the app is started in it; by day and by night it only has other colours.
    /// </summary>
    [Theory]
    [InlineData("night")]
    [InlineData("saving")]
    public async Task Its_screens_have_no_fault_that_axe_can_find_and_nothing_too_small_to_touch(string look)
    {
        await Page.EvaluateAsync("look => localStorage.setItem('farhold-look', look)", look);
        await Page.ReloadAsync();
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await foreach (var name in PackScenes.EachAsync(Page))
            await LookAsync($"{look}-{name}");
        await Page.Link("All casualties").TapAsync();
        await foreach (var name in PackScenes.PrepareAsync(Page))
            await LookAsync($"{look}-{name}");
    }

    [Fact]
    public async Task A_drink_and_a_count_are_there_again_after_a_start_without_network()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.KeepOfflineAsync();
        Expect("ERR_INTERNET_DISCONNECTED");
        await Phone.SetOfflineAsync(true);
        await Page.OpenPackAsync("Supplies");
        await Page.Link("Count the pack").TapAsync();
        await Page.Button("More: Drinking water").TapAsync();
        await Page.Button("Log counts: 1").TapAsync();
        await Assertions.Expect(Page.GetByText("0.5 L;")).ToBeVisibleAsync();
        await Page.Button("Close this message").TapAsync();
        await Page.Link("Fluids").TapAsync();
        await Page.GetByRole(AriaRole.Group, new() { Name = "Drank water" })
            .GetByRole(AriaRole.Button, new() { Name = "200 mL" })
            .TapAsync();
        await Assertions.Expect(Page.GetByText("Logged: Given 200 mL")).ToBeVisibleAsync();
        await Page.ReloadAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Row, new() { Name = "in all" })).ToContainTextAsync("200 mL");
        await Page.Link("Supplies").TapAsync();
        await Assertions.Expect(Page.GetByText("0.3 L;")).ToBeVisibleAsync();
    }

    private async Task LookAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_PICTURES") is { Length: > 0 } folder)
            await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        await NoFaultAsync(name);
        await Page.InLookAsync("day", () => NoFaultAsync(name + " by day"));
    }

    private async Task NoFaultAsync(string name)
    {
        await Page.NoAxeFaultAsync(name);
        var small = await Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('main button, main a.button, main summary, main input[type=text]')]
              .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 55.5).map(e => e.outerHTML.slice(0, 90))
            """
        );
        Assert.True(small.Length == 0, name + ": " + string.Join("; ", small));
    }
}
