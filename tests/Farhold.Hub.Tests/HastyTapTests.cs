using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>A second tap that was meant for a choice must not reach what lies beneath it.</summary>
public class HastyTapTests(Browser browser) : PhoneTest(browser)
{
    private static readonly bool[] Expected = [true, false, false, false, true, false, false, true];

    /// <summary>The rule alone, by a clock of its own.</summary>
    [Fact]
    public async Task A_tap_counts_only_once_what_came_is_painted_and_400_ms_are_over() =>
        Assert.Equal(
            Expected,
            await Page.EvaluateAsync<bool[]>(
                """
                async () => {
                  const { tapGuard } = await import('/taps.js');
                  const guard = tapGuard();
                  const told = [guard.counts(0)];
                  guard.replaced();
                  told.push(guard.counts(1000), guard.counts(60_000)); // however long it takes to paint
                  guard.painted(60_100);
                  told.push(guard.counts(60_499), guard.counts(60_500));
                  guard.replaced();                                    // two at once: the later paint counts
                  guard.replaced();
                  guard.painted(70_000);
                  told.push(guard.counts(71_000));
                  guard.painted(71_000);
                  told.push(guard.counts(71_120), guard.counts(71_400));
                  return told;
                }
                """
            )
        );

    /// <summary>The mark that taps do nothing must not stay where the timer that ends it comes too early.</summary>
    [Fact]
    public async Task A_timer_that_comes_too_early_leaves_no_picture_blind()
    {
        await Page.EvaluateAsync(
            """
            async () => {
              const { replaced } = await import('/taps.js');
              const real = setTimeout;
              window.setTimeout = (f, ms) => real(f, ms > 300 ? ms - 300 : ms);
              replaced();
            }
            """
        );
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
    }

    [Fact]
    public async Task Until_what_lay_beneath_a_choice_is_painted_a_tap_does_nothing_and_then_it_does()
    {
        var (x, y) = await OpenAsync();
        // The message of what was logged would lie where the finger is; what counts is the action beneath it.
        await Page.EvaluateAsync(
            "() => { const sheet = new CSSStyleSheet(); sheet.replaceSync('.toast { display: none }'); document.adoptedStyleSheets = "
                + "[sheet]; }"
        );
        // Nothing is painted: the moment stands still, and waiting for what is blind until then would never end.
        await Page.RemoveLocatorHandlerAsync(Page.Locator("html[data-blind]"));
        await Page.EvaluateAsync(
            "() => { const real = requestAnimationFrame; window.held = []; window.requestAnimationFrame = f => held.push(f); "
                + "window.paint = () => held.splice(0).forEach(f => real(f)); }"
        );
        await Page.Touchscreen.TapAsync(x, y);
        // not by painting
        await Page.WaitForFunctionAsync("() => !document.querySelector('[role=dialog]')", null, new() { PollingInterval = 50 });
        Assert.Matches(
            "^BUTTON in (quick|dock):",
            await Page.EvaluateAsync<string>(
                "([x, y]) => { const e = document.elementFromPoint(x, y).closest('button') ?? document.elementFromPoint(x, y); return "
                    + "`${e.tagName} in ${e.parentElement.className}: ${e.textContent}`; }",
                new double[] { x, y }
            )
        );
        await Page.Touchscreen.TapAsync(x, y);
        await Page.Touchscreen.TapAsync(x, y);
        Assert.Equal(0, await Page.GetByRole(AriaRole.Dialog).CountAsync());
        await Page.SeeEntriesAsync(2);

        await Page.EvaluateAsync("() => { window.requestAnimationFrame = f => setTimeout(f); paint(); }");
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
        await Page.Touchscreen.TapAsync(x, y);
        await Assertions.Expect(Page.GetByRole(AriaRole.Dialog)).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_double_tap_on_a_choice_is_one_entry_and_opens_nothing()
    {
        var (x, y) = await OpenAsync();
        await Page.EvaluateAsync(
            "() => { window.touches = []; addEventListener('touchstart', () => touches.push(document.documentElement.dataset.blind !== "
                + "undefined), true); }"
        );
        await Page.Touchscreen.TapAsync(x, y);
        await Page.WaitForTimeoutAsync(120);
        await Page.Touchscreen.TapAsync(x, y);
        await Page.SeeEntriesAsync(2);
        // On a machine that took longer than a hasty finger the second tap was no hasty one.
        var hasty = (await Page.EvaluateAsync<bool[]>("() => touches"))[1];
        if (hasty)
            Assert.Equal(0, await Page.GetByRole(AriaRole.Dialog).CountAsync());
    }

    /// <summary>Opens the choice of who can watch, and answers where its first option is; another quick action lies beneath it.</summary>
    private async Task<(float X, float Y)> OpenAsync()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.Button("Who can watch").Last.TapAsync();
        var option = Page.GetByRole(AriaRole.Dialog)
            .GetByRole(AriaRole.Button, new() { Name = "You or another can watch closely", Exact = true });
        await option.WaitForAsync();
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
        var box = (await option.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await Page.EvaluateAsync(
            """
            ([x, y]) => {
              const beneath = [...document.querySelectorAll('main .quick button')].map(b => b.getBoundingClientRect()).findLast(r => r.left < x && x < r.right);
              scrollBy(0, beneath.top + beneath.height / 2 - y);
            }
            """,
            new double[] { x, y }
        );
        return (x, y);
    }
}
