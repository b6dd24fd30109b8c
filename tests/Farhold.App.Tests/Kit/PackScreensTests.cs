using Farhold.App.Tests.Doubles;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Kit;

public class PackScreensTests : CareTest
{
    /// <summary>An invented authority.</summary>
    private const string Orders = """
        {"local":"x","version":"1","title":"X","over":"farhold-base","authority":{"name":"Dr Vigdis Holm","role":"medical lead","date":"2031-01-10"},
         "orders":["paracetamol"]}
        """;

    [Fact]
    public async Task Supplies_never_counted_are_never_enough()
    {
        await TightAsync();
        var shown = Show<SuppliesScreen>();
        Assert.Contains(Texts.SuppliesNone, Text(shown.Find("main")), StringComparison.Ordinal);
        Assert.Contains(Texts.SuppliesNoHelp, Text(shown.Find("main")), StringComparison.Ordinal);
        Assert.DoesNotContain(Texts.SuppliesEnough, shown.FindAll("h2").Select(Text));
    }

    [Fact]
    public async Task A_count_by_steps_logs_only_what_was_touched()
    {
        await TightAsync();
        await LogAsync(5, new Payload.SuppliesStated("plain-gauze", 3));
        var before = Desk.Record!.Count;
        var count = Show<CountScreen>();
        Tap(count, "Less: Plain gauze");
        Tap(count, "More: Drinking water");
        Assert.Contains("2 rolls ✓", Text(Group(count, "Plain gauze")), StringComparison.Ordinal);
        Tap(count, "Log counts: 2");
        Assert.Equal(before + 2, Desk.Record.Count);
        Assert.Equal(
            [("plain-gauze", 2), ("water-ml", 500)],
            State
                .Of(Kind.SuppliesStated)
                .OrderBy(s => s.Id)
                .Select(s => s.As<Payload.SuppliesStated>())
                .TakeLast(2)
                .Select(s => (s.Item, s.Count))
        );
    }

    [Fact]
    public async Task What_runs_short_comes_first_with_its_chance_and_what_to_do()
    {
        await TightAsync();
        await LogAsync(5, new Payload.SuppliesStated("plain-gauze", 1));
        await LogAsync(5, new Payload.SuppliesStated("heat-pack", 40));
        await LogAsync(
            5,
            new Payload.HelpExpected(Now + Duration.FromHours(20), Now + Duration.FromHours(18), Now + Duration.FromHours(30))
        );
        var shown = Show<SuppliesScreen>();
        Assert.Equal(Texts.SuppliesShort, Text(shown.FindAll("main section h2")[0]));
        var first = Text(shown.Find("main .due"));
        Assert.Contains("that help comes later", first, StringComparison.Ordinal);
        Assert.Contains("Keep 1 back for bleeding that starts again.", first, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_drink_and_urine_are_logged_with_one_tap_and_summed()
    {
        await TightAsync();
        var shown = Show<FluidsScreen>();
        Tap(shown, "200 mL", Texts.DrankWater);
        Tap(shown, "100 mL", Texts.DrankMix);
        Tap(shown, "300 mL", Texts.PassedUrine);
        Assert.Equal(new Payload.UrineMeasured(300), Last<Payload.UrineMeasured>());
        var total = shown.FindAll("tbody tr")[^1];
        Assert.Equal(["300 mL", "300 mL"], total.QuerySelectorAll("td").Select(Text));
    }

    [Fact]
    public async Task Fluids_are_a_picture_and_the_same_in_words()
    {
        await TightAsync();
        Assert.Empty(Show<FluidsScreen>().FindAll("svg[role=img]"));
        await LogAsync(60, new Payload.FluidGiven(Fluid.OralWater, 500, "mouth"));
        await LogAsync(30, new Payload.FluidGiven(Fluid.Crystalloid, 250, "vein"));
        var shown = Show<FluidsScreen>();
        var picture = shown.Find("svg[role=img]");
        Assert.Equal("Fluids since 13:00. In 750 mL: drink 500 mL, drip 250 mL. Urine not measured.", picture.GetAttribute("aria-label"));
        Assert.Contains("drink", picture.TextContent, StringComparison.Ordinal);
        Assert.Equal(["drink 500 mL", "drip 250 mL"], shown.FindAll(".chart-key li").Select(Text));
        Assert.Equal("ltr", picture.GetAttribute("dir"));
    }

    [Fact]
    public async Task Nothing_by_mouth_is_said_where_drinks_are_logged()
    {
        await TightAsync();
        Assert.DoesNotContain("Nothing by mouth", Text(Show<FluidsScreen>().Find("main")), StringComparison.Ordinal);
        await LogAsync(1, Well with { RadialPulse = RadialPulse.Weak });
        Assert.Contains("Nothing by mouth", Text(Show<FluidsScreen>().Find("main")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Urine_is_held_against_its_target_by_mass()
    {
        await TightAsync();
        await LogAsync(0, new Payload.CasualtyOpened("Tor", AgeYears: 40, MassKg: 70));
        await LogAsync(180, new Payload.UrineMeasured(300));
        await LogAsync(60, new Payload.UrineMeasured(40));
        var shown = Text(Show<FluidsScreen>().Find("main"));
        Assert.Contains("20 mL/h (0.3 mL/kg/h)", shown, StringComparison.Ordinal);
        // JTS nursing guideline, 70 kg
        Assert.Contains("There should be 35 to 70 mL/h (0.5 to 1 mL/kg/h).", shown, StringComparison.Ordinal);
        Assert.Contains(Texts.UrineBelow, shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Burn_fluid_is_shown_only_with_a_mass()
    {
        await TightAsync();
        await LogAsync(20, new Payload.WoundFound("w2", null, BodyRegion.Chest, WoundNature.Burn));
        var shown = Show<FluidsScreen>();
        shown.FindAll("button").First(b => Text(b).StartsWith(Texts.BurnPercent, StringComparison.Ordinal)).Click();
        Tap(shown, "3", Texts.BurnPercent);
        Tap(shown, "0", Texts.BurnPercent);
        Assert.Contains(Texts.BurnNoMass, Text(shown.Find("main")), StringComparison.Ordinal);
        await LogAsync(0, new Payload.CasualtyOpened("Tor", AgeYears: 40, MassKg: 70));
        Assert.Contains("Start at 300 mL an hour.", Text(shown.Find("main")), StringComparison.Ordinal); // rule of tens: 30 %, 70 kg
    }

    [Fact]
    public async Task The_safe_home_mix_is_the_one_shown()
    {
        await TightAsync();
        Assert.Contains(
            "½ level teaspoons of salt, 6 level teaspoons of sugar",
            Text(Show<FluidsScreen>().Find("main")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_drip_is_counted_only_once_the_set_is_named()
    {
        await TightAsync();
        var shown = Show<FluidsScreen>();
        Pick(shown, Texts.DripAmount, "1000 mL");
        Pick(shown, Texts.DripOver, "8 h");
        Assert.Contains(Texts.DripChoose, Text(shown.Find("main")), StringComparison.Ordinal);
        Assert.DoesNotContain("drops a minute", Text(shown.Find("main")), StringComparison.Ordinal);
        Pick(shown, Texts.DripSet, "20");
        // 1000 × 20 / 480
        Assert.Contains("42 drops a minute One drop about every 1.4 s.", Text(shown.Find("main")), StringComparison.Ordinal);
        Pick(shown, Texts.DripOver, "30 min");
        Assert.Contains($"667 drops a minute {Texts.DripFast}", Text(shown.Find("main")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_an_authority_no_dose_is_shown()
    {
        await TightAsync();
        var shown = Text(Show<DrugsScreen>().Find("main"));
        Assert.Contains(Texts.DrugsAsk, shown, StringComparison.Ordinal);
        Assert.DoesNotContain(" mg", shown, StringComparison.Ordinal);
        Assert.DoesNotContain(" µg", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_ordered_drug_is_logged_as_given_and_then_has_to_wait()
    {
        await ReadyAsync(Well with { Pain = 6 });
        await LogAsync(0, new Payload.CasualtyOpened("Tor", Sex.Male, 40, 70, [], [], "healthy"));
        await new InventedRescue().GiveAsync(
            Orders,
            Services.GetRequiredService<TrustedIssuers>(),
            Services.GetRequiredService<LocalProtocolKeeper>()
        );
        var shown = Show<DrugsScreen>();
        Assert.Contains(Texts.DrugMayNow, Text(shown.Find("main .card")), StringComparison.Ordinal);
        Assert.Contains("Authorised by Dr Vigdis Holm", Text(shown.Find("main .card")), StringComparison.Ordinal);
        Tap(shown, "Log as given: 2 × tablet of 500 mg = 1 g");
        Assert.Equal(new Payload.DrugGiven("paracetamol", 1000, "mg", "mouth"), Last<Payload.DrugGiven>());
        Assert.Contains("Not before 22:00", Text(shown.Find("main .card")), StringComparison.Ordinal); // 14:00 in Auckland and eight hours
        Assert.Contains("paracetamol: 1000 mg in all (once)", Text(shown.Find("main")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_looks_like_a_slip_is_logged_only_after_it_was_looked_at_again()
    {
        await TightAsync();
        var before = Desk.Record!.Count;
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "drug.given"));
        Choose(form, "Drug", "paracetamol");
        form.FindAll("button").Single(b => Text(b).StartsWith("Amount ", StringComparison.Ordinal)).Click();
        foreach (var key in "500")
            Tap(form, key.ToString(), "Amount");
        Choose(form, "Unit of the amount", "g");
        Choose(form, "Route", "By mouth");
        Tap(form, "Log entry");
        Assert.Contains("more than 2 times the largest dose", Text(form.Find("[role=alert]")), StringComparison.Ordinal);
        Assert.Equal(before, Desk.Record.Count);
        Choose(form, "Unit of the amount", "mg");
        Tap(form, "Log entry");
        Assert.Equal(before + 1, Desk.Record.Count);
    }

    [Fact]
    public async Task A_slip_that_is_none_is_logged_once_confirmed()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "urine.measured"));
        form.FindAll("button").Single(b => Text(b).StartsWith("Millilitres ", StringComparison.Ordinal)).Click();
        Tap(form, "3", "Millilitres");
        Tap(form, "Log entry");
        Assert.Empty(State.Of(Kind.UrineMeasured));
        Tap(form, Texts.AskBackYes);
        Assert.Equal(3, Last<Payload.UrineMeasured>().Millilitres);
    }

    private static AngleSharp.Dom.IElement Group(IRenderedComponent<Frame> frame, string label) =>
        frame.FindAll("[role=group]").Single(g => g.GetAttribute("aria-label") == label);
}
