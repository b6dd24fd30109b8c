namespace Farhold.App.Tests.Respond;

public class MoveCheckListTests : CareTest
{
    [Fact]
    public async Task A_move_ahead_is_checked_first_and_logged_with_what_was_seen_and_left_open()
    {
        await ReadyAsync(Well);
        var now = Show<NowScreen>();
        Tap(now, "About to move, or moved");
        Tap(now, "Carried", "About to move");
        Assert.Empty(State.Of(Kind.CasualtyMoved));
        Assert.Contains("Straps hold at chest, hips and knees", now.Find("[role=dialog]").TextContent, StringComparison.Ordinal);
        now.FindAll("[role=dialog] .choice-line")
            .Single(l => Text(l).StartsWith("Straps hold", StringComparison.Ordinal))
            .QuerySelector("input")!
            .Change(true);
        Tap(now, "About to move: Carried");
        Assert.Equal(new(Movement.Carried, MovePhase.AboutTo), Last<Payload.CasualtyMoved>());
        var check = Last<Payload.TaskDone>();
        Assert.Equal("before-move", check.Task);
        Assert.StartsWith("seen: straps; left open: ", check.Note, StringComparison.Ordinal);
        Assert.Contains("padding", check.Note, StringComparison.Ordinal);
        Assert.Empty(now.FindAll("[role=dialog]"));
    }

    [Fact]
    public async Task A_move_in_an_attempt_takes_a_second_word()
    {
        await ReadyAsync(Well);
        await LogAsync(0, new Payload.AttemptStarted("w1", "t1"));
        var now = Show<NowScreen>();
        Tap(now, "About to move, or moved");
        Tap(now, "Lifted", "About to move");
        Assert.Contains("an attempt is under way on the left leg", now.Find("[role=dialog] .danger").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("About to move: Lifted", now.FindAll("button").Select(Text));
        Tap(now, "Move all the same");
        Tap(now, "Log the move against this");
        Assert.Equal(new(Movement.Lifted, MovePhase.AboutTo), Last<Payload.CasualtyMoved>());
        Assert.Contains("against it: attempt left leg", Last<Payload.TaskDone>().Note, StringComparison.Ordinal);
        Assert.Contains(Desk.Picture!.Remarks, r => r.Text.Contains("attempt was under way", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_form_asks_back_about_a_move_in_an_attempt()
    {
        await ReadyAsync(Well);
        Assert.Empty(Desk.Slips(new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo)));
        await LogAsync(0, new Payload.AttemptStarted("w1", "t1"));
        Assert.Single(Desk.Slips(new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo)));
        Assert.Empty(Desk.Slips(new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved)));
    }

    [Fact]
    public async Task Not_yet_logs_nothing()
    {
        await ReadyAsync(Well);
        var now = Show<NowScreen>();
        Tap(now, "About to move, or moved");
        Tap(now, "Turned", "About to move");
        Tap(now, "Not yet");
        Assert.Empty(State.Of(Kind.CasualtyMoved));
        Assert.Contains("Moved", now.FindAll("[role=dialog] h3").Select(Text));
    }

    [Fact]
    public async Task After_the_move_the_tourniquet_comes_first()
    {
        await ReadyAsync(Well);
        await LogAsync(0, new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved));
        Assert.Contains(new NextStep(Desk.Record!, Desk.Picture!, Texts).First()!.Opens, new Quick?[] { Quick.Beyond, Quick.Bleeding });
    }
}
