using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Prepare;

public class PrepareScreensTests : CareTest
{
    [Fact]
    public void What_is_missing_stands_open_and_first()
    {
        Services.GetRequiredService<KeptTrip>().Use(TripPlan.Empty with { Party = [new("Ane", "first aid", true)] });
        var shown = Render<PrepareScreen>();
        var first = shown.FindAll("details")[0];
        Assert.True(first.HasAttribute("open"));
        Assert.Contains(Texts.TripMissing, Text(first), StringComparison.Ordinal);
        Assert.Contains("Two left to care and watch in turns if one is hurt: the party is 1.", Text(first), StringComparison.Ordinal);
    }

    [Fact]
    public void A_party_and_its_kit_are_kept_on_the_phone()
    {
        var shown = Render<PrepareScreen>();
        shown.FindAll("label.field").Single(l => Text(l) == Texts.PartyName).QuerySelector("input")!.Input("Ane");
        shown.Find("form").Submit();
        shown.FindAll("button").Single(b => Text(b) == Texts.PartyNotPractised).Click();
        shown
            .FindAll("button")
            .Single(b => b.GetAttribute("aria-label")?.StartsWith("More: Plain gauze", StringComparison.Ordinal) == true)
            .Click();
        shown.FindAll("button").Single(b => b.GetAttribute("aria-label") == "More: " + Texts.TripHours).Click();
        var again = new KeptTrip(Phone).Plan;
        Assert.Equal(new PartyMember("Ane", "", true), Assert.Single(again.Party));
        Assert.Equal((1, 1), (again.Packed["plain-gauze"], again.HoursToHelp));
    }

    [Fact]
    public void The_plan_to_leave_behind_names_what_is_missing_before_the_rest()
    {
        Services.AddSingleton<IPrinter>(new Nothing());
        Services
            .GetRequiredService<KeptTrip>()
            .Use(
                TripPlan.Empty with
                {
                    Alarm = "Jon calls the valley rescue on Sunday at 20:00",
                    HoursToHelp = 14,
                    Contacts = ["Valley rescue 555 0100"],
                    Party = [new("Ane", "first aid", true)],
                }
            );
        var sheet = Text(Render<TripSheetScreen>().Find("article"));
        var (missing, alarm) = (
            sheet.IndexOf(Texts.TripMissing, StringComparison.Ordinal),
            sheet.IndexOf("Jon calls the valley rescue", StringComparison.Ordinal)
        );
        Assert.InRange(missing, 0, alarm);
        Assert.Contains("longer than a tourniquet may stay on", sheet, StringComparison.Ordinal);
        Assert.Contains("Valley rescue 555 0100", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void Paper_forms_carry_the_words_of_the_screens()
    {
        Services.AddSingleton<IPrinter>(new Nothing());
        var forms = Text(Render<FormsScreen>().Find("article.form-page"));
        Assert.All(ShippedProtocol.Protocol.Tasks, t => Assert.Contains(t.Text, forms, StringComparison.Ordinal));
        var card = Text(Render<FormsScreen>().Find("article"));
        Assert.All(SignPart.All, p => Assert.Contains(p.Name(Texts), card, StringComparison.Ordinal));
    }

    [Fact]
    public void Paper_is_for_an_adult_and_says_so_until_a_child_is_chosen()
    {
        Services.AddSingleton<IPrinter>(new Nothing());
        var shown = Render<FormsScreen>();
        string Sheet() => Text(shown.Find("article.form-page"));
        Assert.Contains(Texts.FormForAdult, Sheet(), StringComparison.Ordinal);
        Assert.Contains("a mug (250 ml)", Sheet(), StringComparison.Ordinal);

        shown.FindAll("label.choice").Single(l => Text(l) == Texts.FormsChild).QuerySelector("input")!.Change("on");
        Assert.Contains(Texts.FormForUnweighed, Sheet(), StringComparison.Ordinal);
        Assert.Contains("80 ml for 10 kg, 120 ml for 20 kg.", Sheet(), StringComparison.Ordinal);
        Assert.DoesNotContain("250 ml", Sheet(), StringComparison.Ordinal);

        shown.FindAll("button").Single(b => Text(b).StartsWith(Texts.FieldMass, StringComparison.Ordinal)).Click();
        foreach (var digit in "25")
            shown.FindAll(".pad-keys button").Single(b => Text(b) == digit.ToString()).Click();
        Assert.Contains(Texts.FormForChild("25 kg (55 lb)"), Sheet(), StringComparison.Ordinal);
        Assert.Contains("small sips: about 130 ml.", Sheet(), StringComparison.Ordinal); // 65 ml an hour by 4-2-1, for two hours
        Assert.Empty(shown.FindAll("[role=alert]"));

        shown.FindAll(".pad-keys button").Single(b => Text(b) == "0").Click();
        Assert.Contains("250 kg (551 lb) is very heavy", Text(shown.Find("[role=alert]")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_browser_that_does_not_tell_the_battery_is_said_to_be_silent()
    {
        await Services.GetRequiredService<BatteryMonitor>().LookAsync();
        Assert.Contains(Texts.BatterySilent, Text(Render<BatteryPanel>().Find("section")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hours_left_come_from_the_drain_that_was_measured()
    {
        var watch = Services.GetRequiredService<BatteryMonitor>();
        Battery.Told = new(0.7, false);
        await watch.LookAsync();
        Time.Advance(TimeSpan.FromMinutes(120));
        Battery.Told = new(0.6, false);
        await watch.LookAsync();
        Assert.Contains("60 %. At present use 10 to 14 h more.", Text(Render<BatteryPanel>().Find("section")), StringComparison.Ordinal);
        Battery.Told = new(0.6, true);
        await watch.LookAsync();
        Assert.Null(watch.HoursLeft);
    }

    [Fact]
    public async Task To_save_the_battery_clocks_count_in_minutes_and_the_screen_is_black()
    {
        await TightAsync();
        Preferences.Look = Look.Saving;
        Assert.Equal("saving", Phone.Shown);
        var shown = Show<NowScreen>();
        Assert.DoesNotMatch(@"\d s\b", Text(shown.Find(".times .counting")));
        Preferences.Look = Look.Night;
        Assert.Matches(@"\d s\b", Text(Show<NowScreen>().Find(".times .counting")));
    }

    private sealed class Nothing : IPrinter
    {
        public void Print() { }
    }
}
