using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;
using Kinds = Farhold.Hub.Tests.Harness.Kinds;
using RecordFile = Farhold.Hub.Tests.Harness.RecordFile;

namespace Farhold.Hub.Tests;

/// <summary>A phone whose browser wants German.</summary>
public class LanguageTests(Browser browser) : PhoneTest(browser)
{
    protected override BrowserNewContextOptions Kind => new(Kinds.Phone) { Locale = "de-AT" };

    [Fact]
    public async Task The_app_starts_in_the_browsers_language_and_changes_without_losing_or_loading_anything()
    {
        await Assertions.Expect(Page.Locator("html")).ToHaveAttributeAsync("lang", "de");
        await Page.Button("Ich habe das gelesen").TapAsync();
        await Page.GetByLabel("Ihr Name").FillAsync("Ane");
        await Page.Button("Weiter").TapAsync();
        await Page.Heading("Patienten").WaitForAsync();
        var unread = Page.Heading("Übersetzung noch von keinem muttersprachlichen Kliniker gelesen");
        await Assertions.Expect(unread).ToBeVisibleAsync();
        await Page.Button("Ich habe das gesehen").TapAsync();
        await Assertions.Expect(unread).ToHaveCountAsync(0);

        var record = RecordFile.Ready("de1", "Tor");
        await Page.GetByLabel("Aktendatei einlesen")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "tor.jsonl",
                    MimeType = "application/jsonl",
                    Buffer = record.Bytes,
                }
            );
        await Page.Link("Zu Tor").TapAsync();
        await Page.Heading("Jetzt").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await Assertions.Expect(Page.GetByRole(AriaRole.Navigation, new() { Name = "Bereiche" })).ToContainTextAsync("Pflege");
        await Assertions.Expect(Page.GetByText("LINKES Bein").First).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("Zuerst prüfen").First).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("Alle Gründe: Linkes Bein").First).ToBeVisibleAsync();
        Assert.Equal(360, await Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));

        await Page.EvaluateAsync("() => { globalThis.sameLoad = true; Blazor.navigateTo('phone'); }");
        await Page.Heading("Dieses Telefon").WaitForAsync();
        await Page.ChooseAsync("Español");
        await Page.Heading("Este teléfono").WaitForAsync();
        await Assertions.Expect(Page.Locator("html")).ToHaveAttributeAsync("lang", "es");
        await Assertions.Expect(Page.GetByText("Ningún clínico nativo ha leído aún esta traducción.")).ToBeVisibleAsync();
        Assert.Equal("Ane", await Page.GetByLabel("Su nombre").InputValueAsync());
        Assert.True(await Page.EvaluateAsync<bool>("() => globalThis.sameLoad === true"));

        await Page.ReloadAsync();
        await Page.Heading("Este teléfono").WaitForAsync();
        await Page.ChooseAsync("English");
        await Page.Heading("This phone").WaitForAsync();
        await Assertions.Expect(Page.Locator("html")).ToHaveAttributeAsync("lang", "en");
    }

    [Fact]
    public async Task The_plain_page_is_in_that_language_without_the_runtime_and_without_network()
    {
        Expect("ERR_FAILED");
        Expect("dotnet");
        Expect("Failed to fetch");
        Expect("WebAssembly");
        await Page.Button("Ich habe das gelesen").WaitForAsync();
        await Page.KeepOfflineAsync();
        Assert.True(
            await Page.EvaluateAsync<bool>(
                """
                async () => {
                  const version = await (await (await caches.open('farhold-serving')).match('current')).text();
                  return !!await (await caches.open('farhold-files-' + version)).match('texts.de.json');
                }
                """
            )
        );
        await Page.EvaluateAsync("() => navigator.serviceWorker.getRegistration().then(r => r.unregister()).then(() => null)");
        await Page.RouteAsync("**/_framework/**", route => route.AbortAsync());
        await Page.ReloadAsync();
        await Assertions.Expect(Page.Locator("#starting")).ToContainTextAsync("Zuerst Hilfe holen.");
        await Assertions.Expect(Page.Locator("#starting-state")).ToHaveTextAsync("Startet …");
    }
}

/// <summary>A phone on which the app speaks a language that is longer than English, or runs from right to left.</summary>
public class PseudoLanguageScreenTests(Browser browser) : PhoneTest(browser)
{
    /// <summary>Addresses within a casualty, no two after one another that one component shows.</summary>
    private static readonly string[] Places =
    [
        "now",
        "body",
        "limbs",
        "body/back",
        "signs",
        "signs/take",
        "sustain",
        "fluids",
        "supplies",
        "way-out",
        "hand-over",
        "log",
        "attempt/left-leg",
        "why/left-leg",
    ];

    private readonly string folder = Published.Copy();

    protected override string Folder => folder;

    // What is served beside a build is no file of it, so its worker would not give it out.
    protected override BrowserNewContextOptions Kind => new(Kinds.Phone) { ServiceWorkers = ServiceWorkerPolicy.Block };

    public override async ValueTask InitializeAsync()
    {
        PseudoLanguage.Write(folder, PseudoLanguage.Long);
        PseudoLanguage.Write(folder, PseudoLanguage.RightToLeft);
        await base.InitializeAsync();
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task From_right_to_left_the_body_and_its_sides_stay_where_they_are()
    {
        await OpenAsync();
        var before = await BodyAsync();
        Assert.NotEmpty(before);
        await Page.SpeakAsync(PseudoLanguage.RightToLeft);
        await Assertions.Expect(Page.Locator("html")).ToHaveAttributeAsync("dir", "rtl");
        Assert.Equal(before, await BodyAsync());
        // The writing itself is turned: the way back is on the right.
        Assert.True(await Page.EvaluateAsync<bool>("() => document.querySelector('.back').getBoundingClientRect().left > innerWidth / 2"));
        await ShowAsync("signs");
        Assert.All(
            await Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main svg')].map(s => getComputedStyle(s).direction)"),
            d => Assert.Equal("ltr", d)
        );
        await ShowAsync("now");
        var clocks = await Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('[role=timer], .head-limb b')].map(c => getComputedStyle(c).direction)"
        );
        Assert.NotEmpty(clocks);
        Assert.All(clocks, d => Assert.Equal("ltr", d));
    }

    [Theory]
    [InlineData(PseudoLanguage.RightToLeft)]
    [InlineData(PseudoLanguage.Long)]
    [InlineData("de")]
    [InlineData("es")]
    public async Task No_place_is_wider_than_the_phone(string language)
    {
        await OpenAsync();
        await Page.SpeakAsync(language);
        var wide = new List<string>();
        foreach (var place in Places)
        {
            await ShowAsync(place);
            wide.AddRange(
                await Page.EvaluateAsync<string[]>(
                    """
                    place => [...document.querySelectorAll('main a.button, main button')]
                      .filter(e => e.checkVisibility() && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline')
                      .map(e => `${place}: “${e.textContent.trim()}” is ${e.scrollWidth} in ${e.clientWidth}`)
                      .concat([...document.querySelectorAll('.places a > span, .head-limb > span')].filter(e => {
                        const word = e.getBoundingClientRect(), room = e.parentElement.getBoundingClientRect();
                        return word.left < room.left - 4 || word.right > room.right + 4; // half of the gap to what stands beside it
                      }).map(e => `${place}: “${e.textContent}” in the frame`))
                      .concat([...document.querySelectorAll('html, .view, main, .places')].filter(e => e.scrollWidth > Math.min(360, e.clientWidth))
                      .map(e => `${place}: ${e.tagName} ${e.className} ${e.scrollWidth} in ${e.clientWidth}`))
                    """,
                    place
                )
            );
        }
        Assert.True(wide.Count == 0, string.Join(Environment.NewLine, wide));
    }

    private async Task OpenAsync()
    {
        await Page.ReadCautionsAsync();
        await Page.TakeInAsync(RecordFile.Ready("rtl", "Tor"));
    }

    private async Task ShowAsync(string place)
    {
        await Page.ShowInnerAsync(place);
        await PictureAsync(place);
    }

    private async Task PictureAsync(string place)
    {
        if (Environment.GetEnvironmentVariable("FARHOLD_PICTURES") is not { } folder)
            return;
        var language = await Page.Locator("html").GetAttributeAsync("lang");
        await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{language}-{place.Replace('/', '-')}.png") });
    }

    /// <summary>Where each part of the figure and each word of a side stands across the screen.</summary>
    private async Task<string[]> BodyAsync()
    {
        await ShowAsync("body");
        await Page.Locator(".body .zone").First.WaitForAsync();
        return await Page.EvaluateAsync<string[]>(
            """
            () => [document.querySelector('.body svg'), ...document.querySelectorAll('.body .zone, .body .side-word')].map(e => {
              const r = e.getBoundingClientRect();
              return `${e.getAttribute('class')}: ${e.matches('.side-word.right') ? r.right : r.left}`;
            })
            """
        );
    }
}
