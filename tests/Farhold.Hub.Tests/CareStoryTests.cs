using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class CareStoryTests(Browser browser) : PhoneTest(browser)
{
    private double minutesAhead;

    [Fact]
    public async Task By_touch_alone_from_first_start_through_an_attempt_that_holds_to_hand_over()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await ChooseQuickAsync("Wound found", "Bleeding", "Left leg");
        await Page.TightenAsync();
        await SayHelpAsync();
        await ChooseQuickAsync("Who can watch", null, "You or another can watch closely");
        await ChooseQuickAsync("Supplies left", "Haemostatic gauze", "2");
        await ChooseQuickAsync("Supplies left", "Pressure dressing", "1");
        await ChooseQuickAsync("Bleeding now?", "w1, left leg", "None");
        await ChooseQuickAsync("Rest of the casualty", null, "None of these");
        await TakeSignsAsync();
        await EnterAgeAsync("34");
        await Page.Heading("LEFT leg: Check first").WaitForAsync();
        await PassAsync(11);
        await TakeSignsAsync();
        await Page.Heading("LEFT leg: Make an attempt").WaitForAsync();
        await AssertToldAsAtHomeAsync();

        // Now's own next steps: first what is overdue, then into the attempt.
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Pulse below the tourniquet$") }).First.TapAsync();
        await ChooseAsync("Left leg", "No pulse");
        await Page.Button("Start an attempt").Last.TapAsync();
        await Page.Button("Start the attempt").TapAsync();
        await Page.Button("Packed: haemostatic gauze").TapAsync();
        await PassAsync(4);
        await Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Log .* min of pressure$") }).TapAsync();
        await Page.Button("Pressure dressing is on").TapAsync();
        await Page.Button("No bleeding: start to slacken").TapAsync();
        await PassAsync(4);
        await Page.Button("It is loose, still around the limb").TapAsync();
        await Page.GetByText("left to watch without a break").WaitForAsync();

        // The phone gives up in the middle: the same step is there again, and its time has gone on.
        await Page.ReloadAsync();
        await Page.GetByText("left to watch without a break").WaitForAsync();
        await PassAsync(16);
        await Page.Button("No bleeding: it has held").TapAsync();
        await Page.GetByText("Last attempt: it held").WaitForAsync();
        await Page.Link("Limbs").TapAsync();
        await Page.GoToAsync("Now");
        await Assertions.Expect(Page.GetByText("Loosened, no bleeding when last looked at")).ToBeVisibleAsync();

        await Page.Link("Every other entry").TapAsync();
        await Page.Link("Care ended").TapAsync();
        await Page.ChooseAsync("Handed over");
        await Page.GetByLabel("To whom").FillAsync("Rescue team");
        await Page.Button("Log entry").TapAsync();
        await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        var told = await AssertToldAsAtHomeAsync();
        Assert.Empty(told.GetProperty("due").EnumerateArray());
        await Page.GoToAsync("Hand over");
        var download = await Page.RunAndWaitForDownloadAsync(() => Page.Button("Save the record file").TapAsync());
        var record = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Contains("\"outcome\":\"held\"", record, StringComparison.Ordinal);
        Assert.Contains("\"how\":\"handed-over\"", record, StringComparison.Ordinal);
        Assert.Equal(
            record.TrimEnd('\n').Split('\n').Length,
            Enumerable.Range(1, 100).TakeWhile(n => record.Contains($"-{n}\",", StringComparison.Ordinal)).Count()
        );
    }

    private async Task ChooseQuickAsync(string quick, string? group, string option)
    {
        await Page.Button(quick).Last.TapAsync();
        await ChooseAsync(group, option);
    }

    private async Task ChooseAsync(string? group, string option)
    {
        var sheet = Page.GetByRole(AriaRole.Dialog);
        var within = group is null ? sheet : sheet.GetByRole(AriaRole.Group, new() { Name = group, Exact = true });
        await within.GetByRole(AriaRole.Button, new() { Name = option, Exact = true }).TapAsync();
        await DismissAsync();
    }

    /// <summary>What Now asks for before the rates mean anything.</summary>
    private async Task EnterAgeAsync(string years)
    {
        await Page.Button("Enter the age").Last.TapAsync();
        await KeysAsync(years);
        await Page.Button("Log the age").TapAsync();
        await DismissAsync();
    }

    private async Task SayHelpAsync()
    {
        await Page.Button("Surgery or clinic: when").Last.TapAsync();
        var sheet = Page.GetByRole(AriaRole.Dialog);
        await sheet.GetByText("Earliest and most likely, if you can say").TapAsync();
        await sheet
            .GetByRole(AriaRole.Group, new() { Name = "At the earliest in" })
            .GetByRole(AriaRole.Radio, new() { Name = "12 h", Exact = true })
            .TapAsync();
        await sheet
            .GetByRole(AriaRole.Group, new() { Name = "Most likely in" })
            .GetByRole(AriaRole.Radio, new() { Name = "24 h", Exact = true })
            .TapAsync();
        await sheet
            .GetByRole(AriaRole.Group, new() { Name = "Surgery" })
            .GetByRole(AriaRole.Button, new() { Name = "Surgery within 48 h", Exact = true })
            .TapAsync();
        await DismissAsync();
    }

    private async Task TakeSignsAsync()
    {
        await Page.GoToAsync("Signs");
        await Page.Link("Take signs").TapAsync();
        await KeysAsync("84");
        await NextAsync();
        await KeysAsync("16");
        await NextAsync();
        await Page.ChooseAsync("Alert");
        await NextAsync();
        foreach (var seen in (string[])["Pale", "Skin cool (chest, not hands)", "Skin clammy", "Dizzy or faint"])
            await Page.GetByRole(AriaRole.Group, new() { Name = seen, Exact = true })
                .GetByRole(AriaRole.Radio, new() { Name = "No", Exact = true })
                .TapAsync();
        await NextAsync();
        await Page.ChooseAsync("Strong");
        await NextAsync();
        await Page.GetByRole(AriaRole.Group, new() { Name = "Blood pressure cuff", Exact = true })
            .GetByRole(AriaRole.Radio, new() { Name = "No cuff here", Exact = true })
            .TapAsync();
        await Page.Button("Log signs").TapAsync();
        await DismissAsync();
    }

    private Task NextAsync() => Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Next: ") }).TapAsync();

    private async Task KeysAsync(string digits)
    {
        foreach (var digit in digits)
            await Page.Button(digit.ToString()).TapAsync();
    }

    private async Task DismissAsync()
    {
        await Page.GetByText("Logged:").WaitForAsync();
        await Page.Button("Close this message").TapAsync();
    }

    /// <summary>The phone's clock goes on by so many minutes; what passed before a reload is added again.</summary>
    private async Task PassAsync(double minutes)
    {
        minutesAhead += minutes;
        await Page.EvaluateAsync(
            "ahead => { window.trueNow ??= Date.now; const real = window.trueNow; Date.now = () => real() + ahead * 60e3; }",
            minutesAhead
        );
    }

    /// <summary>The record as it would be exported gets the same verdicts from the command line.</summary>
    private async Task<System.Text.Json.JsonElement> AssertToldAsAtHomeAsync()
    {
        var record = await Page.EvaluateAsync<string>(
            "async () => (await (await import('/store.js')).recordFile(location.pathname.split('/')[2])).text()"
        );
        var told = await CommandLine.TellAsync(record, DateTimeOffset.UtcNow.AddMinutes(minutesAhead).AddSeconds(1));
        foreach (var limb in told.GetProperty("limbs").EnumerateArray())
            await Page.Heading($"LEFT leg: {CommandLine.Head(limb)}").WaitForAsync();
        return told;
    }
}
