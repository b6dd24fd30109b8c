namespace Farhold.Tests.Verdicts;

/// <summary>Somebody sees and reaches the dressing without a break from now on, and nobody is about to move the casualty.</summary>
public class CloseWatchTests
{
    [Fact]
    public void With_nobody_to_watch_leave_it_on() =>
        Assert.Equal(Verdict.LeaveOn, Case.Well.With("watch", new Payload.WatchStated(false)).Verdict);

    [Theory]
    [InlineData(Movement.Carried)]
    [InlineData(Movement.Vehicle)]
    [InlineData(Movement.Turned)]
    public void About_to_be_moved_nobody_can_watch(Movement how)
    {
        var moving = Case.Well.And("00:05", new Payload.CasualtyMoved(how, MovePhase.AboutTo));
        Assert.Equal(Verdict.LeaveOn, moving.Verdict);
        Assert.Equal(Verdict.LeaveOn, moving.And("00:02", new Payload.WatchStated(true)).Verdict);
        Assert.Equal(Verdict.Attempt, moving.And("00:02", new Payload.CasualtyMoved(how, MovePhase.Moved)).Verdict);
    }

    [Theory]
    [InlineData("01:00", Verdict.LeaveOn)]
    [InlineData("01:01", Verdict.CheckFirst)] // asked about again, never taken for over
    public void A_move_that_was_never_logged_as_over(string ago, Verdict verdict) =>
        Assert.Equal(verdict, Case.Well.TightFor("01:30").And(ago, new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo)).Verdict);

    [Fact]
    public void The_casualty_alone_counts_only_where_nobody_can_be_reached_and_with_cautions()
    {
        var alone = Case.Well.With("watch", new Payload.WatchStated(true, Watcher.Casualty));
        Assert.Equal(Verdict.CheckFirst, alone.Verdict);
        var unreached = alone.Unreached().Limb;
        Assert.Equal(Verdict.Attempt, unreached.Verdict);
        Assert.Contains(unreached.Act.Cautions, c => c.StartsWith("The casualty watches alone", StringComparison.Ordinal));
    }

    [Fact]
    public void Somebody_else_came_since_and_the_casualty_is_not_alone() =>
        Assert.Equal(
            Verdict.Attempt,
            Case.Well.With("watch", new Payload.WatchStated(true, Watcher.Casualty), "00:20")
                .And("00:05", new Payload.WatchStated(true, Watcher.Other))
                .Verdict
        );
}
