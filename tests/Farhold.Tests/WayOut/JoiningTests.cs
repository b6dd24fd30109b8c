using System.Text;
using Farhold.Tests.WayOut.Reach;
using Farhold.Xml;

namespace Farhold.Tests.WayOut;

public class JoiningTests
{
    private static Read<ReadOnlyMemory<byte>> Bytes(string text) => new Read<ReadOnlyMemory<byte>>.Usable(Encoding.UTF8.GetBytes(text));

    private static Read<ReadyPlan> Ready(string legs, string track, string more = "") =>
        ReadyPlan.Of(SomePlan.Of(legs, more), XmlTracks.In(_ => Bytes(track)));

    private static readonly string Level = SomeRoute.Track(8);

    [Fact]
    public void A_track_gives_length_climb_and_where_the_plan_begins()
    {
        var ready = Assert
            .IsType<Read<ReadyPlan>.Usable>(Ready("""{"mode":"walk","track":"a.gpx"}""", SomeRoute.Track(4, km => 50 * km)))
            .Value;
        var stretch = ((Measured)((Travel)ready.Compiled.Plan.Legs[0]).Extent).Stretch!.Value;
        Assert.Equal((4.0, 200.0, 0.0), (Math.Round(stretch.DistanceKm, 3), Math.Round(stretch.AscentM, 1), stretch.DescentM));
        Assert.Equal(10, ready.Compiled.Plan.From!.Value.LonDeg, 1e-6);
        Assert.NotNull(ready.Compiled.Darkness);
    }

    [Fact]
    public void A_place_the_plan_gives_stays()
    {
        var ready = Assert
            .IsType<Read<ReadyPlan>.Usable>(Ready("""{"mode":"walk","track":"a.gpx"}""", Level, "\"from\":{\"lat\":46,\"lon\":8},"))
            .Value;
        Assert.Equal(new PlanPlace(46, 8), ready.Compiled.Plan.From);
    }

    [Theory]
    [InlineData("walk", false)]
    [InlineData("carry", false)]
    [InlineData("vehicle", true)]
    public void Without_heights_only_what_climbs_do_not_slow_is_timed(string mode, bool timed)
    {
        var read = Ready($"{{\"mode\":\"{mode}\",\"track\":\"a.gpx\"}}", SomeRoute.Track(8, _ => null));
        if (timed)
            Assert.IsType<Read<ReadyPlan>.Usable>(read);
        else
            Assert.Contains(
                "\"distanceKm\": 8.0 with \"ascentM\"",
                Assert.Single(Assert.IsType<Read<ReadyPlan>.Refused>(read).Refusals).Reason,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void A_file_that_is_not_there_refuses_the_plan()
    {
        var read = ReadyPlan.Of(
            SomePlan.Of("""{"mode":"walk","track":"a.gpx"}"""),
            name => new Read<TrackFile>.Refused([new Refusal(name, 1, 1, "there is no such file")])
        );
        Assert.Equal("a.gpx:1:1: there is no such file", Assert.Single(Assert.IsType<Read<ReadyPlan>.Refused>(read).Refusals).ToString());
    }

    [Fact]
    public void The_demo_plan_is_forecast_before_the_limits_of_the_demo_limb()
    {
        var plan = Assert.IsType<Read<Plan>.Usable>(PlanReader.Read(SomeRoute.Demo("skarvedal.plan.json"), "skarvedal.plan.json")).Value;
        var record = CareRecord.Of(
            Assert.IsType<Read<RecordFile>.Usable>(RecordReader.Read(SomeRoute.Demo("skarvedal.jsonl"), "skarvedal.jsonl")).Value
        );
        var deadlines = LimbDeadlines.Of(Judge.At(record, ShippedRules.Book, Some.At("03:23")));
        Assert.Equal([new("left-leg window-2h", Some.At("03:50")), new Deadline("left-leg limit-6h", Some.At("07:50"))], deadlines);
        var ready = Assert.IsType<Read<ReadyPlan>.Usable>(ReadyPlan.Of(plan, XmlTracks.In(SomeRoute.DemoFile))).Value;
        var trials = ready.Start(new Rng(1), SamplingLimits.Exactly(2000), deadlines).Run(TestContext.Current.CancellationToken);
        var outlook = ready.Told(trials, deadlines);
        Assert.Equal(deadlines, outlook.Deadlines.Select(d => d.Deadline));
        Assert.Equal(0, outlook.Deadlines[0].Before.Hits);
        Assert.InRange(outlook.At(0.5).At!.Value, Some.At("06:00"), Some.At("20:00"));
    }

    [Fact]
    public void Night_begins_when_the_sun_is_six_degrees_down()
    {
        // Equator near the equinox, longitude 0: sunset near 18:11, the sun then sinks 15 degrees an hour, so dark some 21 minutes later.
        var nights = Nightfall.At(new(0, 0), Some.Time("2031-03-20T12:00:00Z"), Duration.FromDays(1)).Stretches;
        var dusk = Assert.Single(nights).From;
        Assert.InRange(dusk, Some.Time("2031-03-20T18:28:00Z"), Some.Time("2031-03-20T18:36:00Z"));
    }
}
