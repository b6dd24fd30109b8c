namespace Farhold.App.Tests.WayOut;

/// <summary>A way under way on the screen: stages marked, the forecast follows, plans beside each other.</summary>
public class LiveWayTests : WayTest
{
    [Fact]
    public async Task A_helicopter_marked_as_not_coming_leaves_the_team_and_the_record_expects_it_anew()
    {
        await ReadyAsync();
        Way.Use(Race());
        var screen = Shown();
        Press(screen, Texts.WayLog);
        var before = Last<Payload.HelpExpected>();
        Assert.Contains("helicopter", Case(screen), StringComparison.Ordinal);

        Press(screen, Texts.StageMark("flight", Texts.StageFailed));
        await BreatheUntilAsync(() => Way.Forecast is not null && Last<Payload.HelpExpected>() != before);
        var noted = Last<Payload.StageNoted>();
        Assert.Equal(("1.1.1", StageState.Failed, Way.Plan!.Id), (noted.Stage, noted.Became, noted.Plan));
        Assert.Equal(0, Way.Forecast!.Outlook.Cases.Ways[0].Share.Hits);
        var after = Last<Payload.HelpExpected>();
        Assert.True(after.Likely > before.Likely);
        Assert.Equal(before.Care, after.Care);
        // What has failed is no more to be marked; the team still is.
        Assert.Empty(Named(screen, Texts.StageMark("flight", Texts.StageDone)));
        Assert.Single(Named(screen, Texts.StageMark("team walks up", Texts.StageBegun)));
    }

    [Fact]
    public async Task A_stage_done_late_moves_the_forecast_and_one_done_last_scores_it()
    {
        await ReadyAsync();
        Way.Use(Row());
        var screen = Shown();
        Press(screen, Texts.WayLog);
        var told = Last<Payload.HelpExpected>().Likely;
        Time.Advance(TimeSpan.FromMinutes(50));
        Press(screen, Texts.StageMark("walk down", Texts.StageDone));
        // Until all of it is done: a phone has one thread, and a second mark never falls into the middle of the first one's work.
        await BreatheUntilAsync(() => Way is { Forecast: not null, Progress: null } && Last<Payload.HelpExpected>().Likely > told);
        Time.Advance(TimeSpan.FromMinutes(20));
        Press(screen, Texts.StageMark("ride", Texts.StageDone));
        await BreatheUntilAsync(() => screen.Markup.Contains("Quantile score", StringComparison.Ordinal));
        Assert.Contains("0 is perfect", screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_is_replaced_stays_beside_the_new_one_and_both_are_compared()
    {
        await ReadyAsync();
        Way.Use(Row() with { Title = "Down the valley" });
        Way.Use(Race() with { Title = "Wait on the ridge" }, [], TrackLine.None, keep: true);
        var screen = Shown();
        Assert.Contains("Down the valley", screen.Markup, StringComparison.Ordinal);
        Press(screen, Texts.BesideWork);
        await BreatheUntilAsync(() => Way.Beside is not null);
        Assert.Equal(2, Way.Beside!.Plans.Length);
        Assert.Contains("Arrives first: Wait on the ridge", screen.Markup, StringComparison.Ordinal);
        Press(screen, Texts.BesideTakeUp);
        Assert.Equal("Down the valley", Way.Plan!.Title);
        Assert.Equal("Wait on the ridge", Assert.Single(Way.Earlier).Title);
        // Another start of the app knows both.
        var again = Again();
        again.Open();
        Assert.Equal("Wait on the ridge", Assert.Single(again.Earlier).Title);
        Press(screen, Texts.BesideForget);
        Assert.Empty(Way.Earlier);
    }

    [Fact]
    public async Task Ground_is_drawn_as_a_profile_with_a_table_and_a_track_as_a_sketch()
    {
        await ReadyAsync();
        Way.Use(
            Race() with
            {
                From = new(60, 10),
                Legs = [new Travel(1, "carry down", TravelMode.Carry, Ground(4), DarkRule.Allowed, FlightWindow.AnyHour, null)],
            },
            [],
            new([new(60, 10), new(60.01, 10.02), new(60.02, 10.01)], 4)
        );
        var screen = Shown();
        Assert.Contains("carry down", screen.Find("[aria-labelledby=way-profile] table").TextContent, StringComparison.Ordinal);
        Assert.Contains("4 km", screen.Find("[aria-labelledby=way-profile] svg").TextContent, StringComparison.Ordinal);
        Assert.Contains("north up", screen.Find("[aria-labelledby=way-sketch] svg").TextContent, StringComparison.Ordinal);
        Assert.Equal(20, screen.FindAll("figure ol li").Count);
    }

    /// <summary>Half the track in three hours is slow for the carry planned, so help comes later than was expected.</summary>
    [Fact]
    public async Task A_position_on_the_track_of_the_stage_under_way_moves_the_forecast_and_what_the_record_expects()
    {
        await CarryUnderWayAsync();
        var told = Last<Payload.HelpExpected>();
        Pass(180);
        Positions.Now = new(FixState.Found, 60, 10.01, 8, null, Now);
        var position = await PositionedAsync();
        Button(position, Texts.PositionLog(Texts.Metres(8))).Click();
        await BreatheUntilAsync(() => Last<Payload.HelpExpected>() != told);
        Assert.Equal(0.5, Way.Forecast!.Simulation.Plan.SoFar!.Marks[^1].Share!.Value, 0.01);
        Assert.True(Last<Payload.HelpExpected>().Likely > told.Likely);

        // Off the track, nobody knows how much is done: the forecast goes by the time alone again.
        told = Last<Payload.HelpExpected>();
        Pass(1);
        Positions.Now = new(FixState.Found, 60.1, 10.01, 8, null, Now);
        Breathe();
        position = await PositionedAsync();
        Button(position, Texts.PositionLog(Texts.Metres(8))).Click();
        await BreatheUntilAsync(() => Last<Payload.HelpExpected>() != told);
        Assert.DoesNotContain(Way.Forecast!.Simulation.Plan.SoFar!.Marks, mark => mark.Share is not null);
    }

    [Fact]
    public async Task A_position_typed_in_counts_once_the_way_is_looked_at_again()
    {
        await CarryUnderWayAsync();
        Pass(60);
        await TellAsync(new Payload.PositionNoted(60, 10.01));
        var work = Way.WorkAsync();
        await BreatheUntilAsync(() => Way.Forecast is { Simulation.Plan.SoFar: { } soFar } && soFar.Marks.Any(m => m.Share is not null));
        await BreatheUntilAsync(() => work.IsCompleted);
        await work;
        // Kept with the plan, so that another start of the app knows it too.
        var again = Again();
        again.Open();
        Assert.True(again.IsPlaced);
    }

    [Fact]
    public async Task A_stage_marked_late_makes_it_likelier_that_water_runs_out_before_help()
    {
        await ReadyAsync();
        await TellAsync(new Payload.SuppliesStated("water-ml", (int)(Water(Care.Record!).Rate.PerHour!.Value.High / 3)));
        Way.Use(Row());
        var screen = Shown();
        Press(screen, Texts.WayLog);
        var told = Last<Payload.HelpExpected>();
        Pass(50);
        var before = new CareRecord(Care.Record!.Entries.ToArray(), []);
        Press(screen, Texts.StageMark("walk down", Texts.StageDone));
        await BreatheUntilAsync(() => Last<Payload.HelpExpected>() != told);
        Assert.True(Water(Care.Record!).HelpLater!.Value.High > Water(before).HelpLater!.Value.High + 0.1);

        ItemOutlook Water(CareRecord record) =>
            SupplyOutlook.Of(record, Care.Rules, new(3, null, Work.Rest), Now).Items.Single(i => i.Item.Id == "water-ml");
    }

    private async Task CarryUnderWayAsync()
    {
        await ReadyAsync();
        Way.Use(
            Race() with
            {
                From = new(60, 10),
                Legs = [new Travel(1, "carry down", TravelMode.Carry, Ground(1.12), DarkRule.Allowed, FlightWindow.AnyHour, null)],
            },
            [],
            new([new(60, 10), new(60, 10.02)], 1.12)
        );
        var screen = Shown();
        Press(screen, Texts.WayLog);
        var told = Last<Payload.HelpExpected>();
        Pass(1);
        Press(screen, Texts.StageMark("carry down", Texts.StageBegun));
        await BreatheUntilAsync(() => Last<Payload.HelpExpected>() != told);
    }

    private async Task<IRenderedComponent<Frame>> PositionedAsync()
    {
        await DisposeComponentsAsync();
        var screen = Render<Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<PositionScreen>(0);
                    b.AddAttribute(1, nameof(PositionScreen.Casualty), Casualty);
                    b.CloseComponent();
                }
            )
        );
        Time.Advance(TimeSpan.FromSeconds(1));
        await BreatheUntilAsync(() => HasButton(screen, Texts.PositionLog(Texts.Metres(8))));
        return screen;
    }

    private static string Case(Bunit.IRenderedComponent<Frame> screen) => screen.Find(".way-case").TextContent;

    private Plan Row() => Waits(20, 30, 40) with { Legs = [Wait(1, "walk down", 20, 30, 40), Wait(2, "ride", 10, 20, 40)] };

    private Plan Race() =>
        Waits(20, 30, 40) with
        {
            Legs =
            [
                new Choice(
                    1,
                    null,
                    ChoiceKind.First,
                    [
                        new("helicopter", 0.6, [Wait(2, "flight", 20, 30, 40) with { Mode = TravelMode.Aircraft }]),
                        new("team", 1, [Wait(3, "team walks up", 100, 200, 300) with { Mode = TravelMode.Walk }]),
                    ]
                ),
            ],
        };

    private static Travel Wait(int slot, string name, double low, double likely, double high) =>
        new(
            slot,
            name,
            TravelMode.Wait,
            new ThreePoint(Minutes(low), Minutes(likely), Minutes(high)),
            DarkRule.Allowed,
            FlightWindow.AnyHour,
            null
        );

    private static Measured Ground(double km) => new(null, new Stretch(km, 50, 300), null, null, 0, null, null, 12, false, 0, true);
}
