using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;
using RecordFile = Farhold.Hub.Tests.Harness.RecordFile;

namespace Farhold.Hub.Tests;

/// <summary>What a look does to the eye: how bright a picture is as a whole, and what is left of it without colours.</summary>
public class LuminanceTests(Browser browser) : PhoneTest(browser)
{
    private static readonly string[] Deficiencies = ["achromatopsia", "protanopia", "deuteranopia", "tritanopia"];

    /// <summary>Beside a canvas that any page may read; the app's own policy would not let it.</summary>
    private const string Read = """
        async bytes => {
          const picture = await createImageBitmap(await (await fetch('data:image/png;base64,' + bytes)).blob());
          const canvas = new OffscreenCanvas(picture.width, picture.height).getContext('2d');
          canvas.drawImage(picture, 0, 0);
          return canvas.getImageData(0, 0, picture.width, picture.height).data;
        }
        """;

    /// <summary>
    /// Mean relative luminance (WCAG 2.2) of what is on the screen, a share of white: our own limits, so that eyes used to the dark keep
    /// some of it (design). An alarm may be brighter, and what is printed or read by a camera is white. Luria and Kobus 1984 and Brown
    /// 1952 are why it is light that is counted, not red.
    /// </summary>
    [Theory]
    [InlineData("night", 0.10)]
    [InlineData("saving", 0.06)]
    public async Task No_place_is_bright_in_the_dark(string look, double most)
    {
        var dark = await Phone.NewPageAsync();
        await StartAsync(look);
        foreach (var scene in (string[])["start", "watch"])
        {
            await TakeInAsync(AttemptScenes.All().First(s => s.Name == scene).File);
            foreach (var place in Screens.Places)
            {
                await Page.GoToAsync(place);
                var mean = await dark.EvaluateAsync<double>(
                    $$"""
                    async bytes => {
                      const data = await ({{Read}})(bytes);
                      const linear = [...Array(256).keys()].map(v => v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
                      let sum = 0;
                      for (let i = 0; i < data.length; i += 4) sum += 0.2126 * linear[data[i]] + 0.7152 * linear[data[i + 1]] + 0.0722 * linear[data[i + 2]];
                      return sum / (data.length / 4);
                    }
                    """,
                    Convert.ToBase64String(await Page.ScreenshotAsync())
                );
                Assert.True(mean > 0.001 && mean <= most, $"{place}, {scene}: {mean:F3} of {most}");
            }

            await Page.EvaluateAsync("() => Blazor.navigateTo('/')");
            await Page.Heading("Casualties").WaitForAsync();
        }
    }

    /// <summary>
    /// Each answer's sign, drawn as someone sees it who tells no colours apart or not all of them: any two differ in a tenth of what is
    /// drawn of both, grey by grey.
    /// </summary>
    [Fact]
    public async Task Answers_are_told_apart_by_whoever_sees_no_colours()
    {
        var plain = await Phone.NewPageAsync();
        var eyes = await Phone.NewCDPSessionAsync(Page);
        foreach (var look in (string[])["night", "day", "saving"])
        {
            await StartAsync(look);
            var signs = new Dictionary<(string Answer, string Eyes), string>();
            foreach (var scene in (string[])["stop", "ask", "wait", "go"])
            {
                await TakeInAsync(Casualty(scene));
                await Page.Locator($".answer.{scene} .say svg").First.WaitForAsync();
                foreach (var deficiency in Deficiencies)
                {
                    await eyes.SendAsync("Emulation.setEmulatedVisionDeficiency", new() { ["type"] = deficiency });
                    signs[(scene, deficiency)] = Convert.ToBase64String(
                        await Page.Locator(".answer .say svg").First.ScreenshotAsync(new() { Animations = ScreenshotAnimations.Disabled })
                    );
                }

                await eyes.SendAsync("Emulation.setEmulatedVisionDeficiency", new() { ["type"] = "none" });
                await Page.EvaluateAsync("() => Blazor.navigateTo('/')");
                await Page.Heading("Casualties").WaitForAsync();
            }

            foreach (var deficiency in Deficiencies)
            foreach (var one in signs.Keys.Where(k => k.Eyes == deficiency))
            foreach (var other in signs.Keys.Where(k => k.Eyes == deficiency && string.CompareOrdinal(k.Answer, one.Answer) > 0))
            {
                var share = await plain.EvaluateAsync<double>(
                    $$"""
                    async ([one, other]) => {
                      // Ink against its own ground, so that only the shape is compared.
                      const shape = data => {
                        const grey = Array.from({ length: data.length / 4 }, (_, i) => data[4 * i] + data[4 * i + 1] + data[4 * i + 2]);
                        return grey.map(v => Math.abs(v - grey[0]) > 120);
                      };
                      const [a, b] = [shape(await ({{Read}})(one)), shape(await ({{Read}})(other))];
                      let drawn = 0, differs = 0;
                      for (let i = 0; i < Math.min(a.length, b.length); i++) { drawn += a[i] || b[i]; differs += a[i] !== b[i]; }
                      return differs / drawn;
                    }
                    """,
                    new[] { signs[one], signs[other] }
                );
                Assert.True(share >= 0.1, $"{look}, {deficiency}: {one.Answer} and {other.Answer} differ in {share:P0}");
            }
        }
    }

    private async Task StartAsync(string look)
    {
        await Page.EvaluateAsync("look => { localStorage.clear(); localStorage.setItem('farhold-look', look); }", look);
        await Page.EvaluateAsync("async () => { for (const d of await indexedDB.databases()) indexedDB.deleteDatabase(d.name); }");
        await Page.ReloadAsync();
        await Page.ReadCautionsAsync();
        await Assertions.Expect(Page.Locator("html")).ToHaveAttributeAsync("data-look", look);
    }

    private async Task TakeInAsync(RecordFile file)
    {
        await Page.TakeInAsync(file);
        await Page.Locator(".answer .say svg").First.WaitForAsync();
    }

    /// <summary>Someone for whom the verdict is to leave it on, to check first, to wait for help, or to attempt.</summary>
    private static RecordFile Casualty(string answer) =>
        answer switch
        {
            "stop" => RecordFile.Ready("stop", "Case stop").InShock(1),
            "ask" => RecordFile.Ready("askk", "Case ask"),
            "wait" => RecordFile
                .Ready("wait", "Case wait")
                .Looked(2, "none")
                .LookedOver(2)
                .Well(2)
                .At(1, "help.expected", $"\"care\":\"surgery\",\"likely\":\"{In(60)}\",\"earliest\":\"{In(50)}\",\"latest\":\"{In(70)}\""),
            _ => RecordFile.Ready("goes", "Case go").Looked(2, "none").LookedOver(2).Well(2),
        };

    private static string In(double minutes) =>
        DateTimeOffset.UtcNow.AddMinutes(minutes).ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture);
}
