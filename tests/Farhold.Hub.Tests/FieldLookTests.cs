using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>What hand and eye need: how much room the content has, and how large what is read from
/// the ground is.</summary>
public class FieldLookTests(Browser browser) : PhoneTest(browser)
{
    /// <summary>Design: of the height of a phone, from 360 by 640 up.</summary>
    private const double LeastShare = 0.72;

    private static readonly (int Width, int Height)[] Phones = [(360, 640), (360, 740), (390, 844)];

    /// <summary>
    /// A casualty whose tourniquet is tight and one whose wound is watched, at every place and view. What is said above a place scrolls
    /// with it: only head and foot stay.
    /// </summary>
    [Theory]
    [InlineData("start")]
    [InlineData("watch")]
    public async Task The_content_has_nearly_three_quarters_of_the_height_at_every_place(string scene)
    {
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == scene).File);
        foreach (var place in Screens.Places)
        {
            await Page.GoToAsync(place);
            foreach (var (width, height) in Phones)
            {
                await Page.SetViewportSizeAsync(width, height);
                var taken = await Page.EvaluateAsync<double>(
                    """
                    () => [...document.querySelectorAll('.head, .foot')]
                      .filter(e => e.checkVisibility()).reduce((sum, e) => sum + e.getBoundingClientRect().height, 0)
                    """
                );
                Assert.True(1 - (taken / height) >= LeastShare, $"{place} at {width} x {height}: {taken} px are not content");
            }
        }
    }

    /// <summary>28 px for what is read from the ground, 40 px for clocks (character heights by ISO 9241-3), nothing cut sideways.</summary>
    [Fact]
    public async Task The_answer_and_its_clock_are_large_and_in_sight_without_scrolling()
    {
        await Page.SetViewportSizeAsync(360, 640);
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "start").File);
        await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var foot = (await Page.Locator(".foot").BoundingBoxAsync())!.Y;
        foreach (var (part, least) in ((string, double)[])[(".answer .say", 28), (".answer .clock", 40), (".answer .why", 18)])
        {
            var shown = Page.Locator(part).First;
            Assert.InRange(await shown.EvaluateAsync<double>("e => parseFloat(getComputedStyle(e).fontSize)"), least, 64);
            var box = (await shown.BoundingBoxAsync())!;
            Assert.True(
                box.Y >= 48 && box.Y + box.Height <= foot && box.X + box.Width <= 360,
                $"{part}: {box.Y} to {box.Y + box.Height}, foot at {foot}"
            );
        }
        Assert.InRange((await Page.Locator(".head").BoundingBoxAsync())!.Height, 48, 48);
        Assert.Equal(5, await Page.Locator(".places a").CountAsync());
        var rows = await Page.EvaluateAsync<double[]>(
            "() => [...document.querySelectorAll('.places a')].map(e => e.getBoundingClientRect().top)"
        );
        Assert.Single(rows.Distinct());
    }

    /// <summary>One finger at a time: no two things to press share more than a corner, and each takes a thumb.</summary>
    [Fact]
    public async Task Every_limb_and_region_of_the_figure_takes_a_thumb_and_is_reached_where_it_is_drawn()
    {
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "start").File);
        await Page.GoToAsync("Casualty");
        foreach (var (width, height) in Phones)
        {
            await Page.SetViewportSizeAsync(width, height);
            var faults = await Page.EvaluateAsync<string[]>(
                """
                () => [...document.querySelectorAll('.zone')].flatMap(e => {
                  e.scrollIntoView({ block: 'center' });
                  const r = e.getBoundingClientRect();
                  const hit = document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2);
                  const name = e.getAttribute('aria-label');
                  return [r.width < 56 || r.height < 56 ? `${name} is ${r.width} x ${r.height}` : null,
                    e.contains(hit) ? null : `${name} is covered by ${hit?.outerHTML.slice(0, 60)}`].filter(Boolean);
                })
                """
            );
            Assert.Empty(faults);
        }
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = new("RIGHT arm") }).TapAsync();
        Assert.Equal("RIGHT arm", await Page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Heading).First.TextContentAsync());
    }

    /// <summary>To attempt, to watch, to tighten at once: by shape alone they are told apart.</summary>
    [Fact]
    public async Task Answers_that_differ_have_shapes_that_differ()
    {
        await Page.ReadCautionsAsync();
        var shapes = new HashSet<string>();
        foreach (var name in (string[])["start", "watch", "bleeding-again"])
        {
            await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == name).File);
            shapes.Add(await Page.Locator(".answer .say svg").First.EvaluateAsync<string>("e => e.innerHTML"));
            await Page.Link("All casualties").TapAsync();
            await Page.Heading("Casualties").WaitForAsync();
        }
        Assert.Equal(3, shapes.Count);
    }
}
