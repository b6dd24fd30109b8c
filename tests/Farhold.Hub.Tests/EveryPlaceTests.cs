using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;
using RecordFile = Farhold.Hub.Tests.Harness.RecordFile;

namespace Farhold.Hub.Tests;

/// <summary>Every place, form and sheet in every language, from a small phone to a desk.</summary>
public class EveryPlaceTests(Browser browser) : PhoneTest(browser)
{
    /// <summary>The smallest phone of today, the two we draw for, a phone on its side, a tablet and a desk.</summary>
    private static readonly (int Width, int Height)[] Sizes = [(320, 640), (360, 640), (640, 360), (768, 1024), (1280, 800)];

    /// <summary>Addresses within a casualty, no two after one another that one component shows.</summary>
    private static readonly string[] Within =
    [
        "now",
        "body",
        "limbs",
        "body/back",
        "signs",
        "signs/take",
        "sustain",
        "fluids",
        "drugs",
        "supplies",
        "supplies/count",
        "way-out",
        "position",
        "hand-over",
        "card",
        "read-aloud",
        "short-message",
        "show-codes",
        "take-codes",
        "take-message",
        "log",
        "look-back",
        "reminders",
        "ask",
        "look",
        "why/left-leg",
        "look/belly",
        "re-site/left-leg",
        "enter",
        "enter/wound.found",
        "erase",
        "enter/tourniquet.tightened",
        "attempt/left-leg",
        "enter/help.expected",
    ];

    private static readonly string[] Outside =
    [
        "",
        "new",
        "take-codes",
        "take-message",
        "phone",
        "join",
        "board",
        "devices",
        "prepare",
        "prepare/forms",
        "prepare/plan",
        "protocol",
        "how-far",
        "take-run",
        "own-scenario",
    ];

    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    [InlineData("es")]
    public async Task Nothing_overlaps_is_cut_or_too_small_for_a_thumb(string language)
    {
        await StartAsync(language);
        var faults = new List<string>();
        foreach (var place in Within)
        {
            await ShowAsync(place, inner: true);
            await LookAsync(place, faults);
        }

        await ShowAsync("now", inner: true);
        var sheets = Page.Locator("[aria-labelledby=quick-title] button[aria-haspopup=dialog]");
        var quicks = await sheets.CountAsync();
        Assert.InRange(quicks, 8, 40);
        for (var quick = 0; quick < quicks; quick++)
        {
            await sheets.Nth(quick).EvaluateAsync("e => e.click()");
            await Page.GetByRole(AriaRole.Dialog).WaitForAsync();
            await LookAsync("sheet " + await Page.Locator("#sheet-title").TextContentAsync(), faults);
            await Page.GetByRole(AriaRole.Dialog).PressAsync("Escape");
            await Page.GetByRole(AriaRole.Dialog).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        }

        foreach (var place in Outside)
        {
            await ShowAsync(place, inner: false);
            await LookAsync("/" + place, faults);
        }

        Assert.True(faults.Count == 0, $"{faults.Count}:{Environment.NewLine}{string.Join(Environment.NewLine, faults)}");
    }

    public static TheoryData<string, string> Pictures =>
        [.. from language in (string[])["en", "de", "es"] from look in (string[])["night", "day", "saving"] select (language, look)];

    /// <summary>Not a check: makes pictures in artifacts/screens. Run by tools/screens.</summary>
    [Theory(Explicit = true), MemberData(nameof(Pictures))]
    public async Task Every_place_as_a_picture(string language, string look)
    {
        await Page.EvaluateAsync("look => localStorage.setItem('farhold-look', look)", look);
        await StartAsync(language);
        foreach (var (place, inner) in Within.Select(p => (p, true)).Concat(Outside.Select(p => (p, false))))
        {
            await ShowAsync(place, inner);
            var name = $"{language}-{look}-{(inner ? place : "start-" + place).Replace('/', '-').Replace('.', '-')}.png";
            await Page.ScreenshotAsync(new() { Path = Path.Combine(Published.Root, "artifacts", "screens", name) });
        }
    }

    private async Task StartAsync(string language)
    {
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(Casualty());
        await Page.SpeakAsync(language);
    }

    private async Task LookAsync(string place, List<string> faults)
    {
        foreach (var (width, height) in Sizes)
        {
            await Page.SetViewportSizeAsync(width, height);
            await Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
            faults.AddRange((await Page.LayoutFaultsAsync()).Select(f => $"{place} at {width}: {f}"));
        }

        await Page.SetViewportSizeAsync(360, 740);
    }

    private Task ShowAsync(string place, bool inner) => inner ? Page.ShowInnerAsync(place) : Page.ShowOuterAsync(place);

    /// <summary>A long name, two limbs, a burn: much to say on every place.</summary>
    private static RecordFile Casualty() =>
        RecordFile
            .Ready("ever", "Maximiliane-Konstantina")
            .At(33, "wound.found", "\"wound\":\"w2\",\"limb\":\"right-arm\",\"nature\":\"bleeding\"")
            .At(
                32,
                "tourniquet.tightened",
                "\"tourniquet\":\"t2\",\"limb\":\"right-arm\",\"place\":\"upper arm\",\"make\":\"improvised\",\"wound\":\"w2\""
            )
            .At(31, "wound.found", "\"wound\":\"w3\",\"region\":\"chest\",\"nature\":\"burn\"")
            .At(20, "drug.given", "\"drug\":\"paracetamol\",\"amount\":1000,\"unit\":\"mg\",\"route\":\"oral\"")
            .At(18, "note", "\"text\":\"Lay on the scree for an hour before we came; very cold hands\"");
}
