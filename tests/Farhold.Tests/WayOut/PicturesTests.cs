using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Farhold.Tests.WayOut;

/// <summary>Pictures of a forecast, and the sentences they add up to.</summary>
public partial class PicturesTests
{
    private const string Sometimes =
        """{"first":[{"name":"a","probability":0.7,"legs":[{"mode":"aircraft","low":60,"likely":60,"high":60}]}, {"name":"b","probability":0.5,"legs":[{"mode":"wait","low":300,"likely":300,"high":300}]}]}""";

    private static readonly Instant Start = Some.At("08:00");

    // By hand: 0.7 by 09:00, half of the rest by 13:00, 0.15 never: 14, 3 and 3 dots.
    [Fact]
    public void Twenty_dots_are_as_many_as_the_shares_and_the_sentence_says_what_they_add_up_to()
    {
        var simulation = Ran(SomePlan.Of(Sometimes, "\"weather\":0,"));
        var dots = ArrivalDots.Of(simulation);
        Assert.Equal(20, dots.Arrivals.Length);
        Assert.Equal(14, dots.Before(Start + Duration.FromMinutes(61)));
        Assert.Equal(17, dots.Before(Start + Duration.FromMinutes(301)));
        Assert.Equal(3, dots.Arrivals.Count(at => at is null));
        var clock = ArrivalClock.Of(simulation.Plan.Plan);
        Assert.Equal(
            "7 in 10 that a clinic is reached before 10:00 UTC today, 4 May.",
            DotWords.Sentence(dots, "a clinic", Start + Duration.FromHours(2), clock, Start)
        );
        Assert.Equal(
            "7 in 10 that a clinic is reached by 09:00 UTC today, 4 May.",
            DotWords.Sentence(dots, "a clinic", null, clock, Start)
        );
        Assert.Equal(
            "17 in 20 that a clinic is reached before 08:00 UTC tomorrow, 5 May.",
            DotWords.Sentence(dots, "a clinic", Start + Duration.FromDays(1), clock, Start)
        );
    }

    [Fact]
    public void Where_seven_in_ten_never_arrive_the_sentence_says_so()
    {
        var dots = ArrivalDots.Of(
            Ran(
                SomePlan.Of(
                    """{"first":[{"probability":0.3,"legs":[{"mode":"wait","p10":5,"p90":9}]},{"probability":0,"legs":[{"mode":"wait","p10":5,"p90":9}]}]}"""
                )
            )
        );
        Assert.Equal(
            "3 in 10 that surgery is reached at all; else none gets through within 60 days.",
            DotWords.Sentence(dots, "surgery", null, ArrivalClock.Of(SomePlan.RidgeHut), Start)
        );
        Assert.Equal("Fewer than 1 in 20", DotWords.Share(0));
        Assert.Equal("More than 19 in 20", DotWords.Share(20));
    }

    [Theory, InlineData(320), InlineData(328), InlineData(640), InlineData(1200)]
    public void Every_dot_is_drawn_once_within_the_picture_and_none_over_another(double width)
    {
        var simulation = Ran(SomePlan.RidgeHut);
        var dots = ArrivalDots.Of(simulation);
        var limit = simulation.Plan.Plan.Start + Duration.FromHours(4);
        var svg = XElement.Parse(
            DotsDrawing.Draw(
                dots,
                new([(limit, "left leg: 6 h")], simulation.Plan.Darkness!.Stretches),
                ArrivalClock.Of(simulation.Plan.Plan),
                "t",
                width,
                "all of it"
            )
        );
        Assert.Equal("all of it", svg.Attribute("aria-label")!.Value);
        var circles = svg.Descendants()
            .Where(e => e.Name.LocalName == "circle")
            .Select(c => (X: Number(c, "cx"), Y: Number(c, "cy"), R: Number(c, "r"), Look: c.Attribute("class")!.Value))
            .ToArray();
        Assert.Equal(dots.Arrivals.Count(at => at is not null), circles.Length);
        Assert.Equal(dots.Before(limit), circles.Count(c => c.Look == "c-clear"));
        Assert.All(circles, c => Assert.True(c.X - c.R >= -0.1 && c.X + c.R <= width + 0.1 && c.Y - c.R >= 0, $"{c}"));
        for (var i = 0; i < circles.Length; i++)
        for (var j = 0; j < i; j++)
            Assert.True(Math.Pow(circles[i].X - circles[j].X, 2) + Math.Pow(circles[i].Y - circles[j].Y, 2) >= 14 * 14 - 1, $"{i} {j}");
        // At least 14 px, so that it is read at arm's length.
        Assert.All(svg.Descendants().Where(e => e.Name.LocalName == "text"), t => Assert.True(Number(t, "font-size") >= 14));
    }

    [Fact]
    public void The_profile_holds_the_ground_of_the_longest_way_and_when_its_stages_end()
    {
        var outlook = Outlook.Of(Ran(SomePlan.RidgeHut), []);
        var profile = WayProfile.Of(outlook)!;
        Assert.Equal(["party walks in", "carry 5.2 km", "carry 1.5 km"], profile.Stages.Select(s => s.Label));
        Assert.Equal(11.9, profile.Km, 1e-9);
        Assert.Equal((640, 0), (profile.Stages[0].UpM, profile.Stages[0].DownM));
        Assert.True(profile.Stages[0].Likely < profile.Stages[1].Likely && profile.Stages[0].Likely < profile.Stages[0].Late);
        var svg = ProfileDrawing.Draw(
            profile,
            ArrivalClock.Of(outlook.Plan),
            outlook.Plan.Start + Duration.FromHours(4),
            _ => true,
            "p",
            328,
            "profile"
        );
        Assert.Contains("11.9 km", svg, StringComparison.Ordinal);
        Assert.Contains("url(#p-hatch)", svg, StringComparison.Ordinal);
        Assert.Equal(2, Thick().Count(svg));
        Assert.Null(WayProfile.Of(Outlook.Of(Ran(SomePlan.Of("""{"mode":"wait","p10":1,"p90":2}""")), [])));
    }

    [Fact]
    public void A_sketch_is_thinned_and_keeps_its_ends_and_its_shape()
    {
        ImmutableTrack(out var track);
        var line = TrackSketch.Thinned(track);
        Assert.Equal(120, line.Length);
        Assert.Equal((new GeoPoint(60, 10), new GeoPoint(60, 10.1)), (line[0], line[^1]));
        var svg = TrackSketch.Draw(line, new(60.001, 10.05), "s", 328, 220, "sketch");
        Assert.Contains("north up", svg, StringComparison.Ordinal);
        Assert.Contains("c-ring", svg, StringComparison.Ordinal);
        Assert.Contains(" km</text>", svg, StringComparison.Ordinal);

        static void ImmutableTrack(out Track made) =>
            made = new(
                null,
                [new([.. Enumerable.Range(0, 501).Select(i => new TrackPoint(new(60, 10 + (i / 5000.0)), null, null))])],
                [],
                []
            );
    }

    // In Oslo clocks are put back on 26 October 2031 at 03:00: 02:30 is shown twice, an hour apart.
    [Fact]
    public void On_the_night_the_clock_changes_offsets_are_said()
    {
        var oslo = DateTimeZoneProviders.Tzdb["Europe/Oslo"];
        var clock = new ArrivalClock(oslo, Instant.FromUtc(2031, 10, 25, 22, 0));
        var (first, second) = (Instant.FromUtc(2031, 10, 26, 0, 30), Instant.FromUtc(2031, 10, 26, 1, 30));
        Assert.Equal("02:30 (UTC+02:00) on 26 October", clock.Exactly(first));
        Assert.Equal("02:30 (UTC+01:00) on 26 October", clock.Exactly(second));
        Assert.Equal("between 02:30 (UTC+02:00) and 02:30 (UTC+01:00) on 26 October", clock.Between(first, second));
        Assert.Equal("23:30 on 25 October", clock.Exactly(Instant.FromUtc(2031, 10, 25, 21, 30)));
    }

    [Fact]
    public void A_year_is_said_where_it_is_another_than_the_plan_s() =>
        Assert.Equal(
            "between 23:00 UTC on 31 December and 02:00 UTC on 1 January 2032",
            new ArrivalClock(DateTimeZone.Utc, Instant.FromUtc(2031, 12, 31, 20, 0)).Between(
                Instant.FromUtc(2031, 12, 31, 23, 0),
                Instant.FromUtc(2032, 1, 1, 2, 0)
            )
        );

    // By hand: it came 30 min after the likely time, 90 after the earliest, 30 before the latest: losses 9, 15 and 3 min, mean 9.
    [Fact]
    public void A_forecast_is_scored_once_the_truth_is_known()
    {
        var told = new Payload.HelpExpected(Some.At("10:00"), Some.At("09:00"), Some.At("11:00"));
        var score = ForecastScore.Of(Start, told, Some.At("10:30"), 0.9);
        Assert.Equal(Duration.FromMinutes(9), score.Quantile);
        Assert.True(score.Inside);
        Assert.False(ForecastScore.Of(Start, told, Some.At("11:30"), 0.9).Inside);
        Assert.Equal(Duration.Zero, ForecastScore.Of(Start, new(Some.At("10:00")), Some.At("10:00"), 0.9).Quantile);
    }

    [Fact]
    public void Stages_to_mark_are_the_first_open_one_of_each_way_in_play()
    {
        var plan = SomePlan.RidgeHut;
        Assert.Equal(["1"], Ahead());
        Assert.Equal(["2.1.1", "2.2.1"], Ahead(new Payload.StageNoted("1", StageState.Done)));
        Assert.Equal(
            ["2.2.2"],
            Ahead(
                new Payload.StageNoted("1", StageState.Done),
                new Payload.StageNoted("2.1.1", StageState.Failed),
                new Payload.StageNoted("2.2.1", StageState.Done, plan.Id)
            )
        );
        // Of another plan: nothing of this one is known.
        Assert.Equal(["1"], Ahead(new Payload.StageNoted("1", StageState.Done, "other")));

        string[] Ahead(params Payload[] noted) =>
            [.. StagesAhead.Of(plan, Noted(noted), Start + Duration.FromHours(1)).Select(s => s.Path)];
    }

    [Fact]
    public void A_position_on_the_track_tells_how_much_of_the_stage_under_way_is_done()
    {
        var plan = SomePlan.Of("""{"mode":"carry","track":"t.gpx","packaging":false}""").WithTracks(_ => new Stretch(5.6));
        var track = new Track(null, [new([new(new(60, 10), 0, null), new(new(60, 10.1), 0, null)])], [], []);
        var state = Noted(new Payload.StageNoted("1", StageState.Begun), new Payload.PositionNoted(60, 10.05));
        var soFar = RecordSoFar.Of(state, plan, Start + Duration.FromHours(3), _ => track)!;
        var mark = soFar.Marks[^1];
        Assert.Equal(0.5, mark.Share!.Value, 0.01);
        // Half in one minute is fast, and what is left is half: sooner than knowing nothing but that it was begun.
        Assert.True(Middle(soFar) < Middle(RecordSoFar.Of(state, plan, Start + Duration.FromMinutes(2))!));
        Assert.Null(RecordSoFar.Of(State.Empty, plan, Start));

        double Middle(SoFar known)
        {
            var care = new Simulation(
                CompiledPlan.Of(plan, SomePlan.Nights, known with { Now = Start + Duration.FromMinutes(2) }),
                new Rng(1)
            )
                .Run(TestContext.Current.CancellationToken)
                .SecondsToCare.ToArray();
            Array.Sort(care);
            return care[care.Length / 2];
        }
    }

    [GeneratedRegex("c-bars", RegexOptions.None, 1000)]
    private static partial Regex Thick();

    private static State Noted(params Payload[] payloads) =>
        State.Of(
            payloads.Select(
                (p, i) =>
                    new Dated(new("d", i + 1), Happened.At(Start + Duration.FromMinutes(i)), Start + Duration.FromMinutes(i), "Ane", p)
            )
        );

    private static double Number(XElement of, string name) =>
        double.Parse(of.Attribute(name)!.Value, System.Globalization.CultureInfo.InvariantCulture);

    private static Simulation Ran(Plan plan) =>
        new Simulation(CompiledPlan.Of(plan, SomePlan.Nights), new Rng(2), SamplingLimits.Exactly(20_000)).Run(
            TestContext.Current.CancellationToken
        );
}
