using Farhold.Xml;

namespace Farhold.Tests.WayOut.Reach;

/// <summary>
/// Walking on level ground by DIN 33466 takes a quarter of an hour a km (read at wanderndeluxe.de), so all can be worked out by hand.
/// </summary>
public class ReachProfileTests
{
    private static readonly string Both = SomeRoute.Walk(
        $"\"end\":{{\"onward\":{SomeRoute.Just(30)}}},\"back\":{{\"onward\":{SomeRoute.Just(60)}}}"
    );

    [Fact]
    public void From_each_point_the_shorter_of_on_and_back_is_taken()
    {
        var profile = SomeRoute.Profile(Both);
        Assert.Equal(101, profile.Points.Length);
        Assert.All(
            profile.Points,
            point =>
            {
                var km = point.AlongM / 1000;
                var (on, back) = ((15 * (10 - km)) + 30, (15 * km) + 60);
                Assert.Equal(Math.Min(on, back), point.Median!.Value.TotalMinutes, 0.05);
                Assert.Equal(point.Median.Value.TotalMinutes, point.P90!.Value.TotalMinutes, 1e-6);
                if (Math.Abs(km - 4) > 0.01)
                    Assert.Equal(km > 4 ? ReachWayKind.End : ReachWayKind.Back, profile.Ways[point.Way].Kind);
            }
        );
    }

    [Theory]
    [InlineData(60, 4)] // 10 km and 60 min: 210 min
    [InlineData(30, 3)] // 180 min and no more
    [InlineData(31, 4)] // a minute over three hours
    public void Hours_to_help_are_those_of_the_worst_place_rounded_up(double onward, double hours) =>
        Assert.Equal(hours, SomeRoute.Profile(SomeRoute.Walk($"\"end\":{{\"onward\":{SomeRoute.Just(onward - 0.01)}}}")).HoursToHelp);

    [Fact]
    public void The_worst_place_may_lie_between_two_ways_out()
    {
        // On 15 · (10 − km) + 40, back 15 · km + 60: alike at km 4.33, 125 min.
        Assert.Equal(
            3,
            SomeRoute
                .Profile(SomeRoute.Walk($"\"end\":{{\"onward\":{SomeRoute.Just(40)}}},\"back\":{{\"onward\":{SomeRoute.Just(60)}}}"))
                .HoursToHelp
        );
    }

    [Fact]
    public void A_place_from_which_too_few_arrive_leaves_the_hours_unknown()
    {
        // Only by daylight, in a night that does not end: nobody sets out.
        var night = Darkness.Of(
            [(Some.At("00:00") - Duration.FromDays(1), Some.At("00:00") + Duration.FromDays(80))],
            Some.At("00:00") + Duration.FromDays(80)
        );
        Assert.Null(
            SomeRoute.Profile(SomeRoute.Walk($"\"dark\":\"stop\",\"end\":{{\"onward\":{SomeRoute.Just(10)}}}"), darkness: night).HoursToHelp
        );
    }

    [Fact]
    public void Where_a_tourniquet_passes_a_limit_is_told_out_to_the_nearest_point_within_it()
    {
        // (10 − km) · 15 + 60 min is over 2 h before km 6; never over 6 h.
        var profile = SomeRoute.Profile(SomeRoute.Walk($"\"end\":{{\"onward\":{SomeRoute.Just(60)}}},\"spacingM\":500"));
        Assert.Equal(["window-2h", "limit-6h"], profile.Limits.Select(l => l.Id));
        Assert.All(profile.Stretches, s => Assert.Equal(("window-2h", 0.0), (s.Limit.Id, s.FromM)));
        Assert.Equal([ReachMeasure.Median, ReachMeasure.P90], profile.Stretches.Select(s => s.Measure));
        Assert.All(profile.Stretches, s => Assert.InRange(s.ToM, 5999, 6501));
    }

    [Theory]
    [InlineData(0, 60)] // at the place: 20 + 30, and nobody has to move
    [InlineData(2, 60)] // there after 30 min, before the boat
    [InlineData(8, 130)] // there after 120 min, the boat waits
    public void At_a_pick_up_the_later_of_casualty_and_boat_sets_out(double kmAway, double minutes)
    {
        var profile = SomeRoute.Profile(
            SomeRoute.Walk(
                $"\"call\":[{SomeRoute.Just(20)}],\"pickUps\":[{{\"mode\":\"boat\",\"at\":{SomeRoute.Place(1)},"
                    + $"\"wait\":{SomeRoute.Just(30)},\"onward\":{SomeRoute.Just(10)}}}]"
            )
        );
        Assert.Equal(minutes, profile.Points[(int)((1 + kmAway) * 10)].P90!.Value.TotalMinutes, 0.1);
    }

    [Fact]
    public void A_pick_up_that_may_not_come_is_waited_for_and_then_left()
    {
        // From km 2: 15 min back to km 1, the vehicle due after 50. If it comes, 60; if not, on foot from there, 15 + 100 to the start.
        var profile = SomeRoute.Profile(
            SomeRoute.Walk(
                $"\"end\":{{\"onward\":{SomeRoute.Just(500)}}},\"back\":{{\"onward\":{SomeRoute.Just(100)}}},"
                    + $"\"pickUps\":[{{\"mode\":\"vehicle\",\"probability\":0.6,\"at\":{SomeRoute.Place(1)},"
                    + $"\"wait\":{SomeRoute.Just(50)},\"onward\":{SomeRoute.Just(10)}}}]"
            ),
            trials: 2000
        );
        // Back by itself: 30 + 100 = 130. By the vehicle at P90: it does not come, 50 + 15 + 100 = 165: so the party goes back.
        Assert.Equal(
            (130, ReachWayKind.Back),
            (Math.Round(profile.Points[20].P90!.Value.TotalMinutes), profile.Ways[profile.Points[20].Way].Kind)
        );
        var sure = SomeRoute.Profile(
            SomeRoute.Walk(
                $"\"back\":{{\"onward\":{SomeRoute.Just(100)}}},"
                    + $"\"pickUps\":[{{\"mode\":\"vehicle\",\"probability\":0.97,\"at\":{SomeRoute.Place(1)},"
                    + $"\"wait\":{SomeRoute.Just(50)},\"onward\":{SomeRoute.Just(10)}}}]"
            ),
            trials: 2000
        );
        Assert.Equal((60, ReachWayKind.PickUp), (Math.Round(sure.Points[20].P90!.Value.TotalMinutes), sure.Ways[sure.Points[20].Way].Kind));
    }

    [Fact]
    public void A_helicopter_comes_while_the_party_moves()
    {
        string Route(double probability) =>
            SomeRoute.Walk(
                FormattableString.Invariant(
                    $"\"end\":{{}},\"call\":[{SomeRoute.Just(10)}],\"helicopter\":{{\"probability\":{probability},\"wait\":{SomeRoute.Just(30)},\"onward\":{SomeRoute.Just(20)}}}"
                )
            );
        Assert.All(
            SomeRoute.Profile(Route(1)).Points,
            p => Assert.Equal(Math.Min(60, 15 * (10 - (p.AlongM / 1000))), p.P90!.Value.TotalMinutes, 0.05)
        );
        var half = SomeRoute.Profile(Route(0.7), trials: 2000).Points[0];
        Assert.Equal((60, 150), (Math.Round(half.Median!.Value.TotalMinutes), Math.Round(half.P90!.Value.TotalMinutes)));
    }

    [Fact]
    public void A_helicopter_of_the_day_does_not_come_by_night()
    {
        // Dark from 20 to 5, the casualty at 20: asked at once, it sets out at 5 and is there at 5:30.
        var route = SomeRoute
            .Walk(
                $"\"end\":{{\"onward\":{SomeRoute.Just(2000)}}},\"helicopter\":{{\"probability\":1,\"window\":\"daylight\","
                    + $"\"wait\":{SomeRoute.Just(30)}}}"
            )
            .Replace("T08:00", "T20:00", StringComparison.Ordinal);
        Assert.Equal((9 * 60) + 30, SomeRoute.Profile(route, darkness: SomePlan.Nights).Points[0].P90!.Value.TotalMinutes, 0.05);
    }

    [Fact]
    public void A_side_exit_adds_its_own_ground()
    {
        // 3 km down with 600 m of descent by DIN: max(45, 72) + 45 / 2 = 94.5 min.
        var profile = SomeRoute.Profile(SomeRoute.Walk($"\"exits\":[{{\"at\":{SomeRoute.Place(5)},\"distanceKm\":3,\"descentM\":600}}]"));
        Assert.All(profile.Points, p => Assert.Equal((15 * Math.Abs(5 - (p.AlongM / 1000))) + 94.5, p.P90!.Value.TotalMinutes, 0.05));
    }

    [Fact]
    public void A_climb_counts_one_way_and_a_descent_the_other()
    {
        // 300 m up over the first 3 km, in one slope: by DIN max(45, 60) + 45 / 2 up, max(45, 36) + 36 / 2 down.
        var track = SomeRoute.Track(6, km => Math.Min(300, 100 * km), stepKm: 0.1);
        var back = SomeRoute.Profile(SomeRoute.Walk("\"back\":{}"), track);
        var on = SomeRoute.Profile(SomeRoute.Walk("\"end\":{}"), track);
        Assert.Equal(45 + 63, back.Points[^1].P90!.Value.TotalMinutes, 0.2);
        Assert.Equal(45 + 82.5, on.Points[0].P90!.Value.TotalMinutes, 0.2);
    }

    [Fact]
    public void A_carry_follows_the_law_of_a_carry_in_a_plan()
    {
        var profile = SomeRoute.Profile(
            """{"track":"a.gpx","start":"2031-05-04T08:00:00Z","mode":"carry","bearers":12,"packaging":false,"end":{},"spacingM":1000}""",
            trials: 20_000
        );
        Assert.All(
            profile.Points.SkipLast(1),
            p =>
            {
                var law = new LitterCarry(new(10 - (p.AlongM / 1000)), Surfaces.Path, 12).TimeSeconds();
                if (law.Quantile(0.92) > 6 * 3600)
                    return;
                Assert.Equal(1, p.Median!.Value.TotalSeconds / law.Quantile(0.5), 0.02);
                Assert.Equal(1, p.P90!.Value.TotalSeconds / law.Quantile(0.9), 0.03);
            }
        );
        Assert.Equal(0, profile.Points[^1].P90!.Value.TotalSeconds);
    }

    [Fact]
    public void Four_bearers_go_at_their_pace_on_path_and_boulders()
    {
        var text =
            $$"""{"track":"a.gpx","start":"2031-05-04T08:00:00Z","mode":"carry","bearers":4,"packaging":false,"exits":[{"at":{{SomeRoute.Place(5)}},"distanceKm":0.4,"terrain":"boulders"}]}""";
        var rough = SomeRoute.Profile(text, trials: 20_000).Points[0];
        // Worked by hand: 5.89 + 0.89 h at the fresh pace, of which what is beyond six hours goes at 0.7 of it.
        var slow = LitterTeam.SpeedFactor(4);
        var fresh = (5 / (1.8 * slow)) + (0.4 / (0.95 * slow));
        Assert.Equal(6 + ((fresh - 6) / 0.7), rough.Median!.Value.TotalHours, 0.15);
    }

    [Fact]
    public void The_same_seed_gives_the_same_profile_in_pieces_or_at_once()
    {
        var route = RouteReader.Read(SomeRoute.Demo("skarvedal.route.json"), "skarvedal.route.json", XmlTracks.In(SomeRoute.DemoFile));
        var demo = Assert.IsType<Read<Route>.Usable>(route).Value;
        var night = ReachProfile.NightsOf(demo);
        var once = ReachProfile.Of(
            demo with
            {
                SpacingM = 1000,
            },
            night,
            SomeRoute.Limits,
            new Rng(7),
            300,
            TestContext.Current.CancellationToken
        );
        var pieces = ReachProfile.Pieces(demo with { SpacingM = 1000 }, night, SomeRoute.Limits, new Rng(7), 300).ToArray();
        Assert.Equal(once.Points, pieces[^1]!.Points);
        Assert.True(pieces.Length > 2 && pieces.SkipLast(1).All(p => p is null));
    }
}
