using System.Text;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>
/// From one browser to another by camera, without a network between them: only what was on the first one's screen crosses.
/// </summary>
public class CodeTransferTests(Browser browser) : PhoneTest(browser)
{
    private const int Frames = 16;

    private static string Demo => Path.Combine(Published.Root, "demo", "skarvedal.jsonl");

    [Fact]
    public async Task A_record_crosses_to_another_browser_by_its_camera()
    {
        await Page.ReadCautionsAsync();
        await Page.GetByLabel("record file").SetInputFilesAsync(Demo);
        await Page.Link("To Runa").TapAsync();
        await Page.GoToAsync("Hand over");
        await Page.Link("Show codes to another phone").TapAsync();
        var film = Path.Combine(Directory.CreateTempSubdirectory("farhold-film-").FullName, "codes.y4m");
        CodeFilm.Write(film, await FilmedAsync(), perSecond: 4);

        await using var other = await Browser.Playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = Browser.Executable,
                Args =
                [
                    .. Browser.Flags,
                    "--use-fake-ui-for-media-stream",
                    "--use-fake-device-for-media-stream",
                    $"--use-file-for-fake-video-capture={film}",
                ],
            }
        );
        var phone = await other.NewContextAsync(Harness.Kinds.Phone);
        var page = await phone.NewPatientPageAsync();
        await page.GotoAsync(Server.Address);
        await page.ReadCautionsAsync("Tor");
        await page.KeepOfflineAsync();
        await phone.SetOfflineAsync(true);
        await page.ReloadAsync();
        await page.Link("Import by camera").TapAsync();
        await page.Button("Use the camera").TapAsync();
        var original = await File.ReadAllLinesAsync(Demo, Encoding.UTF8, TestContext.Current.CancellationToken);
        await Assertions.Expect(page.GetByText($"{original.Length} new entries, 0 already here.")).ToBeVisibleAsync();
        await page.Button("Take these entries in").TapAsync();
        await page.Link("To Runa").TapAsync();
        await page.GoToAsync("Hand over");
        var download = await page.RunAndWaitForDownloadAsync(() => page.Button("Save the record file").TapAsync());
        var crossed = await File.ReadAllLinesAsync(await download.PathAsync(), Encoding.UTF8, TestContext.Current.CancellationToken);
        Assert.Equal(original.Order(StringComparer.Ordinal), crossed.Order(StringComparer.Ordinal));
        await phone.CloseAsync();
        Directory.Delete(Path.GetDirectoryName(film)!, recursive: true);
    }

    /// <summary>What the page shows, one picture after another as they turn.</summary>
    private async Task<List<(int Side, string Path)>> FilmedAsync()
    {
        var filmed = new List<(int, string)>();
        var last = "";
        while (filmed.Count < Frames)
        {
            var shown = await Page.EvaluateAsync<string[]>(
                """
                async last => {
                  const code = () => document.querySelector('svg.code');
                  while (!code() || code().dataset.frame === last) await new Promise(requestAnimationFrame);
                  return [code().dataset.frame, code().getAttribute('viewBox').split(' ')[2], code().querySelector('path').getAttribute('d')];
                }
                """,
                last
            );
            last = shown[0];
            filmed.Add((int.Parse(shown[1], System.Globalization.CultureInfo.InvariantCulture), shown[2]));
        }

        return filmed;
    }
}
