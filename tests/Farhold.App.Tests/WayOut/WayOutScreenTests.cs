using AngleSharp.Dom;
using Microsoft.AspNetCore.Components.Forms;

namespace Farhold.App.Tests.WayOut;

public class WayOutScreenTests : WayTest
{
    [Fact]
    public async Task A_plan_made_by_touch_is_told_and_logged_and_the_verdict_waits_for_it()
    {
        await ReadyAsync();
        Assert.Equal(Verdict.Attempt, Care.Picture!.Limbs[0].Verdict);
        var screen = Shown();
        Press(screen, Texts.ModeWait);
        Press(screen, "15 min");
        Press(screen, "30 min");
        Press(screen, "45 min");
        Press(screen, Texts.LegKeep);
        Assert.StartsWith(
            "More than 19 in 20 that higher care is reached before ",
            screen.Find(".way-range").TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains("in eight of ten trials", screen.Find(".way-case").TextContent, StringComparison.Ordinal);
        Assert.Equal(20, screen.FindAll("figure svg[aria-label^='More than 19'] circle").Count);
        // 40 min on, 45 min at most to come: inside the window of 2 h, with every trial.
        Assert.Contains(
            "More than 99 in 100 (100.0 % ± 0.0)",
            screen.Find("[aria-labelledby=way-left-leg]").TextContent,
            StringComparison.Ordinal
        );
        Breathe();
        Assert.Contains("Help, way out", screen.Find("svg desc").TextContent, StringComparison.Ordinal);

        Press(screen, Texts.WayLog);
        var help = Last<Payload.HelpExpected>();
        Assert.Equal(Way.Plan!.Id, help.Plan);
        Assert.InRange(help.Latest!.Value - Now, Minutes(30), Minutes(46));
        Assert.Equal(Verdict.AwaitHelp, Care.Picture!.Limbs[0].Verdict);
        Assert.Contains(Texts.WayIsLogged, screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Late_help_is_no_reason_to_wait()
    {
        await ReadyAsync();
        Way.Use(Waits(100, 200, 600));
        var screen = Shown();
        Press(screen, Texts.WayLog);
        Assert.Equal(Verdict.Attempt, Care.Picture!.Limbs[0].Verdict);
    }

    [Fact]
    public async Task What_is_logged_is_drawn_on_the_limb_line_until_the_plan_is_another()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        Assert.Contains("Help, as told", Line(), StringComparison.Ordinal);
        await TellAsync(Way.Help()!);
        Assert.Contains("Help, way out", Line(), StringComparison.Ordinal);
        Way.Use(Waits(30, 60, 121));
        Assert.Contains("Help, as told", Line(), StringComparison.Ordinal);

        string Line() => Render<LimbsScreen>(p => p.Add(s => s.Casualty, Casualty)).Find("svg desc").TextContent;
    }

    [Fact]
    public async Task With_a_place_the_line_has_its_night_and_without_one_the_light_is_called_unknown()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var screen = Shown();
        Breathe();
        Assert.DoesNotContain("Night from", screen.Find("svg desc").TextContent, StringComparison.Ordinal);
        Assert.Contains("Light along the way is unknown", screen.Markup, StringComparison.Ordinal);
        // Invented ridge in New Zealand; 4 May 2031, 14:00 there.
        screen.Find("main input[type=text]").Change("44.1 S 169.8 E");
        await BreatheUntilAsync(() => screen.FindAll("svg desc").Any());
        Assert.Contains("Night from", screen.Find("svg desc").TextContent, StringComparison.Ordinal);
        Assert.Contains("44° 06.000′ S", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_that_is_none_is_refused_by_character_and_the_last_one_stays()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120) with { From = new(-44.1, 169.8) });
        var screen = Shown();
        screen.Find("main input[type=text]").Change("91 N 10 E");
        Assert.Contains("Character 1", screen.Find("main [role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(new PlanPlace(-44.1, 169.8), Way.Plan!.From);
    }

    [Fact]
    public async Task A_helicopter_by_chance_or_a_carry_is_made_by_touch()
    {
        await ReadyAsync();
        var screen = Shown();
        Press(screen, Texts.ForkChance);
        PressFirst(screen, Texts.ModeAircraft);
        Press(screen, "10 min");
        Press(screen, "15 min");
        Press(screen, "30 min");
        Press(screen, Texts.LegKeep);
        // The second way's own row of modes.
        Named(screen, Texts.ModeCarry).ElementAt(1).Click();
        foreach (var key in "40")
            Press(screen, key.ToString());
        Press(screen, Texts.LegKeep);
        Press(screen, Texts.OfTen(7));
        var choice = Assert.IsType<Choice>(Way.Plan!.Legs.Single());
        Assert.Equal([0.7, 0.3], choice.Ways.Select(w => Math.Round(w.Probability, 9)));
        Assert.Equal(40, Assert.IsType<Measured>(Assert.IsType<Travel>(choice.Ways[1].Legs.Single()).Extent).Stretch!.Value.DistanceKm);
        Assert.Contains("Before its 2 h 00 min", screen.Markup, StringComparison.Ordinal);
        Assert.Contains("About 7 in 10", screen.Find("[aria-labelledby=way-left-leg]").TextContent, StringComparison.Ordinal);
        Breathe();
        Assert.Contains("No aircraft comes", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ford_that_closes_is_made_by_touch_with_what_is_done_otherwise()
    {
        await ReadyAsync();
        var screen = Shown();
        Press(screen, Texts.ForkTry);
        // Not yet a plan: nothing is tried. Each of the three ways has its own row of modes.
        Assert.NotEmpty(Way.Faults);
        Leg(0, "15 min", "30 min", "45 min");
        Leg(2, "2 h", "3 h", "4 h");
        foreach (var time in (string[])["1 h", "2 h", "4 h"])
            Named(screen, time).First().Click();
        var choice = Assert.IsType<Choice>(Way.Plan!.Legs.Single());
        Assert.Equal((ChoiceKind.Try, 0.5), (choice.Kind, choice.Ways[0].Probability));
        Assert.Equal(new ThreePoint(Minutes(60), Minutes(120), Minutes(240)), choice.Closes);
        Assert.Equal([1, 0, 1], choice.Ways.Select(w => w.Legs.Length));
        Assert.Contains(Texts.ClosesTitle(Texts.ClosesIn(choice.Closes!)), screen.Markup, StringComparison.Ordinal);
        await BreatheUntilAsync(() => Way.Forecast is not null);
        Assert.Equal(0.5, Way.Forecast!.Outlook.Cases.Ways[0].Share.Value, 0.05);
        Press(screen, Texts.ClosesTakeBack);
        Assert.Null(Assert.IsType<Choice>(Way.Plan!.Legs.Single()).Closes);

        void Leg(int way, params string[] times)
        {
            Named(screen, Texts.ModeWait).ElementAt(way).Click();
            foreach (var time in times)
                Press(screen, time);
            Press(screen, Texts.LegKeep);
        }
    }

    [Fact]
    public async Task A_carry_says_how_many_it_takes_and_how_long_they_last()
    {
        await ReadyAsync();
        var screen = Shown();
        PressFirst(screen, Texts.ModeCarry);
        Assert.DoesNotContain(Texts.LegWanted(18), screen.Markup, StringComparison.Ordinal);
        Press(screen, "3");
        Assert.Contains(Texts.LegWanted(18), screen.Markup, StringComparison.Ordinal); // three teams of six beyond 1.6 km
        Assert.Contains("By hand: 2 people with 80 kg, about 3 min", screen.Markup, StringComparison.Ordinal); // Knapik 2000: 2.7 min
        Assert.Contains("Hip and shoulder harness: 2 people with 80 kg, about 25 min", screen.Markup, StringComparison.Ordinal); // 25.4 min
    }

    [Fact]
    public async Task Weather_that_may_hold_a_leg_up_is_told_by_touch_and_taken_out_again()
    {
        await ReadyAsync();
        var screen = Shown();
        PressFirst(screen, Texts.ModeAircraft);
        foreach (var time in (string[])["10 min", "15 min", "30 min"])
            Press(screen, time);
        Pick(screen, Texts.LegHoldChance, Texts.OfTen(3));
        Press(screen, Texts.LegKeep);
        Assert.Equal(Texts.LegMissing, screen.Find("main .danger[role=alert]").TextContent); // how long is not told yet
        foreach (var time in (string[])["1 h", "4 h", "24 h"])
            screen
                .Find($"[aria-label='{Texts.LegHoldTimes}'] ~ .chips")
                .QuerySelectorAll("button")
                .Single(b => b.TextContent == time)
                .Click();
        Press(screen, Texts.LegKeep);

        var leg = Assert.IsType<Travel>(Way.Plan!.Legs.Single());
        Assert.Equal(new Hold(0.3, new(Minutes(60), Minutes(240), Minutes(1440))), leg.Hold);
        Assert.Contains(
            Texts.LegHold(Texts.OfTen(3), "1 h 00 min", "24 h 00 min"),
            screen.Find(".way-legs").TextContent,
            StringComparison.Ordinal
        );
        Assert.Equal(leg.Hold, Assert.IsType<Travel>(Reread().Legs.Single()).Hold);

        screen.Find(".way-legs button.item").Click();
        Pick(screen, Texts.LegHoldChance, "Left out");
        Press(screen, Texts.LegKeep);
        Assert.Null(Assert.IsType<Travel>(Way.Plan!.Legs.Single()).Hold);

        Plan Reread() => Assert.IsType<Read<Plan>.Usable>(PlanReader.Read(PlanWriter.Write(Way.Plan!).Utf8, "plan")).Value;
    }

    [Fact]
    public async Task A_hold_of_a_loaded_plan_is_offered_as_it_is()
    {
        await ReadyAsync();
        var hold = new Hold(0.35, new(Minutes(30), Minutes(120), Minutes(480)));
        Way.Use(Waits(30, 60, 120) with { Legs = [((Travel)Waits(30, 60, 120).Legs[0]) with { Mode = TravelMode.Vehicle, Hold = hold }] });
        var screen = Shown();
        screen.Find(".way-legs button.item").Click();
        Assert.Contains(screen.FindAll("summary"), s => s.TextContent == Texts.LegHoldTitle(Texts.OfHundred("35")));
        Assert.True(
            screen
                .FindAll("label.choice")
                .Single(l => l.TextContent.Trim() == Texts.OfHundred("35"))
                .QuerySelector("input")!
                .HasAttribute("checked")
        );
        Press(screen, Texts.LegKeep);
        Assert.Equal(hold, Assert.IsType<Travel>(Way.Plan!.Legs.Single()).Hold);
    }

    private static void Pick(IRenderedComponent<Frame> screen, string legend, string option) =>
        screen
            .FindAll("fieldset")
            .Single(f => f.QuerySelector("legend")?.TextContent == legend)
            .QuerySelectorAll("label")
            .Single(l => l.TextContent.Trim() == option)
            .QuerySelector("input")!
            .Change(true);

    [Fact]
    public async Task Whichever_comes_first_has_no_forecast_until_each_way_has_an_end()
    {
        await ReadyAsync();
        var screen = Shown();
        Press(screen, Texts.ForkFirst);
        Assert.Contains("a way needs an end", screen.Find("main [role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Null(Way.Forecast);
        Assert.Empty(Named(screen, Texts.WayLog));
    }

    [Fact]
    public async Task A_leg_is_changed_moved_and_removed()
    {
        await ReadyAsync();
        var screen = Shown();
        Way.Use(
            Waits(30, 60, 120) with
            {
                Legs = [.. Waits(30, 60, 120).Legs, Waits(10, 20, 30).Legs[0] with { Slot = 2, Name = "last" }],
            }
        );
        screen.Render();
        Leg("last").Click();
        Press(screen, Texts.LegEarlier);
        Assert.Equal(["last", null], Way.Plan!.Legs.Select(l => l.Name));
        Leg("last").Click();
        Press(screen, "5 min");
        Press(screen, Texts.LegKeep);
        Assert.Equal(Minutes(5), ((ThreePoint)((Travel)Way.Plan!.Legs[0]).Extent).Low);

        IElement Leg(string name) => screen.FindAll(".way-legs button").Single(b => b.TextContent.Contains(name, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Times_that_do_not_rise_are_not_kept()
    {
        await ReadyAsync();
        var screen = Shown();
        Press(screen, Texts.ModeWait);
        Press(screen, "45 min");
        Press(screen, "30 min");
        Press(screen, "15 min");
        Assert.Contains(Texts.LegTimesRise, screen.Markup, StringComparison.Ordinal);
        Press(screen, Texts.LegKeep);
        Assert.Contains(Texts.LegMissing, screen.Markup, StringComparison.Ordinal);
        Assert.Null(Way.Plan);
    }

    [Fact]
    public async Task A_suggested_time_carries_its_mark_into_what_the_forecast_rests_on()
    {
        await ReadyAsync();
        var screen = Shown();
        Press(screen, Texts.ModeWait);
        screen.FindAll("details button").First(b => b.TextContent.Contains("call handling", StringComparison.OrdinalIgnoreCase)).Click();
        Press(screen, Texts.LegKeep);
        Assert.Contains(
            Way.Forecast!.Outlook.Rests,
            r => r.What.StartsWith("call handling", StringComparison.Ordinal) && r.Mark == Evidence.Assumption
        );
        Breathe();
        Assert.Contains(Texts.EvidenceAssumption, screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_set_out_long_ago_is_asked_about()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        Pass(11);
        var screen = Shown();
        Assert.Contains("Is it still so?", screen.Find("main [role=alert]").TextContent, StringComparison.Ordinal);
        PressFirst(screen, Texts.WayStartNow);
        Assert.Equal(Now, Way.Plan!.Start);
    }

    private const string OtherDay = """{"start":"2031-06-07T08:00:00Z","legs":[{"mode":"wait","low":10,"likely":20,"high":40}]}""";

    [Fact]
    public async Task A_plan_of_another_day_says_which()
    {
        await ReadyAsync();
        var screen = Shown();
        screen.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(OtherDay, "spur.json"));
        Assert.Contains(Texts.WayOtherDay("7 Jun 2031 20:00"), screen.Find("main [role=status]").TextContent, StringComparison.Ordinal);
        PressFirst(screen, Texts.WayStartNow);
        Assert.Equal(Now, Way.Plan!.Start);
    }

    [Fact]
    public async Task A_plan_that_is_loaded_takes_the_place_of_the_one_at_hand_only_once_that_is_said()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var before = Way.Plan;
        var screen = Shown();
        screen.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(OtherDay, "spur.json"));
        Assert.Same(before, Way.Plan);
        var asked = screen.Find($"[role=group][aria-label='{Texts.WayReplaceTitle}']").TextContent;
        Assert.Contains("4 May 2031 14:00", asked, StringComparison.Ordinal);
        Assert.Contains("spur.json sets out 7 Jun 2031 20:00", asked, StringComparison.Ordinal);
        Press(screen, Texts.WayReplaceNo);
        Assert.Same(before, Way.Plan);

        screen.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(OtherDay, "spur.json"));
        Press(screen, Texts.WayReplaceYes);
        Assert.Equal(Instant.FromUtc(2031, 6, 7, 8, 0), Way.Plan!.Start);
        Assert.DoesNotContain(Texts.WayReplaceTitle, screen.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "plan.json",
        """{"start":"2031-05-04T02:00:00Z","legs":[{"branches":[{"probability":1.2,"legs":[]},{"legs":[]}]}]}""",
        "Line 1, column 69",
        "probability has to be a number from 0 to 1, not 1.2"
    )]
    [InlineData("plan.json", """{"start":"2031-05-04T02:00:00Z"}""", "Line 1", "a plan without stages has no end")]
    [InlineData(
        "plan.json",
        """{"start":"2031-05-04T02:00:00Z","legs":[{"mode":"walk","track":"gone.gpx"}]}""",
        "Line 1",
        "choose that file together with the plan"
    )]
    [InlineData(
        "way.gpx",
        "<gpx version=\"1.1\"><trk><trkseg><trkpt lat=\"46\" lon=\"8\"/><trkpt lat=\"46.01\" lon=\"8\"/></trkseg></trk></gpx>",
        "Line 1",
        "The track has no heights"
    )]
    [InlineData("way.gpx", "<gpx version=\"1.1\"><trk>", "Line 1", "")]
    public async Task A_file_that_cannot_be_used_is_refused_where_it_fails_and_the_plan_stays(
        string name,
        string content,
        string place,
        string reason
    )
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var before = Way.Plan;
        var screen = Shown();
        screen.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(content, name));
        var told = screen
            .FindAll("main [role=alert]")
            .Single(a => a.TextContent.Contains(Texts.WayRefused, StringComparison.Ordinal))
            .TextContent;
        Assert.Contains(name, told, StringComparison.Ordinal);
        Assert.Contains(place, told, StringComparison.Ordinal);
        Assert.Contains(reason, told, StringComparison.Ordinal);
        Assert.Same(before, Way.Plan);
    }

    [Fact]
    public async Task A_track_becomes_a_leg_with_its_length_its_climb_and_the_place_it_begins()
    {
        await ReadyAsync();
        var screen = Shown();
        screen
            .FindComponent<InputFile>()
            .UploadFiles(
                InputFileContent.CreateFromText(
                    "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>Down the spur</name><trkseg><trkpt "
                        + "lat=\"46\" lon=\"8\"><ele>900</ele></trkpt><trkpt lat=\"46.03\" lon=\"8\"><ele>600</ele></trkpt></trkseg>"
                        + "</trk></gpx>",
                    "spur.gpx"
                )
            );
        Press(screen, Texts.LegKeep);
        var leg = Assert.IsType<Travel>(Way.Plan!.Legs.Single());
        var stretch = Assert.IsType<Measured>(leg.Extent).Stretch!.Value;
        // 0.03 degrees of latitude at 46 N: 3.334 km on WGS 84 (series of Vincenty 1975 by hand, 111.14 km a degree).
        Assert.Equal(3.334, stretch.DistanceKm, 0.003);
        Assert.Equal(300, stretch.DescentM);
        Assert.Equal(("Down the spur", new PlanPlace(46, 8)), (leg.Name, Way.Plan.From!.Value));
        Assert.NotNull(Way.Forecast!.Darkness);
    }
}
