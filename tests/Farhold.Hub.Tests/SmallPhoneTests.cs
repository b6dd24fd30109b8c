using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>What a carer has to see on a phone of 360 × 640.</summary>
public class SmallPhoneTests(Browser browser) : PhoneTest(browser)
{
    protected override BrowserNewContextOptions Kind =>
        new(base.Kind)
        {
            ViewportSize = new() { Width = 360, Height = 640 },
        };

    [Fact]
    public async Task The_message_of_what_was_logged_is_no_higher_than_its_button()
    {
        await StartAsync();
        await Page.Button("Bleeding now?").Last.TapAsync();
        await Page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = "Bleeding", Exact = true }).TapAsync();
        await Page.GetByText("Logged:").WaitForAsync();
        Assert.InRange(await Page.Locator(".toast").EvaluateAsync<double>("e => e.getBoundingClientRect().height"), 56, 72);
        Assert.True(await Page.Locator(".toast p").EvaluateAsync<bool>("e => e.scrollHeight <= e.clientHeight"), "the message is cut");
    }

    [Fact]
    public async Task What_is_typed_is_in_sight_and_every_part_of_the_signs_begins_in_sight()
    {
        await StartAsync();
        await Page.GoToAsync("Signs");
        await Page.Link("Take signs").TapAsync();
        foreach (var key in (string[])["9", "0"])
            await Page.Button(key).TapAsync();
        await SeeAsync(Page.GetByRole(AriaRole.Group, new() { Name = "Pulse", Exact = true }).GetByRole(AriaRole.Status));
        foreach (var next in (string[])["Breathing", "Mental state", "Skin and dizziness", "Pulse at the wrist"])
        {
            await Page.Button("Next: " + next).TapAsync();
            await Page.GetByRole(AriaRole.Region, new() { Name = next, Exact = true }).WaitForAsync();
            await SeeAsync(Page.Heading("Take signs"));
            if (next == "Skin and dizziness")
                await Page.GetByRole(AriaRole.Group, new() { Name = "Dizzy or faint", Exact = true })
                    .GetByRole(AriaRole.Radio, new() { Name = "No", Exact = true })
                    .TapAsync();
        }
    }

    [Fact]
    public async Task What_goes_on_with_an_earlier_time_is_in_sight_as_soon_as_the_time_is_typed()
    {
        await StartAsync();
        await Page.Button("Tourniquet tightened").Last.TapAsync();
        var sheet = Page.GetByRole(AriaRole.Dialog);
        await Page.ChooseAsync("Clock time");
        await SeeAsync(sheet.GetByRole(AriaRole.Button, new() { Name = "1", Exact = true }));
        foreach (var key in (string[])["0", "0", "0", "5"])
            await sheet.GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).TapAsync();
        await SeeAsync(sheet.GetByRole(AriaRole.Button, new() { NameRegex = new("^Go on: it happened at") }));
    }

    [Fact]
    public async Task Why_nothing_is_logged_is_in_sight()
    {
        await StartAsync();
        await Page.GoToInnerAsync("enter/advice.received");
        await Page.Button("Log entry").TapAsync();
        await SeeAsync(Page.Locator(".dock [role=alert]"));
        await Page.GoToInnerAsync("signs/take");
        await Page.Heading("Take signs").WaitForAsync();
        foreach (var key in (string[])["9", "2", "0"])
            await Page.Button(key).TapAsync();
        await SeeAsync(Page.GetByText("Possible: 0 to 350 /min"));
    }

    private async Task StartAsync()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        await Page.Button("Wound found").First.TapAsync();
        await Page.GetByRole(AriaRole.Dialog)
            .GetByRole(AriaRole.Group, new() { Name = "Bleeding", Exact = true })
            .GetByRole(AriaRole.Button, new() { Name = "Left leg", Exact = true })
            .TapAsync();
        await Page.Button("Close this message").TapAsync();
    }

    /// <summary>Wholly on the screen and under nothing else; a round corner shows what is behind it.</summary>
    private static async Task SeeAsync(ILocator shown) =>
        Assert.True(
            await shown.EvaluateAsync<bool>(
                """
                async e => {
                  await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
                  const r = e.getBoundingClientRect();
                  return [[r.left + 4, r.top + 4], [r.right - 4, r.bottom - 4]].every(([x, y]) => {
                    const hit = document.elementFromPoint(x, y);
                    return hit && (e.contains(hit) || hit.contains(e));
                  });
                }
                """
            )
        );
}
