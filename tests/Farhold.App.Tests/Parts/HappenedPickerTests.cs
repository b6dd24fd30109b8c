using AngleSharp.Dom;

namespace Farhold.App.Tests.Parts;

public class HappenedPickerTests : ScreenTest
{
    private HappenedChoice chosen = new HappenedChoice.AtOnce();

    [Fact]
    public void Now_means_the_moment_of_logging()
    {
        Picker();
        Time.Advance(TimeSpan.FromMinutes(3));
        Assert.Equal(Happened.At(Now), chosen.Resolve(Now, Clock));
    }

    [Fact]
    public void Minutes_ago_count_from_when_it_was_said()
    {
        Choose(Picker(), "10 min ago");
        var said = Now;
        Time.Advance(TimeSpan.FromMinutes(4));
        Assert.Equal(Happened.At(said - Duration.FromMinutes(10)), chosen.Resolve(Now, Clock));
    }

    [Fact]
    public void A_clock_time_still_to_come_today_was_yesterday()
    {
        var picker = Picker();
        Choose(picker, "Clock time");
        Type(picker, "Clock time", "2340");
        Assert.Equal(Happened.At(Instant.FromUtc(2031, 5, 3, 11, 40)), chosen.Resolve(Now, Clock));
        Assert.Contains("3 May 23:40", picker.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_keys_of_a_clock_time_begin_in_sight()
    {
        var picker = Picker();
        Choose(picker, "10 min ago");
        Assert.Empty(Phone.BroughtUp);
        Choose(picker, "Clock time");
        Assert.NotNull(picker.Find($"#{Assert.Single(Phone.BroughtUp)} .pad"));
    }

    [Fact]
    public void Between_two_clock_times_is_an_interval_also_across_midnight()
    {
        var picker = Picker();
        Choose(picker, "Between … and …");
        Assert.Null(chosen.Resolve(Now, Clock));
        Choose(picker, "By the clock");
        Type(picker, "Not before", "2350");
        Type(picker, "Not after", "0020");
        Assert.Equal(new Happened(Instant.FromUtc(2031, 5, 3, 11, 50), Instant.FromUtc(2031, 5, 3, 12, 20)), chosen.Resolve(Now, Clock));
    }

    [Fact]
    public void A_span_counts_back_from_when_it_was_said_and_needs_no_keys()
    {
        var picker = Picker();
        Choose(picker, "Between … and …");
        Assert.Empty(picker.FindAll(".pad"));
        Choose(picker, "30 to 60 min ago");
        var said = Now;
        Time.Advance(TimeSpan.FromMinutes(4));
        Assert.Equal(new Happened(said - Duration.FromMinutes(60), said - Duration.FromMinutes(30)), chosen.Resolve(Now, Clock));
        Assert.Empty(picker.FindAll(".pad"));

        // And back: to another span, to the clock, and to no span at all.
        Choose(picker, "2 to 4 h ago");
        Assert.Equal(new Happened(Now - Duration.FromHours(4), Now - Duration.FromHours(2)), chosen.Resolve(Now, Clock));
        Choose(picker, "By the clock");
        Assert.Null(chosen.Resolve(Now, Clock));
        Assert.Equal("Not before", Assert.Single(picker.FindAll(".pad")).GetAttribute("aria-label"));
        Choose(picker, "Now");
        Assert.Empty(picker.FindAll(".when-span"));
    }

    [Fact]
    public void Four_digits_that_are_no_time_of_day_are_refused()
    {
        var picker = Picker();
        Choose(picker, "Clock time");
        Type(picker, "Clock time", "2475");
        Assert.Null(chosen.Resolve(Now, Clock));
        Assert.NotEmpty(picker.FindAll("[role=alert]"));
    }

    [Fact]
    public void A_day_earlier_moves_a_clock_time_back()
    {
        var picker = Picker();
        Choose(picker, "Clock time");
        Type(picker, "Clock time", "1330");
        Button(picker, "One day earlier").Click();
        Assert.Equal(Happened.At(Instant.FromUtc(2031, 5, 3, 1, 30)), chosen.Resolve(Now, Clock));
    }

    [Fact]
    public void An_hour_the_clock_showed_twice_is_taken_as_the_earlier_one()
    {
        // New Zealand's clocks went back on 6 April 2025 at 03:00 to 02:00 (IANA time-zone database).
        var after = Instant.FromUtc(2025, 4, 6, 0, 0);
        Assert.Equal(Instant.FromUtc(2025, 4, 5, 13, 30), Clock.LastBefore(new LocalTime(2, 30), after));
    }

    private IRenderedComponent<HappenedPicker> Picker()
    {
        IRenderedComponent<HappenedPicker>? picker = null;
        picker = Render<HappenedPicker>(p =>
            p.Add(h => h.Label, "When")
                .Add(h => h.Value, chosen)
                .Add(
                    h => h.ValueChanged,
                    choice =>
                    {
                        chosen = choice;
                        picker!.Render(again => again.Add(h => h.Value, choice));
                    }
                )
        );
        return picker;
    }

    private static void Choose(IRenderedComponent<HappenedPicker> picker, string name) =>
        picker
            .FindAll("label")
            .Single(l => (l.QuerySelector("input")!.GetAttribute("aria-label") ?? l.TextContent.Trim()) == name)
            .QuerySelector("input")!
            .Change(true);

    private static void Type(IRenderedComponent<HappenedPicker> picker, string pad, string digits)
    {
        foreach (var digit in digits)
            picker
                .FindAll("[role=group]")
                .Single(g => g.GetAttribute("aria-label") == pad)
                .QuerySelectorAll("button")
                .Single(b => b.TextContent == digit.ToString())
                .Click();
    }
}
