namespace Farhold.Cli.Tests;

public class DueTests
{
    [Fact]
    public void What_is_due_and_what_speaks_for_trouble_are_listed()
    {
        var ran = Run.Farhold("due", Run.Demo, "--at", "2031-05-04T03:42:30Z");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("  AT ONCE  left leg: ", ran.Output);
        Assert.Contains("  can't be told: infection", ran.Output);
    }

    [Fact]
    public void Bleeding_under_a_loosened_tourniquet_is_called_and_explained()
    {
        var ran = Run.Farhold("due", Run.Demo, "--at", "2031-05-04T03:42:30Z", "--hours", "1");
        Assert.Contains("Trouble:\n  re-bleeding, left leg: The wound may be bleeding again under the dressing.\n", ran.Output);
        Assert.Contains("seen: tourniquet loosened yes; bleeding active, 0 min old", ran.Output);
        Assert.Contains("called so on 22 of 1,000 days of stable simulated casualties", ran.Output);
    }

    [Fact]
    public void Hours_that_are_none_are_refused() => Assert.Equal(2, Run.Farhold("due", Run.Demo, "--hours", "-1").ExitCode);
}
