using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class FirstStartTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task By_touch_a_new_carer_comes_from_the_cautions_to_the_first_entry()
    {
        await Assertions.Expect(Page.GetByText("Get help first.")).ToBeVisibleAsync();
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.SeeEntriesAsync(1);
        await Page.LogNoteAsync("Fell from the scree, left leg bleeding");
        await Page.SeeEntriesAsync(2);
    }

    [Fact]
    public async Task Practice_is_written_in_every_header_and_in_the_file()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Doll", practice: true);
        foreach (var place in Screens.Places)
        {
            await Page.GoToAsync(place);
            await Assertions.Expect(Page.GetByRole(AriaRole.Banner)).ToContainTextAsync("PRACTICE");
        }
        await Page.GoToAsync("Hand over");
        var download = await Page.RunAndWaitForDownloadAsync(() => Page.Button("Save the record file").TapAsync());
        Assert.StartsWith("PRACTICE-farhold-Doll-", download.SuggestedFilename, StringComparison.Ordinal);
        var lines = await File.ReadAllLinesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.All(lines, line => Assert.Contains("\"practice\":true", line, StringComparison.Ordinal));
        Assert.NotEmpty(lines);
    }

    [Fact]
    public async Task Every_thing_to_press_is_56_pixels_or_more_both_ways()
    {
        await Page.ReadCautionsAsync();
        await AssertBigAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.OpenNoteAsync();
        await Page.ChooseAsync("Between … and …");
        await Page.ChooseAsync("By the clock");
        await Page.GetByRole(AriaRole.Group, new() { Name = "Not before" }).WaitForAsync();
        await AssertBigAsync();
        await Page.ChooseAsync("10 min ago"); // puts the keys away, for which the places made room
        foreach (var place in Screens.Places)
        {
            await Page.GoToAsync(place);
            await AssertBigAsync();
        }
    }

    private async Task AssertBigAsync()
    {
        var small = await Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, a, input, textarea')].filter(e => e.checkVisibility())
              .map(e => [e.outerHTML.slice(0, 80), e.getBoundingClientRect()])
              .filter(([, r]) => r.width < 56 || r.height < 56).map(([html, r]) => `${html} ${r.width} x ${r.height}`)
            """
        );
        Assert.Empty(small);
    }
}
