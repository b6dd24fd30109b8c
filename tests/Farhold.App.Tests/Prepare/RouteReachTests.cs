using System.Globalization;
using AngleSharp.Dom;
using Farhold.App.Tests.Doubles;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Prepare;

/// <summary>
/// Hours to help from a route: walking on level ground by DIN 33466 takes a quarter of an hour a km (read at wanderndeluxe.de),
/// so all can be worked out by hand. The track runs 10 km due east along the equator, 111.3195 km a degree on WGS 84.
/// </summary>
public class RouteReachTests : CareTest
{
    private static readonly string Track =
        "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
        + string.Concat(
            Enumerable
                .Range(0, 41)
                .Select(i =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"<trkpt lat=\"0\" lon=\"{10 + (i * 0.25 / 111.3195):F9}\"><ele>100</ele></trkpt>"
                    )
                )
        )
        + "</trkseg></trk></gpx>";

    [Theory]
    [InlineData("\"end\":{\"onward\":{\"low\":60,\"likely\":60,\"high\":60}}", 4)] // 150 and 60 min
    [InlineData("\"end\":{\"onward\":{\"low\":20,\"likely\":20,\"high\":20}}", 3)] // 170 min
    [InlineData(
        "\"end\":{\"onward\":{\"low\":40,\"likely\":40,\"high\":40}},\"back\":{\"onward\":{\"low\":60,\"likely\":60,\"high\":60}}",
        3
    )] // 125 min, at km 4.33
    // two weeks: the most a trip takes
    [InlineData("\"end\":{\"onward\":{\"low\":20000,\"likely\":20000,\"high\":20000}}", TripPlan.MostHours)]
    public void The_worst_place_of_the_route_fills_in_the_hours(string ways, double hours)
    {
        double? reached = null;
        var shown = Render<RouteReach>(p => p.Add(r => r.OnReached, h => reached = TripPlan.Empty.WithReach(h).HoursToHelp));
        Take(shown, ("r.json", Route(ways)), ("a.gpx", Track));
        shown.WaitForAssertion(() => Assert.Equal(hours, reached), TimeSpan.FromSeconds(20));
        Assert.Contains(
            hours < TripPlan.MostHours ? $"up to {hours} h" : "more than 240 h",
            shown.Find("ul[role=status] li").TextContent,
            StringComparison.Ordinal
        );
        Assert.Empty(shown.FindAll("[role=alert]"));
    }

    [Fact]
    public void Where_too_few_arrive_the_hours_are_unknown_whatever_was_typed_in_before()
    {
        // Only by daylight, 88 degrees north in November, where the sun next rises in March: nobody sets out.
        var north = Track.Replace("lat=\"0\"", "lat=\"88\"", StringComparison.Ordinal);
        var trip = Services.GetRequiredService<KeptTrip>();
        trip.Use(TripPlan.Empty with { HoursToHelp = 5 });
        var place = Render<PrepareScreen>();
        var shown = place.FindComponent<RouteReach>();
        Take(
            shown,
            ("r.json", Route("\"dark\":\"stop\",\"end\":{}").Replace("-05-04", "-11-04", StringComparison.Ordinal)),
            ("a.gpx", north)
        );
        shown.WaitForAssertion(
            () => Assert.Contains("not known", shown.Find("ul[role=status] li").TextContent, StringComparison.Ordinal),
            TimeSpan.FromSeconds(20)
        );
        place.WaitForAssertion(() => Assert.Null(trip.Plan.HoursToHelp));
    }

    [Fact]
    public async Task Whoever_leaves_while_it_is_worked_out_finds_the_trip_as_it_was()
    {
        var hasty = new HastyTime(Time.GetUtcNow());
        Services.AddSingleton<TimeProvider>(hasty);
        var reached = false;
        var shown = Render<RouteReach>(p => p.Add(r => r.OnReached, _ => reached = true));
        var taken = Task.Run(
            () => Take(shown, ("r.json", Route("\"end\":{}")), ("a.gpx", Track)),
            Xunit.TestContext.Current.CancellationToken
        );
        await hasty.PassAsync(() => shown.Markup.Contains(Texts.WayWorking, StringComparison.Ordinal));
        await DisposeComponentsAsync();
        await hasty.PassAsync(() => taken.IsCompleted);
        Assert.False(reached);
    }

    [Fact]
    public void A_track_alone_is_not_a_route() => Refuses(Texts.RouteReachNone, ("a.gpx", Track));

    [Fact]
    public void A_route_without_its_track_says_which_file_is_missing() =>
        Refuses(Texts.RouteReachTrack("a.gpx"), ("r.json", Route("\"end\":{}")));

    [Fact]
    public void A_route_that_waits_for_light_needs_a_start() =>
        Refuses("waits for", ("r.json", """{"track":"a.gpx","mode":"walk","dark":"stop","end":{}}"""), ("a.gpx", Track));

    [Fact]
    public void A_route_that_is_broken_is_refused_with_its_place() =>
        Refuses("Line 1", ("r.json", """{"track":"a.gpx","mode":"fly","end":{}}"""), ("a.gpx", Track));

    private void Refuses(string why, params (string Name, string Content)[] files)
    {
        var reached = false;
        var shown = Render<RouteReach>(p => p.Add(r => r.OnReached, _ => reached = true));
        Take(shown, files);
        shown.WaitForAssertion(() => Assert.Contains(why, shown.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.False(reached);
    }

    private static void Take(IRenderedComponent<RouteReach> shown, params (string Name, string Content)[] files) =>
        shown.FindComponent<InputFile>().UploadFiles([.. files.Select(f => InputFileContent.CreateFromText(f.Content, f.Name))]);

    private static string Route(string ways) =>
        $$"""{"track":"a.gpx","start":"2031-05-04T08:00:00Z","mode":"walk","spread":0,"spacingM":500,{{ways}}}""";
}
