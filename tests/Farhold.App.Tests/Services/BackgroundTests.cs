namespace Farhold.App.Tests.Services;

public class BackgroundTests
{
    private readonly Background background = new();
    private readonly List<string> told = [];

    [Fact]
    public void Work_that_fails_is_told()
    {
        background.TellTo(e => told.Add(e.Message));
        background.Start(() => throw new InvalidOperationException("at once"));
        background.Start(() => Task.FromException(new InvalidOperationException("later")));
        Assert.Equal(["at once", "later"], told);
    }

    [Fact]
    public void What_failed_before_anybody_listened_is_told_to_the_first_who_does()
    {
        background.Start(() => throw new InvalidOperationException("early"));
        background.TellTo(e => told.Add(e.Message));
        background.TellTo(null);
        background.Start(() => throw new InvalidOperationException("between"));
        background.TellTo(e => told.Add(e.Message));
        Assert.Equal(["early", "between"], told);
    }

    [Fact]
    public void A_listener_that_fails_keeps_no_other_from_hearing()
    {
        var heard = 0;
        background.TellTo(e => told.Add(e.Message));
        Action listeners = () => heard++;
        listeners += () => throw new InvalidOperationException("one");
        listeners += () => heard++;
        background.Raise(listeners);
        background.Raise(null);
        Assert.Equal(2, heard);
        Assert.Equal(["one"], told);
    }
}
