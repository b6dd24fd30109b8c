using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>How many taps the common entries take, counted in the browser; keys of the phone's own keyboard are no taps.</summary>
public class TapTests(Browser browser) : PhoneTest(browser)
{
    private Touch Carer => field ??= new(Page);

    private ILocator Sheet => Page.GetByRole(AriaRole.Dialog);

    [Fact]
    public async Task From_the_address_to_the_first_verdict_for_a_tourniquet_of_40_minutes_ago_8()
    {
        await Carer.TapAsync("I have read this");
        await Page.GetByLabel("Your name").FillAsync("Ane");
        await Carer.TapAsync("Go on");
        await Carer.OpenAsync("Tor");
        await Carer.SayAsync("Tourniquet tightened", "40 min ago", "Left leg", "Tightened (t1)");
        await Page.Locator("main").GetByRole(AriaRole.Heading, new() { NameRegex = new("LEFT leg") }).First.WaitForAsync();
        Assert.InRange(Carer.Taps, 1, 8);
    }

    [Fact]
    public async Task Second_tourniquet_2_packing_of_15_minutes_ago_3_and_a_pulse_with_breaths_6()
    {
        await OpenAsync();
        await CountAsync(2, () => Carer.SayAsync("Tourniquet tightened", "Left leg", "Another one (t2)"));

        await Page.GoToAsync("Casualty");
        await CountAsync(
            3,
            async () =>
            {
                await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("LEFT leg") }).First);
                await Carer.TapAsync(Sheet.GetByRole(AriaRole.Radio, new() { Name = "15 min ago", Exact = true }));
                await Carer.LogAsync(Sheet.GetByRole(AriaRole.Button, new() { NameRegex = new("^Haemostatic gauze at ") }));
            }
        );

        await Page.GoToInnerAsync("signs/take");
        await CountAsync(
            6, // the keys stay where they are
            async () =>
            {
                await Carer.KeysAsync("84");
                await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Next: ") }));
                await Carer.KeysAsync("116"[1..]);
                await Carer.LogAsync("Log signs");
            }
        );
    }

    [Fact]
    public async Task Amending_an_entry_4()
    {
        await OpenAsync();
        await Page.GoToInnerAsync("log");
        await CountAsync(
            4,
            async () =>
            {
                await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Change: Tourniquet t1") }));
                await Carer.TapAsync(Page.GetByRole(AriaRole.Link, new() { Name = "Correct", Exact = true }));
                await Carer.RadioAsync("Make", "Improvised");
                await Carer.LogAsync("Log the correction");
            }
        );
    }

    [Fact]
    public async Task A_drug_given_between_two_times_8()
    {
        await OpenAsync();
        await Page.GoToInnerAsync("enter/drug.given");
        await CountAsync(
            8,
            async () =>
            {
                await Carer.RadioAsync("When", "Between … and …");
                await Carer.RadioAsync("How long ago", "15 to 30 min ago");
                await Carer.RadioAsync("Drug", "paracetamol");
                await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Amount ") }));
                await Carer.KeysAsync("1");
                await Carer.RadioAsync("Unit of the amount", "g");
                await Carer.RadioAsync("Route", "By mouth");
                await Carer.LogAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Log entry: ") }));
            }
        );
        await Page.GoToInnerAsync("log");
        await Page.GetByText("Given paracetamol 1 g, mouth", new() { Exact = true }).WaitForAsync();
    }

    /// <summary>One look is enough with at most 20 minutes left of the 2 hours; first look, age and means were seen to before.</summary>
    [Fact]
    public async Task From_check_first_to_a_possible_attempt_16()
    {
        await OpenAsync("60 min ago");
        await Carer.PassAsync(44);
        await Carer.LookAsync(["Nothing else bleeds", .. Touch.AllClear, "Fall", "1 to 2 hours ago"]);
        await Carer.SayAsync("Surgery or clinic: when", "Surgery", "Surgery within 12 h");
        await Carer.SayAsync("Who can watch", null, "You or another can watch closely");
        await Carer.SayAsync("Supplies left", "Haemostatic gauze", "2");
        await Carer.SayAsync("Supplies left", "Pressure dressing", "1");
        await Carer.GoToAsync("Now");
        await Page.Heading("LEFT leg: Check first").WaitForAsync();
        await CountAsync(1, () => Carer.LogAsync("None"));
        await Carer.EnterAgeAsync("34");
        await CountAsync(
            15,
            async () =>
            {
                await Carer.TapAsync(Carer.Dock);
                await Page.Heading("Take signs").WaitForAsync();
                await Carer.KeysAsync("84");
                await Carer.NextAsync();
                await Carer.KeysAsync("16");
                await Carer.NextAsync();
                await Carer.RadioAsync(null, "Alert");
                await Carer.NextAsync();
                await Carer.TapAsync("None of these four");
                await Carer.NextAsync();
                await Carer.RadioAsync(null, "Strong");
                await Carer.NextAsync();
                await Carer.RadioAsync("Blood pressure cuff", "No cuff here");
                await Carer.LogAsync("Log signs");
                await Page.Heading("Now").WaitForAsync(new() { State = WaitForSelectorState.Attached });
            }
        );
        await Assertions.Expect(Carer.Dock).ToHaveTextAsync("Start an attempt");
    }

    [Fact]
    public async Task A_drink_2_and_a_stage_of_carrying_6()
    {
        await OpenAsync();
        await Page.GoToAsync("Care");
        await CountAsync(
            2,
            async () =>
            {
                await Carer.TapAsync(Page.Locator("main").GetByRole(AriaRole.Link, new() { Name = "Fluids", Exact = true }));
                await Carer.LogAsync(
                    Page.GetByRole(AriaRole.Group, new() { Name = "Drank water", Exact = true })
                        .GetByRole(AriaRole.Button, new() { Name = "200 mL", Exact = true })
                );
            }
        );

        await Page.GoToAsync("Way out");
        await CountAsync(
            6,
            async () =>
            {
                await Carer.TapAsync(Page.Button("Carry").Last);
                await Carer.KeysAsync("3");
                await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Climb ") }));
                await Carer.KeysAsync("90");
                await Carer.TapAsync(Page.Button("Keep this stage"));
            }
        );
        await Page.Heading("The plan").WaitForAsync();
    }

    private async Task OpenAsync(string since = "40 min ago")
    {
        await Page.ReadCautionsAsync();
        await Carer.OpenAsync("Tor");
        await Carer.SayAsync("Wound found", since, "Bleeding", "Left leg");
        await Carer.SayAsync("Tourniquet tightened", since, "Left leg", "Tightened (t1)");
    }

    private async Task CountAsync(int most, Func<Task> deed)
    {
        var before = Carer.Taps;
        await deed();
        Assert.InRange(Carer.Taps - before, 1, most);
    }
}
