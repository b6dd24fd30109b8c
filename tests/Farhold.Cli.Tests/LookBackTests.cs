using System.Text.Json;

namespace Farhold.Cli.Tests;

public class LookBackTests
{
    /// <summary>As a person reads it: change the file only after reading the difference.</summary>
    [Fact]
    public void The_demo_is_looked_back_over_as_approved()
    {
        var ran = Run.Farhold("lookback", Run.Demo, "--zone", "Europe/Oslo");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Equal(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "approved", "lookback.txt")).ReplaceLineEndings("\n"),
            ran.Output
        );
    }

    [Fact]
    public void As_json_every_observation_names_its_entries_and_times_in_seconds()
    {
        using var json = JsonDocument.Parse(Run.Farhold("lookback", Run.Demo, "--json").Output);
        var begun = json
            .RootElement.GetProperty("points")
            .EnumerateArray()
            .Where(p => p.GetProperty("kind").GetString() == "attempt-begun");
        Assert.Equal([120.0, 120], begun.Select(p => p.GetProperty("lasting").GetProperty("maxS").GetDouble()));
        Assert.All(begun, p => Assert.Equal(1, p.GetProperty("entries").GetArrayLength()));
    }

    [Fact]
    public void It_goes_no_further_than_asked()
    {
        var early = Run.Farhold("lookback", Run.Demo, "--until", "2031-05-04T03:30:00Z").Output;
        Assert.Contains("attempt begun", early, StringComparison.Ordinal);
        Assert.DoesNotContain("attempt ended", early, StringComparison.Ordinal);
        Assert.Equal(2, Run.Farhold("lookback", Run.Demo, "--until", "noon").ExitCode);
    }
}
