using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>The first look by touch, on a phone of 360 by 740: how many taps it takes, and that each step fits and can be left.</summary>
public class FirstLookStoryTests(Browser browser) : PhoneTest(browser)
{
    private int taps;

    [Fact]
    public async Task With_one_leg_that_bleeds_it_takes_fourteen_taps()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.Link("Start the first look").TapAsync();
        taps = 1;
        await TapAsync("An arm or a leg bleeds");
        await TapAsync("Left leg");
        await TapAsync("Tourniquet on; it stopped");
        await TapAsync("Nothing else bleeds");
        await TapAsync("Airway is free");
        await TapAsync("Looked: nothing, breathing is easy");
        await TapAsync("Strong; skin warm, dry and pink");
        await TapAsync("Dry and warm");
        await TapAsync("Awake and clear, nothing on the head");
        await TapAsync("Looked: nothing, not pregnant");
        await TapAsync("Asked: none of these");
        await TapAsync("Fall");
        await TapAsync("Within 10 minutes");
        await Page.Heading("First look done").WaitForAsync();
        Assert.Equal(14, taps);
        await Page.Link("To Now").TapAsync();
        await Page.GetByRole(AriaRole.Heading, new() { NameRegex = new("^LEFT leg:") }).WaitForAsync();
        await Assertions.Expect(Page.Link("Go on with the first look")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Left_in_the_middle_it_is_resumed_where_it_was_after_a_restart()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.Link("Start the first look").TapAsync();
        await TapAsync("Looked: nothing bleeds");
        await TapAsync("Noisy or blocked");
        await Page.Locator("main").GetByText("lift the chin").WaitForAsync();
        await Page.ReloadAsync();
        await Page.GetByText("whole bare chest").WaitForAsync();
        await Page.Link("Pause the look").TapAsync();
        await Page.Locator("main").GetByText("The airway is not free.").First.WaitForAsync();
        await Page.Link("Go on with the first look").TapAsync();
        await Page.GetByText("whole bare chest").WaitForAsync();
    }

    private async Task TapAsync(string answer)
    {
        await Page.Button(answer).TapAsync();
        taps++;
    }
}
