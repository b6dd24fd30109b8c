namespace Farhold.Cli.Tests;

public class DueTests
{
    [Fact]
    public void What_is_due_and_warning_signs_are_listed()
    {
        var ran = Run.Farhold("due", Run.Demo, "--at", "2031-05-04T03:42:30Z");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("  AT ONCE  left leg: ", ran.Output);
        Assert.Contains("  can't be told: cold", ran.Output);
    }

    [Fact]
    public void Bleeding_under_a_loosened_tourniquet_is_called_and_explained()
    {
        var ran = Run.Farhold("due", Run.Demo, "--at", "2031-05-04T03:42:30Z", "--hours", "1");
        Assert.Contains("Warning signs:\n  re-bleeding, left leg: The wound may be bleeding again under the dressing.\n", ran.Output);
        Assert.Contains("seen: tourniquet loosened yes; bleeding active, 0 min old", ran.Output);
        Assert.Contains("called so on 27 of 1,000 days of stable simulated casualties", ran.Output);
    }

    [Fact]
    public void Air_and_wind_say_how_cold_it_feels_here_and_in_the_verdict()
    {
        using var scratch = new Scratch();
        var record = scratch.Write(
            "cold.jsonl",
            Lines.Opened,
            Lines.Entry("k1-2", "02:20", "weather.stated", "\"airC\":-25,\"windKmh\":30")
        );
        foreach (var verb in (string[])["due", "tell"])
        {
            var ran = Run.Farhold(verb, record, "--at", "2031-05-04T02:50:00Z");
            Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
            Assert.Contains("Air and wind", ran.Output);
            Assert.Contains("  Air -25 °C, wind 30 km/h, 30 min ago.\n  Feels like -39 °C on bare skin.\n", ran.Output);
            Assert.Contains("can freeze in 5 to 10 minutes", ran.Output);
        }
    }

    [Fact]
    public void A_party_shares_the_watches_and_the_tasks()
    {
        var ran = Run.Farhold(
            "due",
            Run.Demo,
            "--at",
            "2031-05-04T06:10:00Z",
            "--party",
            "Ane,Jon,Mika",
            "--hours",
            "12",
            "--zone",
            "Europe/Oslo"
        );
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("Watches:\n  Ane: 2031-05-04 08:10 ", ran.Output);
        Assert.Contains("  position, with ", ran.Output);
        Assert.Contains("Sleep:\n  Ane: ", ran.Output);
    }

    [Theory]
    [InlineData("--party", "Ane,Ane", "--party is one to 8 different names")]
    [InlineData("--zone", "Nowhere/Else", "--zone Nowhere/Else is no time zone")]
    [InlineData("--night", "22-22", "--night is two different hours")]
    [InlineData("--night", "18-7", "at most 12 h apart")]
    public void A_party_that_is_none_is_refused(string option, string value, string reason)
    {
        var ran = Run.Farhold("due", Run.Demo, option, value);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(reason, ran.Errors);
    }

    [Fact]
    public void Hours_that_are_none_are_refused() => Assert.Equal(2, Run.Farhold("due", Run.Demo, "--hours", "-1").ExitCode);
}
