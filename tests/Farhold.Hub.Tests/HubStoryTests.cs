using System.Text.RegularExpressions;
using Farhold.Hub.Access;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;
using NodaTime;

namespace Farhold.Hub.Tests;

/// <summary>Two carers, an adviser, a clinician and one phone lost, each in a browser of its own, over a real hub. All invented.</summary>
public sealed class HubStoryTests(Browser browser) : PhoneTest(browser)
{
    private readonly string folder = Directory.CreateTempSubdirectory("farhold-records-").FullName;

    protected override string Records => folder;

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, true);
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Two_carers_an_adviser_a_clinician_and_one_phone_lost()
    {
        // Tor logs without any network, then joins: all of it goes by itself.
        await Page.ReadCautionsAsync("Tor");
        await Page.OpenCasualtyAsync("Runa");
        await Page.TightenAsync();
        await JoinAsync(Page, HubRole.Carer, "Tor");
        await Page.GotoAsync(Server.Address);
        await Page.Heading("Now").WaitForAsync(); // straight back into the middle of care
        await SeeAtHubAsync(Page, "All of it is at the hub");

        // The adviser's desk: the casualty stands on the board, the record opens in all its places.
        var desk = await NewPhoneAsync("Dr Vann", HubRole.Coordinator);
        await desk.GotoAsync(Server.Address + "/board");
        await Assertions.Expect(desk.GetByText("LEFT leg: Check first")).ToBeVisibleAsync();
        await Assertions.Expect(desk.GetByText(new Regex("^Live, heard"))).ToBeVisibleAsync();

        await PictureAsync(desk, "board");

        // Tor asks; the desk sees it without anybody asking for it, says who is on it, and answers.
        await Page.GoToAsync("Now");
        await Page.GotoAsync(PlaceOf(Page, "ask"));
        await Page.Button("Reached, waiting for the answer").TapAsync();
        await Assertions.Expect(desk.GetByText(new Regex("^Question: "))).ToBeVisibleAsync();
        await desk.Button("Open Runa").TapAsync();
        await desk.Button("I am on it").TapAsync();
        await Assertions.Expect(Page.GetByText(new Regex("^Dr Vann has been on it since"))).ToBeVisibleAsync();
        await desk.Button("They answer").First.TapAsync();
        await desk.GetByRole(AriaRole.Textbox, new() { Name = "What they said, word by word" }).FillAsync("Leave it on. Keep her warm.");
        await desk.ChooseAsync("No");
        await desk.Button("What their phone will say").Last.TapAsync();
        await desk.Button("Send this answer").TapAsync();

        // It comes to Tor's phone by itself and stands there until he has repeated it.
        await Page.GotoAsync(PlaceOf(Page, "now"));
        await Assertions.Expect(Page.GetByText("Leave it on. Keep her warm.")).ToBeVisibleAsync();
        await Page.Button("I have repeated it aloud").TapAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Heading, new() { NameRegex = new("^Answer from Dr Vann") })).ToHaveCountAsync(0);
        await desk.GotoAsync(Server.Address + "/board");
        await Assertions.Expect(desk.GetByText(new Regex("repeated by the carer"))).ToBeVisibleAsync();

        // A second carer of the team gets the record from the hub through the coordinator's board, and logs on.
        var second = await NewPhoneAsync("Liv", HubRole.Coordinator);
        await second.GotoAsync(Server.Address + "/board");
        await second.Button("Open Runa").TapAsync();
        await second.LogNoteAsync("Liv has taken over");
        await Page.GotoAsync(PlaceOf(Page, "log"));
        await Assertions.Expect(Page.GetByText("Liv has taken over")).ToBeVisibleAsync();

        // The clinician: a link with its secret behind the #, four digits by voice.
        await Page.GotoAsync(PlaceOf(Page, "hand-over"));
        await Page.Button("Make a link for 24 hours").TapAsync();
        var digits = Regex.Match(await Page.GetByText(new Regex("^Four digits, by voice")).InnerTextAsync(), "[0-9]{4}$").Value;
        var link = await Page.Locator("main p.link").InnerTextAsync();
        await using var ward = await Browser.Chromium.NewContextAsync();
        var reading = await ward.NewPatientPageAsync();
        await reading.GotoAsync(link);
        await reading.GetByLabel(new Regex("Four digits")).FillAsync(digits);
        await reading.Button("Open").ClickAsync();
        await Assertions.Expect(reading.Heading("Runa, read only")).ToBeVisibleAsync();
        await Assertions.Expect(reading.GetByText("Liv has taken over")).ToBeVisibleAsync();
        await Assertions.Expect(reading.GetByText("No entry is known to be missing.")).ToBeVisibleAsync();
        await PictureAsync(reading, "clinician");

        // Tor's phone is lost: the coordinator lets it out, and it says so; it goes on logging.
        await desk.GotoAsync(Server.Address + "/devices");
        await desk.Button("Let Tor out").TapAsync();
        await desk.Button("Let it out").TapAsync();
        await Assertions.Expect(desk.GetByText("Let out", new() { Exact = true })).ToBeVisibleAsync();
        Expect("403");
        await Page.LogNoteAsync("only on this phone now");
        await Page.GotoAsync(Server.Address + "/phone");
        await Assertions.Expect(Page.GetByText("This phone was let out of the hub.", new() { Exact = false })).ToBeVisibleAsync();
        await second.GotoAsync(PlaceOf(second, "log"));
        await Assertions.Expect(second.GetByText("only on this phone now")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_the_other_phone_holds_and_could_not_send_is_a_doubt_here_until_it_has_come()
    {
        await Page.ReadCautionsAsync("Tor");
        await Page.OpenCasualtyAsync("Runa");
        await JoinAsync(Page, HubRole.Carer, "Tor");
        await Page.GotoAsync(Server.Address);
        await Page.Heading("Now").WaitForAsync(); // straight back into the middle of care
        await SeeAtHubAsync(Page, "All of it is at the hub");
        var desk = await NewPhoneAsync("Liv", HubRole.Coordinator);
        await desk.GotoAsync(Server.Address + "/board");
        await desk.Button("Open Runa").TapAsync();
        await desk.Heading("Now").WaitForAsync();

        // The head of a message arrives, its lines do not: as on a link that breaks after the first packet.
        await Page.RouteAsync(
            new Regex("/sync$"),
            async route =>
            {
                var sent = route.Request.PostDataBuffer!;
                var plain = Unpacked(route.Request.Headers, sent);
                var head = plain.AsSpan(0, plain.AsSpan().IndexOf((byte)'\n') + 1).ToArray();
                var headers = route.Request.Headers.Where(h => h.Key != "content-encoding" && h.Key != "content-length");
                using var client = new HttpClient();
                using var request = new HttpRequestMessage(HttpMethod.Post, route.Request.Url) { Content = new ByteArrayContent(head) };
                foreach (var (name, value) in headers)
                    if (!request.Headers.TryAddWithoutValidation(name, value))
                        request.Content.Headers.TryAddWithoutValidation(name, value);
                using var answer = await client.SendAsync(request);
                await route.AbortAsync();
            }
        );
        Expect("ERR_FAILED");
        await Page.TightenAsync();
        await Assertions.Expect(desk.GetByText(new Regex("known to exist")).First).ToBeVisibleAsync(new() { Timeout = 90_000 });
        await Page.UnrouteAllAsync();
        await Assertions.Expect(desk.GetByText(new Regex("known to exist"))).ToHaveCountAsync(0, new() { Timeout = 90_000 });
        await Assertions.Expect(desk.GetByText(new Regex("LEFT leg")).First).ToBeVisibleAsync();
    }

    private static byte[] Unpacked(Dictionary<string, string> headers, byte[] sent)
    {
        if (headers.GetValueOrDefault("content-encoding") != "gzip")
            return sent;
        using var unpacking = new System.IO.Compression.GZipStream(
            new MemoryStream(sent),
            System.IO.Compression.CompressionMode.Decompress
        );
        using var plain = new MemoryStream();
        unpacking.CopyTo(plain);
        return plain.ToArray();
    }

    private async Task<string> InviteAsync(HubRole role)
    {
        var access = (AccessStore)Server.Services.GetService(typeof(AccessStore))!;
        var now = SystemClock.Instance.GetCurrentInstant();
        return await access.InviteAsync(new(role, "Skarvedal watch", "", now + Duration.FromHours(1), true), "console", now);
    }

    private async Task<IPage> NewPhoneAsync(string name, HubRole role)
    {
        var phone = await Browser.Chromium.NewContextAsync(Kind);
        var page = await phone.NewPatientPageAsync();
        await page.GotoAsync(Server.Address);
        await page.ReadCautionsAsync(name);
        await JoinAsync(page, role, name);
        return page;
    }

    private async Task JoinAsync(IPage page, HubRole role, string name)
    {
        await page.GotoAsync($"{Server.Address}/join#{await InviteAsync(role)}");
        await page.GetByLabel("Name of this phone").FillAsync(name);
        await page.Button("Join").TapAsync();
        await page.GetByText(new Regex("Skarvedal watch")).WaitForAsync();
    }

    private static async Task SeeAtHubAsync(IPage page, string says)
    {
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Phone\\. ") }).TapAsync();
        await Assertions.Expect(page.Locator(".status-panel").GetByText(says, new() { Exact = false })).ToBeVisibleAsync();
        await page.Button("Close").First.TapAsync();
    }

    private string PlaceOf(IPage page, string place)
    {
        var id = Regex.Match(page.Url, "/casualty/([^/]+)/").Groups[1].Value;
        Assert.NotEmpty(id);
        return $"{Server.Address}/casualty/{id}/{place}";
    }

    private static Task<byte[]> PictureAsync(IPage page, string name) =>
        page.ScreenshotAsync(new() { Path = Path.Combine(Published.Root, "artifacts", "hub-story-" + name + ".png"), FullPage = true });
}
