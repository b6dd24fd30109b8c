using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>
/// Casualties played by touch on a phone of 360 by 740, from the opening of the record through the first look to hand-over, each with
/// the number of taps it takes. All invented.
/// </summary>
public class PlayedStoryTests(Browser browser) : PhoneTest(browser)
{
    private Touch Carer => field ??= new(Page);

    private ILocator Place => Page.Locator("main");

    private ILocator Sheet => Page.GetByRole(AriaRole.Dialog);

    [Fact]
    public async Task Tor_one_leg_two_clear_looks_and_an_attempt_that_holds()
    {
        await OpenAsync("Tor");
        await Carer.SayAsync("Wound found", "15 min ago", "Bleeding", "Left leg");
        await Carer.SayAsync("Tourniquet tightened", "10 min ago", "Left leg", "Tightened (t1)");
        await SaysAsync("LEFT leg: Check first", "Has it stopped?");
        await Carer.LogAsync("None");
        await Carer.LookAsync(["Nothing else bleeds", .. Touch.AllClear, "Fall", "10 to 30 minutes ago"]);
        await SaysAsync("LEFT leg: Check first", "Enter the age");
        await NoAttemptAsync();
        await SayMeansAsync("Haemostatic gauze", "Surgery within 12 h");
        await Carer.EnterAgeAsync("34");
        await SaysAsync("LEFT leg: Check first", "Take signs");
        await Carer.TapAsync(Carer.Dock);
        await Carer.TakeSignsAsync("84", "16");
        await SaysAsync("LEFT leg: Check first", "Pulse below the tourniquet");
        await Carer.TapAsync(Carer.Dock);
        await Carer.LogAsync("No pulse");
        await Carer.PassAsync(11);
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("80", "14");

        await SaysAsync("LEFT leg: Make an attempt", "Start an attempt");
        await Carer.TapAsync(Carer.Dock);
        await Carer.LogAsync("Start the attempt");
        await Carer.LogAsync("Packed: haemostatic gauze");
        await Assertions.Expect(Page.GetByText("It is loose, still around the limb")).ToHaveCountAsync(0);
        await Carer.PassAsync(4);
        await Carer.LogAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Log .* min of pressure$") }));
        await Carer.LogAsync("Pressure dressing is on");
        await Carer.LogAsync("No bleeding: start to slacken");
        await Carer.PassAsync(4);
        await Carer.LogAsync("It is loose, still around the limb");
        await Carer.PassAsync(16);
        await Carer.TapAsync("No bleeding: it has held");
        await Page.GetByText("Last attempt: it held").WaitForAsync();
        await Carer.FollowAsync("Limbs");
        await Carer.GoToAsync("Now");
        await SaysAsync("LEFT leg: Loosened, no bleeding when last looked at", "Take signs");

        await Carer.GoToAsync("Care");
        await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Try to reach advice: .*antibiotics") }));
        await Carer.LogAsync("Not reached by radio");
        await HandOverAsync(
            "Tor",
            "needs surgery that can take the left leg: the tourniquet is loosened; without blood flow 31 min in all",
            "needs advice: tried 0 min ago, none recorded as given",
            "perhaps needs blood; it is not known: signs of shock missing or too old",
            "Leave the left leg as it is, loosened, and watch the dressing; tighten at once if it bleeds.",
            "attempt 1 to convert t1",
            "it held"
        );
        Took(92);
    }

    [Fact]
    public async Task Runa_in_shock_and_no_attempt_at_all()
    {
        await OpenAsync("Runa");
        await Carer.LookAsync(
            "An arm or a leg bleeds",
            "Right leg",
            "Tourniquet on; it stopped",
            "Nothing else bleeds",
            "Airway is free",
            "Looked: nothing, breathing is easy",
            "Pulse weak",
            "Go on",
            "Pale, cool or clammy",
            "Pale lips",
            "Nothing else",
            "Wet or shivering",
            "Go on",
            "Confused, drowsy or not awake",
            "Awake, more confused than usual",
            "Go on",
            "Nothing else",
            "Can't look now",
            "Nobody can say",
            "Crush",
            "Within 10 minutes"
        );
        await SaysAsync("RIGHT leg: Leave it on", "Try to reach advice");
        await Assertions.Expect(Place).ToContainTextAsync("First look, not looked at yet: Belly, pelvis, pregnancy, Medicines");
        await NoAttemptAsync();
        await Carer.TapAsync(Carer.Dock);
        await Carer.LogAsync("Not reached by phone");
        await Carer.SayAsync("Surgery or clinic: when", "Surgery", "Surgery within 4 h");
        await SaysAsync("RIGHT leg: Leave it on", "Take signs");
        await Carer.TapAsync(Carer.Dock);
        await Carer.TakeSignsAsync("132", "26", "Confused", "Weak", "86", "Pale", "Skin clammy");
        await Assertions.Expect(Place).ToContainTextAsync("Treat for shock: lie flat, keep warm, look for hidden bleeding");
        await NoAttemptAsync();

        // Nobody looks for three quarters of an hour: shock still stands, before the limb.
        await Carer.PassAsync(45);
        await SaysAsync("RIGHT leg: Check first", "Bleeding now?");
        await Assertions.Expect(Place.Locator(".limb-now").First).ToContainTextAsync("Shock: do this now.");
        await Assertions.Expect(Place.Locator(".limb-now").First).ToContainTextAsync("Nobody has looked since");
        await NoAttemptAsync();
        await Carer.GoToAsync("Care");
        await Assertions.Expect(Place).ToContainTextAsync("Dry, wrapped and warm; nothing by mouth.");
        await HandOverAsync(
            "Runa",
            "needs surgery that can take the right leg: 1 h 13 min left to 2 h 00 min, 5 h 13 min left to 6 h 00 min",
            "needs blood: signs of shock when they were last taken; too old now",
            "needs warming: wet or shivering, seen 46 min ago",
            "perhaps needs surgery for the trunk; it is not known: the trunk not looked at",
            "Shock: do this now. Find and stop bleeding",
            "could not be looked at: first look, belly, first look, background",
            "right leg: no attempt to convert the tourniquet recorded"
        );
        Took(56);
    }

    [Fact]
    public async Task Odd_an_arm_torn_off_and_no_attempt_however_well_he_is()
    {
        await OpenAsync("Odd");
        await Carer.LookAsync([
            "An arm or a leg bleeds",
            "Left arm, torn off",
            "Tourniquet on; it stopped",
            "Nothing else bleeds",
            .. Touch.AllClear,
            "Crush",
            "10 to 30 minutes ago",
        ]);
        await SaysAsync("LEFT arm: Leave it on", "Surgery or clinic: when");
        await Assertions.Expect(Place).ToContainTextAsync("The tourniquet controls a limb that is wholly or partly severed.");
        await NoAttemptAsync();
        await Carer.DueAsync("Look where it sits");
        await Carer.SitsAsync("Bare skin", "5 to 7 cm above the wound", "Windlass");
        await Page.GetByText("It sits as it should.").WaitForAsync();
        await Carer.FollowAsync("Does this limb need one at all?");
        await Page.Heading("Leave the tourniquet on").WaitForAsync();
        await Assertions.Expect(Page.Button("Start the attempt")).ToHaveCountAsync(0);
        await Carer.FollowAsync("Limbs");
        await Carer.GoToAsync("Now");

        await SayMeansAsync("Plain gauze", "Surgery within 4 h");
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("92", "18", systolic: "124");
        await Carer.PassAsync(11);
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("88", "16", systolic: "126");
        await Page.Heading("LEFT arm: Leave it on").WaitForAsync();
        await NoAttemptAsync();
        await Carer.GoToAsync("Care");
        await Carer.LogAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Done: .*antibiotics") }));
        await HandOverAsync(
            "Odd",
            "needs surgery that can take the left arm: 1 h 4",
            "needs advice: none is recorded as asked for",
            "no need seen for a second tourniquet on the left arm, or a tighter one: it holds, as last looked at",
            "no need seen for blood: none of the signs of shock asked for",
            "no attempt in the field. The tourniquet controls a limb that is wholly or partly severed.",
            "wound w1, left arm: amputation; bleeding none",
            "left arm: no attempt to convert the tourniquet recorded"
        );
        Took(86);
    }

    [Fact]
    public async Task Arvid_found_with_a_tourniquet_perhaps_past_six_hours()
    {
        await OpenAsync("Arvid");
        await Carer.SayBetweenAsync("Wound found", 400, 380, "Bleeding", "Left leg");
        await Carer.SayBetweenAsync("Tourniquet tightened", 390, 300, "Left leg", "Tightened (t1)");
        await SaysAsync("LEFT leg: Leave it on", "Has it stopped?");
        await Carer.LogAsync("None");
        await NoAttemptAsync();
        await Carer.LookAsync(["Nothing else bleeds", .. Touch.AllClear, "Fall", "4 to 12 hours ago"]);
        await SaysAsync("LEFT leg: Leave it on", "Pulse below the tourniquet");
        await Assertions.Expect(Place).ToContainTextAsync("Leave it tight. Keep the limb cool, never on snow or ice");
        await Carer.TapAsync(Carer.Dock);
        await Carer.LogAsync("No pulse");
        await SayMeansAsync("Haemostatic gauze", "Surgery within 12 h");
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("84", "16");
        await Carer.PassAsync(11);
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("80", "14");
        await Page.Heading("LEFT leg: Leave it on").WaitForAsync();
        await NoAttemptAsync();
        await Carer.GoToAsync("Care");
        await Assertions.Expect(Place).ToContainTextAsync("Too late for tranexamic acid");
        await HandOverAsync(
            "Arvid",
            "needs surgery that can take the left leg: 2 h 00 min passed 4 h 4",
            "6 h 00 min passed 4",
            "no attempt in the field. The tourniquet has been on for six hours or more",
            "NOT NOW: Too late for tranexamic acid",
            "left leg: no attempt to convert the tourniquet recorded"
        );
        Took(98);
    }

    [Fact]
    public async Task Ines_a_strap_high_over_clothing_gives_way_to_a_second_one()
    {
        await OpenAsync("Ines");
        await Carer.SayAsync("Wound found", "30 min ago", "Bleeding", "Right leg");
        await Carer.SayAsync("Tourniquet tightened", "30 min ago", "Right leg", "Tightened (t1)");
        await Carer.LogAsync("None");
        await Carer.LookAsync(["Nothing else bleeds", .. Touch.AllClear, "Vehicle", "30 to 60 minutes ago"]);
        await SaysAsync("RIGHT leg: Check first", "Enter the age");
        await Carer.DueAsync("Look where it sits");
        await Carer.SitsAsync("Clothing", "High on the limb", "Improvised");
        await Page.GetByText("It is improvised, over clothing, high on the limb.").WaitForAsync();
        await NothingIsLetOutAsync();
        await Carer.LogAsync("Second one is on and tight");
        await NothingIsLetOutAsync();
        await Carer.LogAsync("It still bleeds: tighten the second one further");
        await Assertions.Expect(Place).ToContainTextAsync("Still bleeding: tighten further, or add one more beside them");
        await NothingIsLetOutAsync();
        await Carer.LogAsync("It has stopped");
        await Carer.LogAsync("First one is slack");
        await Carer.LogAsync("It has stopped");
        await Page.GetByText("It sits as it should.").WaitForAsync();
        await Carer.FollowAsync("To Now");

        // One of the two is still tight, and the clock runs on from the first.
        await SaysAsync("RIGHT leg: Check first", "Enter the age");
        await Assertions.Expect(Place).ToContainTextAsync("30 min");
        await SayMeansAsync("Cloth", "Surgery within 1 h");
        await Carer.EnterAgeAsync("29");
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("84", "16");
        await Carer.PassAsync(11);
        await Carer.ToSignsAsync();
        await Carer.TakeSignsAsync("80", "14");
        await SaysAsync("RIGHT leg: Wait for help", "Has it stopped?");
        await NoAttemptAsync();
        await Carer.GoToAsync("Care");
        await Carer.TapAsync(Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Has it stopped[?]: ") }));
        await Carer.LogAsync(Sheet.GetByRole(AriaRole.Button, new() { Name = "None", Exact = true }));
        await HandOverAsync(
            "Ines",
            "needs surgery that can take the right leg: 1 h 1",
            "perhaps needs a second tourniquet on the right leg, or a tighter one; it is not known: pulse below it not checked",
            "no attempt in the field: surgery or a clinic is near.",
            "right leg: no attempt to convert the tourniquet recorded"
        );
        Took(94);
    }

    private async Task OpenAsync(string alias)
    {
        await Page.ReadCautionsAsync();
        await Carer.OpenAsync(alias);
    }

    /// <summary>Help, a watcher, and something to pack and to press with.</summary>
    private async Task SayMeansAsync(string packing, string help)
    {
        await Carer.SayAsync("Surgery or clinic: when", "Surgery", help);
        await Carer.SayAsync("Who can watch", null, "You or another can watch closely");
        await Carer.SayAsync("Supplies left", packing, "2");
        await Carer.SayAsync("Supplies left", "Pressure dressing", "1");
    }

    /// <summary>The head of a limb's card, and what lies under the thumb.</summary>
    private async Task SaysAsync(string head, string act)
    {
        await Page.Heading(head).WaitForAsync();
        await Assertions.Expect(Carer.Dock).ToHaveTextAsync(act);
    }

    /// <summary>Neither under the thumb nor on a card; the sheet has it only against the advice.</summary>
    private async Task NoAttemptAsync()
    {
        await Assertions.Expect(Carer.Dock).Not.ToHaveTextAsync("Start an attempt");
        await Assertions.Expect(Page.Locator(".limb-now").GetByText("Start an attempt")).ToHaveCountAsync(0);
        await Carer.CheckAsync(Page.Button("Start an attempt").Last);
        await Sheet.WaitForAsync();
        var offered = await Sheet.Locator(".options button").AllInnerTextsAsync();
        Assert.NotEmpty(offered);
        Assert.All(offered, o => Assert.StartsWith("Start against this advice", o, StringComparison.Ordinal));
        await Carer.CheckAsync(Page.Button("Close without logging"));
    }

    private Task NothingIsLetOutAsync() => Assertions.Expect(Page.Button("First one is slack")).ToHaveCountAsync(0);

    /// <summary>What is read aloud says all that, and then care ends.</summary>
    private async Task HandOverAsync(string alias, params string[] says)
    {
        await Carer.GoToAsync("Hand over");
        var needs = Page.GetByRole(AriaRole.Region, new() { Name = $"What {alias} needs" });
        foreach (var need in says.Where(s => s.Contains("need", StringComparison.Ordinal)))
            await Assertions.Expect(needs).ToContainTextAsync(need, new() { IgnoreCase = true });
        await Carer.FollowAsync("Read it aloud");
        foreach (var line in says)
            await Assertions.Expect(Page.GetByRole(AriaRole.Article)).ToContainTextAsync(line);
        await Carer.FollowAsync("Back to Hand over");
        await Carer.FollowAsync("Care ended");
        await Carer.RadioAsync(null, "Handed over");
        await Page.GetByLabel("To whom").FillAsync("Rescue team");
        await Carer.LogAsync("Log entry");
        await Page.Heading("Care ended: handed over to Rescue team").WaitForAsync();
        await Assertions.Expect(Carer.Dock).ToHaveCountAsync(0);
    }

    /// <summary>From opening the record to the end of care; what is typed on the phone's own keyboard is not counted.</summary>
    private void Took(int taps)
    {
        TestContext.Current.TestOutputHelper!.WriteLine(
            $"| {TestContext.Current.TestMethod!.MethodName.Replace('_', ' ')} | {Carer.Taps} |"
        );
        Assert.Equal(taps, Carer.Taps);
    }
}
