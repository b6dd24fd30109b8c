using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A carer who plays a casualty by touch: every tap is counted, and moves the phone's clock on by two seconds.</summary>
/// <remarks>The clock runs only by taps and by <see cref="PassAsync"/>: what is shown does not depend on how fast the machine is.</remarks>
internal sealed class Touch(IPage page)
{
    /// <summary>Answers of the first look, from the airway to the history, of a casualty with nothing else.</summary>
    public static readonly string[] AllClear =
    [
        "Airway is free",
        "Looked: nothing, breathing is easy",
        "Strong; skin warm, dry and pink",
        "Dry and warm",
        "Awake and clear, nothing on the head",
        "Looked: nothing, not pregnant",
        "Asked: none of these",
    ];

    /// <summary>Answers of the first look that ask further and log nothing.</summary>
    private static readonly string[] Asking =
    [
        "An arm or a leg bleeds",
        "Pale, cool or clammy",
        "Confused, drowsy or not awake",
        "Nobody can say",
        "Go on",
        "Fall",
        "Cut",
        "Crush",
        "Vehicle",
    ];

    public int Taps { get; private set; }

    /// <summary>What lies under the thumb.</summary>
    public ILocator Dock => page.Locator(".dock button.act");

    public async Task TapAsync(ILocator what)
    {
        await CheckAsync(what);
        Taps++;
    }

    /// <summary>A tap that is no part of the care, only of what is tested: not counted.</summary>
    public async Task CheckAsync(ILocator what)
    {
        await what.TapAsync();
        await AheadAsync(2);
    }

    public Task TapAsync(string button) => TapAsync(page.Button(button));

    /// <summary>A tap that logs: over once it is confirmed. The last message, which goes by itself, is put away first, uncounted.</summary>
    public async Task LogAsync(ILocator what)
    {
        var message = page.Locator(".toast");
        await page.EvaluateAsync("() => document.querySelector('.toast .dismiss')?.click()");
        await message.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await TapAsync(what);
        await message.WaitForAsync();
    }

    public Task LogAsync(string button) => LogAsync(page.Button(button));

    public Task FollowAsync(string link) => TapAsync(page.Link(link));

    public Task PassAsync(double minutes) => AheadAsync(minutes * 60);

    public async Task OpenAsync(string alias)
    {
        await FollowAsync("New casualty");
        await page.GetByLabel("What do you call the casualty?").FillAsync(alias);
        await TapAsync("Open the record");
        await page.SeeEntriesAsync(1);
    }

    /// <summary>The guided look from its beginning to its end, answer by answer, and back to Now.</summary>
    public async Task LookAsync(params string[] answers)
    {
        await FollowAsync("Start the first look");
        foreach (var answer in answers)
            await (Asking.Contains(answer) ? TapAsync(answer) : LogAsync(answer));
        await page.Heading("First look done").WaitForAsync();
        await FollowAsync("To Now");
    }

    /// <summary>Through the sheet of a quick action; of which limb or question, if the sheet has several.</summary>
    public Task SayAsync(string quick, string? group, string option) => SayAsync(quick, null, group, option);

    /// <param name="when">A chip of the sheet: when it happened.</param>
    public async Task SayAsync(string quick, string? when, string? group, string option)
    {
        await TapAsync(page.Button(quick).Last);
        if (when is not null)
            await TapAsync(Sheet.GetByRole(AriaRole.Radio, new() { Name = when, Exact = true }));
        await ChooseAsync(group, option);
    }

    /// <summary>Something that happened between two times of day, each so many minutes ago.</summary>
    public async Task SayBetweenAsync(string quick, double earliest, double latest, string? group, string option)
    {
        await TapAsync(page.Button(quick).Last);
        await TapAsync(Sheet.GetByRole(AriaRole.Radio, new() { Name = "Between … and …", Exact = true }));
        await TapAsync(Sheet.GetByRole(AriaRole.Radio, new() { Name = "By the clock", Exact = true }));
        await ClockAsync("Not before", earliest);
        await ClockAsync("Not after", latest);
        await TapAsync(Sheet.GetByRole(AriaRole.Button, new() { NameRegex = new("^Go on: it happened at ") }));
        await ChooseAsync(group, option);
    }

    /// <summary>The pulse, the breaths, and what is seen: with "no" to every sign of the skin.</summary>
    public async Task TakeSignsAsync(
        string pulse,
        string breaths,
        string mind = "Alert",
        string wrist = "Strong",
        string? systolic = null,
        params string[] seen
    )
    {
        await page.Heading("Take signs").WaitForAsync();
        await KeysAsync(pulse);
        await NextAsync();
        await KeysAsync(breaths);
        await NextAsync();
        await RadioAsync(null, mind);
        await NextAsync();
        foreach (var sign in (string[])["Pale", "Skin cool (chest, not hands)", "Skin clammy", "Dizzy or faint"])
            await RadioAsync(sign, seen.Contains(sign) ? "Yes" : "No");
        await NextAsync();
        await RadioAsync(null, wrist);
        await NextAsync();
        if (systolic is null)
            await RadioAsync("Blood pressure cuff", "No cuff here");
        else
            await KeysAsync(systolic, "Blood pressure");
        await LogAsync("Log signs");
        await page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    /// <summary>What is due below the first three.</summary>
    public async Task DueAsync(string does)
    {
        await TapAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new(" more that are due$") }));
        await TapAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new($"{does}$") }).Last);
    }

    /// <summary>Where a tourniquet sits, on the screen that looks at its place.</summary>
    public async Task SitsAsync(string on, string where, string make)
    {
        await RadioAsync("Under it", on);
        await RadioAsync("Where on the limb", where);
        await RadioAsync("What it is", make);
        await LogAsync("Go on");
    }

    public async Task EnterAgeAsync(string years)
    {
        await TapAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new("Enter the age|^Ask or estimate the age") }).First);
        await KeysAsync(years);
        await LogAsync("Log the age");
    }

    public async Task ToSignsAsync()
    {
        await GoToAsync("Casualty");
        await TapAsync(page.Locator("main").GetByRole(AriaRole.Link, new() { Name = "Signs", Exact = true }));
        await FollowAsync("Take signs");
    }

    public Task RadioAsync(string? group, string option)
    {
        var within = group is null ? page.Locator("main") : page.GetByRole(AriaRole.Group, new() { Name = group, Exact = true });
        return TapAsync(within.GetByRole(AriaRole.Radio, new() { Name = option, Exact = true }));
    }

    /// <param name="pad">Where there are several.</param>
    public async Task KeysAsync(string digits, string? pad = null)
    {
        var within = pad is null ? page.Locator(".pad") : page.GetByRole(AriaRole.Group, new() { Name = pad, Exact = true });
        foreach (var digit in digits)
            await TapAsync(within.GetByRole(AriaRole.Button, new() { Name = digit.ToString(), Exact = true }));
    }

    /// <summary>To a place of the bar.</summary>
    public async Task GoToAsync(string place)
    {
        await TapAsync(page.GetByRole(AriaRole.Navigation, new() { Name = "Places" }).GetByRole(AriaRole.Link, new() { Name = place }));
        await page.Heading(place).WaitForAsync(new() { State = WaitForSelectorState.Attached });
    }

    private ILocator Sheet => page.GetByRole(AriaRole.Dialog);

    public Task NextAsync() => TapAsync(page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Next: ") }));

    /// <summary>An option says its time once one was said.</summary>
    private async Task ChooseAsync(string? group, string option)
    {
        var within = group is null ? Sheet : Sheet.GetByRole(AriaRole.Group, new() { Name = group, Exact = true });
        await LogAsync(within.GetByRole(AriaRole.Button, new() { NameRegex = new($"^{Regex.Escape(option)}( at .*)?$") }));
        await Sheet.WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    private async Task ClockAsync(string pad, double minutesAgo)
    {
        var time = await page.EvaluateAsync<string>(
            "ago => new Date(Date.now() - ago * 60e3).toTimeString().slice(0, 5).replace(':', '')",
            minutesAgo
        );
        await KeysAsync(time, pad);
    }

    private async Task AheadAsync(double seconds) =>
        await page.EvaluateAsync(
            """
            seconds => {
              if (window.phoneTime === undefined) {
                window.phoneTime = Date.now();
                Date.now = () => window.phoneTime;
              }
              window.phoneTime += seconds * 1e3;
            }
            """,
            seconds
        );
}
