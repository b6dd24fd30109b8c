using System.Collections.Immutable;
using AngleSharp.Dom;
using Microsoft.AspNetCore.Components.Web;

namespace Farhold.App.Tests.Signs;

public class SignsScreenTests : CareTest
{
    private const StringComparison Ordinal = StringComparison.Ordinal;

    [Fact]
    public async Task Signs_are_typed_chosen_and_logged_as_one_entry()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Type(take, "Pulse", "104");
        Tap(take, "Next: Breathing");
        Type(take, "Breathing", "22");
        Tap(take, "Mental state –");
        Choose(take, "Mental state", "Alert");
        Tap(take, "Blood pressure –");
        Choose(take, "Blood pressure cuff", "No cuff here");
        Tap(take, "Log signs");
        Assert.Equal(
            new Payload.SignsTaken
            {
                HeartRate = 104,
                RespiratoryRate = 22,
                Mental = Mental.Alert,
                NoPressureCuff = true,
            },
            Last<Payload.SignsTaken>()
        );
    }

    [Fact]
    public async Task A_pulse_that_can_not_be_stays_on_the_pad_with_what_is_possible()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Type(take, "Pulse", "920");
        Assert.StartsWith("Pulse 920 /minPossible:", Text(take.Find(".pad-shown")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_missing_is_said_beside_the_button_that_asks_for_it()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Tap(take, "Log signs");
        Assert.Equal(Texts.SignsMissing, Text(take.Find(".dock [role=alert]")));
    }

    [Fact]
    public async Task A_mind_that_answers_only_to_pain_is_not_called_pain()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>((nameof(TakeSignsScreen.Part), "mental"));
        Choose(take, "Mental state", "Only to pain");
        Tap(take, "Log signs");
        Assert.Equal(Mental.Pain, Last<Payload.SignsTaken>().Mental);
    }

    /// <summary>Asked for the mind first, and led through all the rest that a look needs before anything else.</summary>
    [Fact]
    public async Task Next_leads_through_a_whole_look_wherever_it_was_begun_and_each_part_begins_in_sight()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>((nameof(TakeSignsScreen.Part), "mental"));
        Choose(take, "Mental state", "Alert");
        Tap(take, "Next: Skin and dizziness");
        foreach (var seen in (string[])["Pale", "Skin cool (chest, not hands)", "Skin clammy", "Dizzy or faint"])
            Choose(take, seen, "No");
        Tap(take, "Next: Pulse at the wrist");
        Choose(take, "Pulse at the wrist", "Strong");
        Tap(take, "Next: Blood pressure");
        Choose(take, "Blood pressure cuff", "No cuff here");
        Tap(take, "Next: Pulse");
        Type(take, "Pulse", "84");
        Tap(take, "Next: Breathing");
        Type(take, "Breathing", "16");
        Tap(take, "Next: Mental state");
        Assert.Equal(Enumerable.Repeat("taking", 6), Phone.BroughtUp);
    }

    /// <summary>
    /// The refill stands for the pressure where there is no cuff: it can be entered after saying so, as every other sign can.
    /// </summary>
    [Fact]
    public async Task That_there_is_no_cuff_takes_away_the_keys_of_the_pressure_alone()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Tap(take, "Blood pressure –");
        Choose(take, "Blood pressure cuff", "No cuff here");
        Assert.Empty(take.FindAll(".pad"));
        Tap(take, "Capillary refill –");
        Type(take, "Capillary refill", "2");
        Tap(take, "Oxygen saturation –");
        Type(take, "Oxygen saturation", "86");
        Tap(take, "Log signs");
        Assert.Equal(
            new Payload.SignsTaken
            {
                NoPressureCuff = true,
                CapillaryRefillS = 2,
                Spo2 = 86,
            },
            Last<Payload.SignsTaken>()
        );
    }

    [Fact]
    public async Task A_temperature_typed_in_Fahrenheit_is_kept_in_Celsius()
    {
        await TightAsync();
        Preferences.Temperature = TemperatureUnit.Fahrenheit;
        var take = Show<TakeSignsScreen>();
        Tap(take, "Temperature –");
        Type(take, "Temperature", "98.6");
        Tap(take, "Temperature 98.6 °F");
        Tap(take, "Log signs");
        Assert.Equal(37.0, Last<Payload.SignsTaken>().TemperatureC);
    }

    [Fact]
    public async Task Signs_of_earlier_are_not_logged_as_of_now_and_the_button_says_when()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Type(take, "Pulse", "104");
        Choose(take, "When", "15 min ago");
        Tap(take, "Log signs: 13:45");
        Assert.Equal(Happened.At(Now - Duration.FromMinutes(15)), State.Of(Kind.SignsTaken).Single().When);
    }

    [Fact]
    public async Task No_sign_is_no_entry()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Tap(take, "Log signs");
        Assert.NotEmpty(take.FindAll("[role=alert]"));
        Assert.Empty(State.Of(Kind.SignsTaken));
    }

    [Fact]
    public async Task A_pulse_tapped_along_goes_into_the_entry_once_it_is_counted_enough()
    {
        await TightAsync();
        var take = Show<TakeSignsScreen>();
        Tap(take, "Count by tapping along");
        for (var i = 0; i < 31; i++)
        {
            take.Find(".pulse-pad").TriggerEvent("onpointerdown", new PointerEventArgs());
            Time.Advance(TimeSpan.FromMilliseconds(i % 2 == 0 ? 590 : 610));
        }

        Assert.Contains("Enough", Text(take.Find(".tap [role=status]")), StringComparison.Ordinal);
        Tap(take, "Take 100");
        Tap(take, "Log signs");
        Assert.Equal(100, Last<Payload.SignsTaken>().HeartRate);
    }

    [Fact]
    public async Task Last_values_show_their_age_and_say_when_they_are_too_old()
    {
        await TightAsync();
        await LogAsync(21, Well);
        var rows = Show<SignsScreen>()
            .FindAll(".last > div")
            .ToDictionary(r => Text(r.QuerySelector("dt")!), r => r.QuerySelectorAll("dd > *").Select(Text));
        Assert.Equal(["88 /min", "21 min old", "too old to decide by"], rows["Pulse"]);
        Assert.Equal(["never"], rows["Oxygen saturation"]);
    }

    [Fact]
    public async Task A_fall_is_told_in_words_and_the_chart_has_a_table()
    {
        await TightAsync(100);
        for (var i = 0; i < 8; i++)
            await LogAsync(90 - (10 * i), new Payload.SignsTaken { HeartRate = 130 - (5 * i) });
        var signs = Show<SignsScreen>();
        Assert.Equal("Pulse: FALLING", Text(signs.Find(".course")));
        Assert.Equal(
            8,
            signs.FindAll("details tbody tr").Count(r => Text(r.ParentElement!.ParentElement!).StartsWith("Pulse, /min", Ordinal))
        );
        var said = signs.Find("svg[role=img]").GetAttribute("aria-label");
        Assert.Contains("Pulse: 8 readings, 95 to 130 /min, last 95 at 13:40, Pulse down 24 %", said, Ordinal);
    }

    [Fact]
    public async Task The_warning_score_keeps_open_what_nobody_saw()
    {
        await TightAsync();
        await LogAsync(
            1,
            new Payload.SignsTaken
            {
                HeartRate = 95,
                RespiratoryRate = 16,
                Mental = Mental.Alert,
            }
        );
        var news = Text(Show<SignsScreen>().FindAll("section").Single(s => Text(s).StartsWith("NEWS2", StringComparison.Ordinal)));

        // Heart rate 91–110 scores 1; open are SpO2 and temperature and systolic (0–3 each) and oxygen (0–2). RCP 2017, chart 1.
        Assert.Contains("1 – 12", news, StringComparison.Ordinal);
        Assert.Contains("temperature", news, StringComparison.Ordinal);
        Assert.Contains("Age not known", news, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sums_on_a_pressure_are_shown_with_its_age()
    {
        await TightAsync();
        await LogAsync(
            3,
            new Payload.SignsTaken
            {
                HeartRate = 90,
                Systolic = 120,
                Diastolic = 75,
            }
        );
        var sums = Text(
            Show<SignsScreen>().FindAll("section").Single(s => Text(s).StartsWith("From the last blood pressure", StringComparison.Ordinal))
        );
        Assert.Contains("0.75 class II", sums, StringComparison.Ordinal); // Mutschler 2013: II from 0.6 to below 1.0
        Assert.Contains("90 mmHg", sums, StringComparison.Ordinal); // (120 + 2 × 75) / 3, common practice
        Assert.Contains("3 min ago", sums, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_course_has_a_table_of_its_last_readings()
    {
        await TightAsync(400);
        for (var i = 0; i < 70; i++)
            await LogAsync(390 - (5 * i), new Payload.SignsTaken { HeartRate = 80 + (i % 9) });
        var table = Show<SignsScreen>().FindAll("details table").Single(t => Text(t).StartsWith("Pulse, ", Ordinal));
        Assert.Equal(60, table.QuerySelectorAll("tbody tr").Length);
        Assert.Contains(Texts.ChartTableLast(60, 70), Text(table), Ordinal);
    }

    [Fact]
    public async Task A_course_is_told_anew_with_every_reading()
    {
        await TightAsync(100);
        for (var i = 0; i < 8; i++)
            await LogAsync(90 - (10 * i), new Payload.SignsTaken { HeartRate = 130 - (5 * i) });
        var signs = Show<SignsScreen>();
        Assert.Equal("Pulse: FALLING", Text(signs.Find(".course")));
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 170 });
        await LogAsync(4, new Payload.SignsTaken { HeartRate = 60 });
        await LogAsync(3, new Payload.SignsTaken { HeartRate = 170 });
        Assert.Empty(signs.FindAll(".course"));
    }

    /// <summary>Rule re-bleeding: loosened, and the pulse rising; (125 - 80) / 80 = 56 %, the first three being 80, 85 and 80.</summary>
    [Fact]
    public async Task The_first_sentence_is_what_a_warning_rule_says_with_what_it_rests_on()
    {
        await TightAsync(300);
        await LogAsync(280, new Payload.TourniquetSlackened("t1"));
        foreach (var (ago, rate) in ((int, double)[])[(100, 80), (90, 85), (80, 80), (60, 98), (40, 108), (30, 112), (20, 118), (2, 125)])
            await LogAsync(ago, new Payload.SignsTaken { HeartRate = rate });
        Assert.Equal(
            "Pulse up 56 %. LEFT leg: The wound may be bleeding again under the dressing.",
            Text(Show<SignsScreen>().Find(".chart-says"))
        );
    }

    [Fact]
    public async Task Without_a_rule_that_says_so_a_change_is_no_sentence()
    {
        await TightAsync(100);
        await LogAsync(30, new Payload.SignsTaken { HeartRate = 70 });
        await LogAsync(1, new Payload.SignsTaken { HeartRate = 100 });
        var signs = Show<SignsScreen>();
        Assert.Contains("▲ 43 %", signs.Find("svg[role=img]").TextContent, Ordinal);
        Assert.Empty(signs.FindAll(".chart-says"));
    }

    /// <summary>On the phone, in a language that runs the other way too.</summary>
    [Fact]
    public async Task The_picture_is_as_wide_as_its_place_never_narrower_than_a_phone_and_never_mirrored()
    {
        await TightAsync();
        await LogAsync(5, Well);
        Phone.Room = 640;
        Assert.StartsWith("0 0 640 ", Drawn().GetAttribute("viewBox"), Ordinal);
        Phone.Room = 290;
        Assert.StartsWith("0 0 328 ", Drawn().GetAttribute("viewBox"), Ordinal);
        Assert.Equal("ltr", Drawn().GetAttribute("dir"));

        IElement Drawn() => Show<SignsScreen>().Find("svg[role=img]");
    }

    [Fact]
    public async Task The_key_says_what_is_on_the_picture_and_where_its_limits_are_from()
    {
        await TightAsync();
        await LogAsync(5, new Payload.SignsTaken { HeartRate = 90, Systolic = 120 });
        Assert.Contains(Texts.ChartNoAge, Key(), Ordinal);
        Assert.DoesNotContain(Texts.ChartPast, Key(), Ordinal);
        await LogAsync(1, new Payload.CasualtyOpened("Tor", AgeYears: 8));
        Assert.Contains(Texts.ChartUsual("8"), Key(), Ordinal);
        Assert.Contains(Texts.ChartPast, Key(), Ordinal);
        Assert.Contains(
            "Pediatric advanced life support pocket card, 2015/2020 edition",
            Text(Show<SignsScreen>().Find(".cited")),
            Ordinal
        );

        string Key() => Text(Show<SignsScreen>().Find(".chart-key"));
    }

    [Fact]
    public async Task Of_a_long_record_a_day_is_shown_and_less_or_all_on_a_tap()
    {
        await TightAsync(3000);
        await LogAsync(2900, Well);
        await LogAsync(600, Well);
        await LogAsync(10, Well);
        var signs = Show<SignsScreen>();
        Assert.Equal(2, Looks());
        Tap(signs, "6 h");
        Assert.Equal(1, Looks());
        Tap(signs, "All");
        Assert.Equal(3, Looks());
        Assert.Equal("true", signs.FindAll(".chart-spans button")[^1].GetAttribute("aria-pressed"));

        int Looks() => signs.Find("svg .c-dots").GetAttribute("d")!.Count(c => c == 'M');
    }

    /// <summary>Royal College of Physicians 2017: for 16 years and over.</summary>
    [Theory]
    [InlineData(15, false)]
    [InlineData(16, true)]
    public async Task The_score_over_time_is_not_drawn_of_a_child(double age, bool drawn)
    {
        await TightAsync();
        await LogAsync(5, Well);
        await LogAsync(1, new Payload.CasualtyOpened("Tor", Sex.Male, age));
        Assert.Equal(drawn, Show<SignsScreen>().Find("svg[role=img]").TextContent.Contains(Texts.ChartScore, Ordinal));
    }

    private static void Type(IRenderedComponent<Frame> take, string pad, string digits)
    {
        foreach (var digit in digits)
            Tap(take, digit == '.' ? "Point" : digit.ToString(), pad);
    }
}
