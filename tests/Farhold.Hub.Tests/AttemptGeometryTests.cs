using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>On every step of an attempt nothing covers what can be pressed or has to be read, and the alarm is in reach.</summary>
public class AttemptGeometryTests(Browser browser) : PhoneTest(browser)
{
    private double minutesAhead;

    /// <summary>Small and usual phones, upright and on their side; and the same at 200 % zoom, which halves what the page has.</summary>
    public static TheoryData<int, int> Sizes =>
        new()
        {
            { 360, 640 },
            { 360, 740 },
            { 740, 360 },
            { 180, 320 },
            { 180, 370 },
            { 370, 180 },
        };

    [Theory, MemberData(nameof(Sizes))]
    public async Task Step_by_step_the_instruction_comes_into_sight_and_nothing_is_covered(int width, int height)
    {
        await Page.SetViewportSizeAsync(width, height);
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "start").File);
        await Page.GoToInnerAsync("attempt/left-leg");

        await LookAsync("Start the attempt", "start");
        await StepAsync("Start the attempt");
        await LookAsync("Packed: haemostatic gauze", "pack");
        await StepAsync("Packed: haemostatic gauze");
        await LookAsync("Let go or soaked: pack again", "hold");
        await PassAsync(4);
        var held = Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Log .* min of pressure$") });
        await LookAsync(held, "held");
        await StepAsync(held);
        await LookAsync("Pressure dressing is on", "dress");
        await StepAsync("Pressure dressing is on");
        await LookAsync("Oozing only: start to slacken", "slacken");
        await StepAsync("Oozing only: start to slacken");
        await LookAsync(Page.GetByText("left, slowly"), "slackening");
        await PassAsync(2);
        await LookAsync("It is loose, still around the limb", "slackened");
        await StepAsync("It is loose, still around the limb");
        await LookAsync(Page.GetByText("left to watch without a break"), "watch");
        await StepAsync("BLEEDING AGAIN");
        await LookAsync("It is tight now", "tighten");
        await StepAsync("It does not bleed");
        await StepAsync("Oozing only");
        await PassAsync(16);
        await LookAsync("Oozing only: it has held", "watched");
        await StepAsync("Oozing only: it has held");
        await LookAsync(Page.GetByText("Last attempt: it held"), "held-on");
    }

    /// <summary>The clock stands still at each moment, so that every size is shown the same one, however long a look takes.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public async Task At_each_of_its_moments_nothing_is_covered_at_any_size(int zoom)
    {
        await Page.ReadCautionsAsync();
        foreach (var (name, file, shown) in AttemptScenes.All())
        {
            await Page.EvaluateAsync("() => { window.trueNow ??= Date.now; const still = window.trueNow(); Date.now = () => still; }");
            await Page.TakeInAsync(file);
            foreach (var (width, height) in ((int, int)[])[(360, 640), (360, 740), (740, 360)])
            {
                await Page.SetViewportSizeAsync(width / zoom, height / zoom);
                await Page.GoToInnerAsync("attempt/left-leg");
                await LookAsync(Page.GetByText(shown).First, "at-" + name);
                await Page.GoToInnerAsync("reminders");
                await Page.Heading("Reminders").WaitForAsync();
            }

            await Page.EvaluateAsync("() => Blazor.navigateTo('/')");
            await Page.Heading("Casualties").WaitForAsync();
        }
    }

    // Over what scrolls a new step appears at its beginning, also where motion is not wanted: it does not glide there.
    [Theory]
    [InlineData(ReducedMotion.Reduce)]
    [InlineData(ReducedMotion.NoPreference)]
    public async Task A_new_step_is_there_in_one_jump(ReducedMotion motion)
    {
        await Page.EmulateMediaAsync(new() { ReducedMotion = motion });
        await Page.SetViewportSizeAsync(360, 640);
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "pack").File);
        await Page.GoToInnerAsync("attempt/left-leg");
        await Page.Button("Packed: cloth").WaitForAsync();
        await Page.EvaluateAsync(
            """
            () => {
              const view = document.querySelector('.view');
              view.scrollTop = 1e6;
              window.places = [view.scrollTop];
              view.addEventListener('scroll', () => { if (places.at(-1) !== view.scrollTop) places.push(view.scrollTop); });
            }
            """
        );
        await StepAsync("Packed: cloth");
        await Page.GetByText("left to press").WaitForAsync();
        await Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        var places = await Page.EvaluateAsync<double[]>("() => places");
        Assert.Equal(2, places.Length);
        Assert.Empty(await Page.OutOfSightAsync(".step-text"));
        Assert.Equal("step-text", await Page.EvaluateAsync<string>("() => document.activeElement.className"));
    }

    [Fact]
    public async Task The_message_of_what_was_logged_is_one_line_and_moves_nothing()
    {
        await Page.SetViewportSizeAsync(360, 640);
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(AttemptScenes.All().First(s => s.Name == "watch").File);
        await Page.GoToInnerAsync("attempt/left-leg");
        await Page.GetByText("left to watch without a break").WaitForAsync();
        const string places =
            "() => [...document.querySelectorAll('main h1, main h2, main button, .bleeding-again')].map(e => e.textContent.trim() + "
            + "e.getBoundingClientRect().top)";
        var before = await Page.EvaluateAsync<string[]>(places);
        await Page.Button("No bleeding").EvaluateAsync("e => e.click()"); // from where the carer is: nothing is scrolled
        await Page.Locator(".toast").WaitForAsync();
        Assert.Equal(before, await Page.EvaluateAsync<string[]>(places));
        Assert.InRange(await Page.Locator(".toast").EvaluateAsync<double>("e => e.getBoundingClientRect().height"), 56, 72);
        await NothingIsCoveredAsync("watch-toast");
    }

    private Task LookAsync(string button, string name) => LookAsync(Page.Button(button), name);

    private async Task LookAsync(ILocator shown, string name)
    {
        await shown.WaitForAsync();
        await Page.WaitForFunctionAsync("() => document.documentElement.dataset.blind === undefined");
        var (width, height) = (Page.ViewportSize!.Width, Page.ViewportSize.Height);
        if (Environment.GetEnvironmentVariable("FARHOLD_PICTURES") is { Length: > 0 } folder)
            await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"attempt-{width}x{height}-{name}.png") });
        if (height >= 640)
        {
            // Upright, what to do and every answer to it are in sight at once.
            Assert.Empty(await Page.OutOfSightAsync(".step-text, .tighten-now"));
            if (!name.Contains("stopped", StringComparison.Ordinal) && !name.Contains("shock", StringComparison.Ordinal))
                Assert.Empty(await Page.OutOfSightAsync(".attempt-live .act, .attempt-live .big, .attempt-live .giant"));
        }

        await NothingIsCoveredAsync($"{width}x{height}-{name}");
    }

    private async Task NothingIsCoveredAsync(string name)
    {
        var faults = await Page.FaultsAsync();
        Assert.True(faults.Length == 0, name + ": " + string.Join("; ", faults));
    }

    private Task StepAsync(string button) => StepAsync(Page.Button(button));

    /// <summary>Presses a button from wherever the carer has scrolled to: here from the end.</summary>
    private static async Task StepAsync(ILocator button)
    {
        await button.WaitForAsync();
        await button.EvaluateAsync("e => { document.querySelector('.view').scrollTop = 1e6; e.click(); }");
    }

    /// <summary>The phone's clock goes on by so many minutes.</summary>
    private async Task PassAsync(double minutes)
    {
        minutesAhead += minutes;
        await Page.EvaluateAsync(
            "ahead => { window.trueNow ??= Date.now; const real = window.trueNow; Date.now = () => real() + ahead * 60e3; }",
            minutesAhead
        );
    }
}
