using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>"Bleeding again" is for an elbow: a third of the screen, and whatever touches it anywhere counts once.</summary>
public class BleedingZoneTests(Browser browser) : PhoneTest(browser)
{
    private const string Zone = ".bleeding-again";

    private bool began;

    [Theory]
    [InlineData(320, 640)]
    [InlineData(360, 640)]
    [InlineData(360, 740)]
    [InlineData(740, 360)]
    [InlineData(1280, 800)]
    public async Task It_is_the_lower_third_upright_and_the_last_third_on_its_side(int width, int height)
    {
        await Page.SetViewportSizeAsync(width, height);
        foreach (var scene in (string[])["pack", "hold", "slackening", "watch"])
        {
            await AtAsync(scene);
            var box = await BoxAsync();
            var (wide, high) = width > height && height < 480 ? (width / 3.0, (double)height) : (width, height / 3.0);
            Assert.InRange(box.Width, wide - 1, width);
            Assert.InRange(box.Height, high - 1, height);
            Assert.Equal(height, box.Y + box.Height, 1);
            Assert.Equal(width, box.X + box.Width, 1);
        }
    }

    /// <summary>
    /// 30 mm, as far as an elbow or a clenched hand lies on the glass, are some 189 px of 160 to the inch: three points of contact that
    /// come down one after the other, slide, and are lifted.
    /// </summary>
    [Fact]
    public async Task A_contact_of_30_mm_anywhere_in_it_counts_once()
    {
        await Page.SetViewportSizeAsync(360, 740);
        await AtAsync("watch");
        var box = await BoxAsync();
        var touch = await Phone.NewCDPSessionAsync(Page);
        var places = (
            from across in (double[])[0.05, 0.5, 0.95]
            from down in (double[])[0.06, 0.5, 0.94]
            select (X: box.X + (across * box.Width), Y: box.Y + (down * box.Height))
        ).ToList();
        foreach (var (x, y) in places)
        {
            await ElbowAsync(touch, x, y);
            await Page.Heading("TIGHTEN NOW").WaitForAsync();
            await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
            Assert.True(await Page.Heading("TIGHTEN NOW").IsVisibleAsync());
            await Page.Button("It does not bleed").TapAsync();
            await Page.Button("Oozing only").TapAsync();
            await Page.Locator(Zone).WaitForAsync();
            await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
        }

        await Page.GoToInnerAsync("log");
        await Page.GetByText("looked at: bleeding").First.WaitForAsync();
        Assert.Equal(places.Count, await Page.GetByText("looked at: bleeding").CountAsync());
    }

    private static async Task ElbowAsync(ICDPSession touch, double x, double y)
    {
        object Point(int id, double dx, double dy) =>
            new
            {
                id,
                x = x + dx,
                y = y + dy,
                radiusX = 94,
                radiusY = 94,
            };
        Task SendAsync(string type, params object[] points) =>
            touch.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = type, ["touchPoints"] = points });
        await SendAsync("touchStart", Point(0, 0, 0));
        await SendAsync("touchStart", Point(0, 0, 0), Point(1, 10, 4));
        await SendAsync("touchStart", Point(0, 0, 0), Point(1, 10, 4), Point(2, -9, 6));
        await SendAsync("touchMove", Point(0, 14, -6), Point(1, 12, -8), Point(2, -4, -2));
        await SendAsync("touchEnd");
    }

    private Task<Box> BoxAsync() =>
        Page.Locator(Zone).EvaluateAsync<Box>("e => (({ x, y, width, height }) => ({ x, y, width, height }))(e.getBoundingClientRect())");

    private async Task AtAsync(string scene)
    {
        if (began)
            await Page.EvaluateAsync("() => Blazor.navigateTo('/')");
        else
            await Page.ReadCautionsAsync();
        began = true;
        await Page.Heading("Casualties").WaitForAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == scene).File);
        await Page.GoToInnerAsync("attempt/left-leg");
        await Page.Locator(Zone).WaitForAsync();
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
    }

    private sealed class Box
    {
        public double X { get; set; }

        public double Y { get; set; }

        public double Width { get; set; }

        public double Height { get; set; }
    }
}
