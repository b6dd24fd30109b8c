namespace Farhold.Tests.WayOut;

public class PlanReaderTests
{
    [Fact]
    public void A_plan_reads_whole()
    {
        var plan = SomePlan.RidgeHut;
        Assert.Equal("ridge-hut", plan.Id);
        Assert.Equal(Some.Time("2031-05-04T14:10:00Z"), plan.Start);
        Assert.Equal(new PlanPlace(46.558, 8.5615), plan.From);
        Assert.Equal("Europe/Zurich", plan.TimeZone!.Id);
        Assert.Equal(10, plan.All.Count());
        var flight = plan.All.OfType<Travel>().First(leg => leg.Mode == TravelMode.Aircraft);
        Assert.Equal(FlightWindow.Daylight, flight.Window);
        Assert.Equal(new Hold(0.3, new(Duration.FromMinutes(30), Duration.FromHours(2), Duration.FromHours(8))), flight.Hold);
        Assert.Equal(new ThreePoint(Duration.FromMinutes(20), Duration.FromMinutes(35), Duration.FromMinutes(80)), flight.Extent);
        Assert.Equal(Enumerable.Range(1, 10), plan.All.Select(leg => leg.Slot));
    }

    [Fact]
    public void Only_the_first_carry_of_a_way_packages_the_casualty()
    {
        var carries = SomePlan
            .RidgeHut.All.OfType<Travel>()
            .Where(leg => leg.Mode == TravelMode.Carry)
            .Select(leg => ((Measured)leg.Extent).Packaging);
        Assert.Equal([true, false], carries);
    }

    [Theory]
    [InlineData(
        """{"mode":"wait","low":-5,"likely":10,"high":20}""",
        1,
        62,
        "low has to be a span of time from 0 to 30 days, such as PT1H20M, or a number of minutes, not -5"
    )]
    [InlineData("""{"mode":"wait","low":"-PT5M","likely":10,"high":20}""", 1, 62, "or a number of minutes, not \"-PT5M\"")]
    [InlineData("""{"mode":"wait","low":30,"likely":10,"high":20}""", 1, 74, "likely is under low")]
    [InlineData("""{"mode":"wait","low":5,"likely":10,"high":9}""", 1, 83, "high is under likely")]
    [InlineData("""{"mode":"wait","low":5,"likely":10}""", 1, 41, "high is missing")]
    [InlineData("""{"mode":"wait","low":5,"likely":"soon","high":9}""", 1, 73, "likely has to be a span of time")]
    [InlineData(
        """{"mode":"wait","low":5,"likely":10,"high":"P31D"}""",
        1,
        83,
        "from 0 to 30 days, such as PT1H20M, or a number of minutes, not \"P31D\""
    )]
    [InlineData("""{"mode":"teleport","low":5,"likely":10,"high":20}""", 1, 49, "mode has to be one of walk, carry")]
    [InlineData(
        """{"mode":"walk","distanceKM":3}""",
        1,
        56,
        "distanceKM is not known here (is distanceKm meant?); known are name, note, mode"
    )]
    [InlineData("""{"mode":"walk","distanceKm":3,"low":5,"likely":10,"high":20}""", 1, 49, "either a distance or track, or a time")]
    [InlineData("""{"mode":"walk","track":"a.gpx","distanceKm":3}""", 1, 85, "the track gives distance")]
    [InlineData("""{"mode":"vehicle","distanceKm":30,"speedKmh":1000}""", 1, 86, "from 0.1 to 130 km/h, not 1000")]
    [InlineData("""{"mode":"carry","distanceKm":60}""", 1, 70, "from 0 to 50 km, not 60")]
    [InlineData("""{"mode":"walk","distanceKm":0.1,"ascentM":5000}""", 1, 83, "steeper than anyone walks")]
    [InlineData("""{"mode":"carry","distanceKm":3,"bearers":1}""", 1, 82, "bearers has to be a whole number from 2 to 60 people, not 1")]
    [InlineData("""{"mode":"carry","distanceKm":3,"bearers":6.5}""", 1, 82, "a whole number from 2 to 60 people, not 6.5")]
    [InlineData("""{"mode":"boat","distanceKm":3}""", 1, 49, "needs speedKmh")]
    [InlineData("""{"mode":"wait","distanceKm":3}""", 1, 69, "a wait has a time")]
    [InlineData("""{"mode":"walk","distanceKm":3,"dark":"stop"}""", 1, 40, "needs from")]
    [InlineData("""{"mode":"walk","distanceKm":3,"mode":"wait"}""", 1, 71, "mode is given twice")]
    [InlineData(
        """{"branches":[{"probability":1.2,"legs":[]},{"legs":[]}]}""",
        1,
        69,
        "probability has to be a number from 0 to 1, not 1.2"
    )]
    [InlineData("""{"branches":[{"probability":0.7,"legs":[]},{"probability":0.6,"legs":[]}]}""", 1, 53, "add up to 1.3, more than 1")]
    [InlineData("""{"branches":[{"probability":0.3,"legs":[]},{"probability":0.6,"legs":[]}]}""", 1, 53, "add up to 0.9, not 1")]
    [InlineData("""{"branches":[{"legs":[]},{"legs":[]}]}""", 1, 53, "only one way may leave")]
    [InlineData("""{"branches":[{"legs":[]}]}""", 1, 53, "a list of 2 to 7 ways, not a list of 1")]
    [InlineData("""{"first":[{"legs":[]},{"legs":[]}]}""", 1, 59, "needs an end")]
    [InlineData("""{"name":"nothing"}""", 1, 41, "exactly one of mode")]
    [InlineData("", 1, 40, "needs an end to arrive at")]
    public void A_wrong_leg_is_refused_where_it_stands(string leg, int line, int column, string reason)
    {
        var refusals = Assert.IsType<Read<Plan>.Refused>(SomePlan.Tried(SomePlan.Text(leg))).Refusals;
        Assert.Contains(refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal));
        var refusal = refusals.First(r => r.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
        Assert.Equal("some.plan.json", refusal.File);
    }

    [Theory]
    [InlineData("""{"start":"2031-05-04T08:00:00Z"}""", 1, 1, "a plan without stages has no end")]
    [InlineData("""{"legs":[{"mode":"wait","p10":1,"p90":2}]}""", 1, 1, "start is missing: it has to be when the plan sets out")]
    [InlineData("""{"start":"2031-02-30T08:00:00Z","legs":[{"mode":"wait","p10":1,"p90":2}]}""", 1, 10, "start has to be an instant")]
    [InlineData(
        """{"start":"2031-05-04T08:00:00Z","timeZone":"Mars/Base","legs":[{"mode":"wait","p10":1,"p90":2}]}""",
        1,
        44,
        "timeZone has to be a time zone, named like Europe/Zurich, not \"Mars/Base\""
    )]
    [InlineData(
        """{"start":"2031-05-04T08:00:00Z","from":{"lat":91,"lon":0},"legs":[{"mode":"wait","p10":1,"p90":2}]}""",
        1,
        47,
        "lat has to be a number"
    )]
    [InlineData(
        "{\"start\":\"9999-12-31T08:00:00Z\",\"legs\":[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]}",
        1,
        10,
        "an instant of the years 1900 to 2500"
    )]
    [InlineData(
        "{\"start\":\"9999-12-31T23:00:00-12:00\",\"legs\":[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]}",
        1,
        10,
        "an instant of the years 1900 to 2500"
    )]
    [InlineData("{\n  \"title\": \"né\", \"legs\": []\n}", 2, 26, "needs an end")]
    [InlineData("{\n  \"legs\": [,]\n}", 2, 12, "this is not JSON")]
    [InlineData("", 1, 1, "the file is empty")]
    [InlineData("[]", 1, 1, "a plan has to be an object, not an empty list")]
    [InlineData("{} {}", 1, 4, "this is not JSON")]
    public void A_wrong_plan_is_refused_where_it_stands(string json, int line, int column, string reason)
    {
        var refusals = Assert.IsType<Read<Plan>.Refused>(SomePlan.Tried(json)).Refusals;
        var refusal = refusals.FirstOrDefault(r => r.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.True(refusal is not null, string.Join("\n", refusals));
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
    }

    [Fact]
    public void Every_fault_is_told_at_once_in_file_order()
    {
        var refusals = Assert
            .IsType<Read<Plan>.Refused>(
                SomePlan.Tried(
                    "{\"start\":\"noon\",\n\"correlation\":2,\n\"legs\":[{\"mode\":\"fly\"},\n{\"mode\":\"wait\",\"low\":9,"
                        + "\"likely\":5,\"high\":1}]}"
                )
            )
            .Refusals;
        Assert.True(refusals.Length >= 5, string.Join("\n", refusals));
        Assert.Equal(refusals.Select(r => (r.Line, r.Column)).Order(), refusals.Select(r => (r.Line, r.Column)));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused_where_they_stand()
    {
        var refused = Assert.IsType<Read<Plan>.Refused>(
            PlanReader.Read(new byte[] { (byte)'{', (byte)'\n', (byte)'"', 0xC3, (byte)'"' }, "x")
        );
        Assert.Equal((2, 2), (refused.Refusals[0].Line, refused.Refusals[0].Column));
    }

    [Fact]
    public void Tracks_are_left_to_the_edge()
    {
        var plan = SomePlan.Of("""{"mode":"walk","track":"ridge.gpx"},{"mode":"carry","track":"ridge.gpx","dark":"stop"}""");
        Assert.Equal(["ridge.gpx"], plan.Tracks);
        Assert.Throws<ArgumentException>(() => CompiledPlan.Of(plan, SomePlan.Nights));
        var measured = plan.WithTracks(_ => new Stretch(3, 100, 50));
        Assert.NotEmpty(SomePlan.Seconds(measured, SomePlan.Nights, 10));
    }
}
