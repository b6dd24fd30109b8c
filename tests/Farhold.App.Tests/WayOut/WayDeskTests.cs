namespace Farhold.App.Tests.WayOut;

public class WayDeskTests : WayTest
{
    [Fact]
    public async Task A_plan_is_there_again_after_a_new_start_with_the_same_answer()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120) with { From = new(-44.1, 169.8) });
        using var again = Again();
        again.Open();
        Assert.Equal(PlanWriter.Write(Way.Plan!), PlanWriter.Write(again.Plan!));
        await again.WorkAsync();
        Assert.Equal(Way.Forecast!.Simulation.SecondsToCare.ToArray(), again.Forecast!.Simulation.SecondsToCare.ToArray());
    }

    [Fact]
    public async Task The_line_of_a_logged_forecast_needs_no_new_trials_after_a_start()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        await TellAsync(Way.Help()!);
        using var again = Again();
        var drawn = again.Laid(LimbPicture.Of(Limb.LeftLeg, State, Care.Protocol, Now)!, State);
        Assert.Null(again.Forecast);
        Assert.Equal(Way.Forecast!.Arrival!.Density.Select(d => d.Weight), drawn.Arrival!.Density.Select(d => d.Weight));
        Assert.Equal(Way.Forecast.Simulation.Done * 0.99, drawn.Arrival.Density.Sum(d => d.Weight), 2.0);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"plan\":7,\"cautions\":[]}")]
    [InlineData("{\"plan\":{\"start\":\"2031-05-04T02:00:00Z\",\"legs\":[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]}}")]
    [InlineData(
        "{\"plan\":{\"start\":\"2031-05-04T02:00:00Z\",\"legs\":[{\"mode\":\"wait\",\"p10\":1,\"p90\":2}]},\"cautions\":[],"
            + "\"arrival\":{\"early\":5,\"middle\":3,\"late\":9,\"source\":\"x\",\"density\":[]}}"
    )]
    public async Task What_was_kept_and_cannot_be_read_is_no_plan_and_breaks_nothing(string spoilt)
    {
        await ReadyAsync();
        Phone.Set("way-" + Casualty, spoilt);
        using var again = Again();
        again.Open();
        Assert.Null(again.Plan);
    }

    [Fact]
    public async Task Each_casualty_has_its_own_plan()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var first = Way.Plan;
        await OpenCasualtyAsync("Una");
        Way.Open();
        Assert.Null(Way.Plan);
        await Session.OpenAsync(Casualty);
        Way.Open();
        Assert.Equal(first!.Id, Way.Plan!.Id);
    }

    [Fact]
    public async Task One_plan_has_one_id_and_another_plan_another()
    {
        await ReadyAsync();
        Assert.Equal(Waits(30, 60, 120).Named().Id, (Waits(30, 60, 120) with { Id = "x" }).Named().Id);
        Assert.NotEqual(Waits(30, 60, 120).Named().Id, Waits(30, 60, 121).Named().Id);
    }

    [Fact]
    public async Task A_discarded_plan_is_gone_and_what_was_logged_stays()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        await TellAsync(Way.Help()!);
        Way.Discard();
        using var again = Again();
        again.Open();
        Assert.Null(again.Plan);
        Assert.NotNull(Last<Payload.HelpExpected>().Plan);
    }

    [Fact]
    public async Task Trials_that_are_stopped_leave_no_forecast_and_can_be_run_again_to_the_same_digits()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var whole = Way.Forecast!.Simulation.SecondsToCare.ToArray();
        // Each look at this clock takes longer than a piece, so the desk breathes at every chance.
        using var slow = new WayDesk(Care, Session, Phone, Clock, new RushingClock(), new Background());
        slow.Open();
        var work = slow.WorkAsync();
        Assert.NotNull(slow.Progress);
        slow.Stop();
        await work;
        Assert.Null(slow.Forecast);
        Assert.Null(slow.Progress);
        await slow.WorkAsync();
        Assert.Equal(whole, slow.Forecast!.Simulation.SecondsToCare.ToArray());
    }

    [Fact]
    public async Task Progress_is_told_while_trials_run()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        var told = new List<int>();
        using var again = new WayDesk(Care, Session, Phone, Clock, new RushingClock(), new Background());
        again.Changed += () => told.Add(again.Progress?.Done ?? -1);
        again.Open();
        await again.WorkAsync();
        Assert.Equal(told.Where(n => n >= 0).Order(), told.Where(n => n >= 0));
        Assert.True(told.Distinct().Count() > 5, string.Join(",", told));
        Assert.Equal(-1, told[^1]);
    }

    private sealed class RushingClock : TimeProvider
    {
        private long ticks;

        public override long GetTimestamp() => ticks += TimestampFrequency / 20;
    }
}
