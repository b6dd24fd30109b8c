using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>Fast taps anywhere, with the phone turned over and over: nothing breaks, and the record stays whole.</summary>
public class ManyTapsTests(Browser browser) : PhoneTest(browser)
{
    private const int Taps = 500;

    [Fact]
    public async Task Five_hundred_fast_taps_anywhere_leave_an_app_that_works_and_a_whole_record()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        var now = Page.Url;
        await Page.EvaluateAsync("() => { window.print = () => {}; }");
        var luck = new Random(20);
        for (var tap = 0; tap < Taps; tap++)
        {
            if (tap % 50 == 0)
            {
                var upright = tap / 50 % 2 == 0;
                await Page.SetViewportSizeAsync(upright ? 360 : 740, upright ? 740 : 360);
                await Page.EvaluateAsync("to => Blazor.navigateTo(to)", now); // wherever the taps have led
            }
            var size = Page.ViewportSize!;
            await Page.Touchscreen.TapAsync(luck.Next(size.Width), luck.Next(size.Height));
        }

        // The record is read anew from what is stored, its chain is whole, and the next entry is logged as ever.
        await Page.SetViewportSizeAsync(360, 740);
        await Page.GotoAsync(now);
        await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await Assertions.Expect(Page.GetByText("does not fit")).ToHaveCountAsync(0);
        await Page.LogNoteAsync("Still here");
    }
}
