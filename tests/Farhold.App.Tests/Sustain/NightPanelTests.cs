using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Sustain;

public class NightPanelTests : CareTest
{
    private static readonly PlanPlace Valley = new(-44.6, 168.9);

    private NightHours Night => Services.GetRequiredService<NightHours>();

    [Fact]
    public async Task By_default_it_is_the_usual_night_of_the_clock_and_says_so()
    {
        await TightAsync();
        Assert.Equal($"{Texts.NightNext("22:00", "5 May 06:00")} {Texts.NightOfUsual}", Said(Show<SustainScreen>()));
        Assert.Contains(Texts.NightNoPlace, Text(Panel(Show<SustainScreen>())), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hours_are_set_by_touch_kept_on_the_phone_and_taken_back_to_the_usual()
    {
        await TightAsync();
        var screen = Show<SustainScreen>();
        Tap(screen, Texts.StepLess(Texts.NightBegins));
        Tap(screen, Texts.StepMore(Texts.NightEnds));
        Assert.Equal((new(21, 0), new(7, 0)), Night.Hours);
        Assert.Equal($"{Texts.NightNext("21:00", "5 May 07:00")} {Texts.NightOfSet}", Said(screen));
        Assert.Equal(Night.Hours, new NightHours(Phone, Clock, Preferences).Hours);
        Assert.Equal(Night.Around(Now).Nights, Desk.Rhythm.Nights);
        Tap(screen, Texts.NightUsual("22:00", "06:00"));
        Assert.Equal(NightBy.UsualHours, Night.InForce(Now).By);
    }

    [Fact]
    public async Task However_often_one_taps_the_night_grows_no_wider_than_it_may()
    {
        await TightAsync();
        var screen = Show<SustainScreen>();
        for (var i = 0; i < 8; i++)
        {
            Tap(screen, Texts.StepMore(Texts.NightEnds));
            Tap(screen, Texts.StepLess(Texts.NightBegins));
        }

        Assert.True(Rhythm.CanBeANight(Night.Hours.From, Night.Hours.To));
        Assert.Equal(Rhythm.LongestNight, Desk.Rhythm.Nights[2] is var night ? night.To - night.From : default);
    }

    [Theory]
    [InlineData("18-7")]
    [InlineData("6-6")]
    [InlineData("25-6")]
    [InlineData("night")]
    public void What_was_kept_and_is_no_night_counts_as_nothing_set(string kept)
    {
        Phone.Set("night", kept);
        Assert.Equal((Rhythm.UsualFrom, Rhythm.UsualTo), Night.Hours);
    }

    [Fact]
    public async Task It_follows_daylight_where_the_way_out_begins_in_the_phones_time()
    {
        await TightAsync();
        BeginAt(Valley);
        var screen = Show<SustainScreen>();
        Choose(screen, Texts.NightBy, Texts.NightByDaylight);
        var night = DarkNights
            .Around(Now, new(Valley.LatDeg, Valley.LonDeg))
            .Single(n => n.Span.From > Now && n.Span.From < Now + Duration.FromHours(24));
        Assert.Contains(night.Span, Desk.Rhythm.Nights);
        Assert.StartsWith(
            Texts.NightNext(Clock.Show(night.Span.From, Now), Clock.Show(night.Span.To, Now)),
            Said(screen),
            StringComparison.Ordinal
        );
        Assert.Contains(Texts.NightOfDaylight, Said(screen), StringComparison.Ordinal);
        Assert.Contains(Texts.NightCut(Texts.Hours(12)), Said(screen), StringComparison.Ordinal); // May in the south: dark for over 12 h
        Assert.DoesNotContain(screen.FindAll("[role=group]"), g => g.GetAttribute("aria-label") == Texts.NightBegins);
    }

    [Fact]
    public async Task Where_it_does_not_get_dark_nothing_waits_and_the_screen_says_so()
    {
        await TightAsync();
        BeginAt(new(82, 19));
        Night.FollowsDaylight = true;
        Assert.Equal(Texts.NightNone, Said(Show<SustainScreen>()));
        Assert.Empty(Desk.Rhythm.Nights);
    }

    [Fact]
    public async Task Without_a_place_the_hours_hold_and_the_screen_says_why()
    {
        await TightAsync();
        Night.FollowsDaylight = true;
        Assert.Equal($"{Texts.NightNext("22:00", "5 May 06:00")} {Texts.NightWithoutPlace}", Said(Show<SustainScreen>()));
    }

    private void BeginAt(PlanPlace place)
    {
        var way = Services.GetRequiredService<WayDesk>();
        way.Use(
            new(
                null,
                null,
                Now,
                place,
                null,
                0.5,
                4,
                [
                    new Travel(
                        1,
                        null,
                        TravelMode.Wait,
                        new ThreePoint(Duration.FromHours(1), Duration.FromHours(2), Duration.FromHours(3)),
                        DarkRule.Allowed,
                        FlightWindow.AnyHour,
                        null
                    ),
                ]
            )
        );
        way.Stop();
    }

    private static AngleSharp.Dom.IElement Panel(IRenderedComponent<Frame> screen) => screen.Find("section[aria-labelledby=night-title]");

    /// <summary>Which night is in force and why.</summary>
    private static string Said(IRenderedComponent<Frame> screen) =>
        string.Join(' ', Panel(screen).QuerySelectorAll(":scope > p").Select(Text).SkipLast(1)).Trim();
}
