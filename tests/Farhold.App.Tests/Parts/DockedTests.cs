using Farhold.App.Attempts;
using Farhold.Tests.Architecture;

namespace Farhold.App.Tests.Parts;

/// <summary>What is docked is not made anew under a finger.</summary>
public class DockedTests : LimbTest
{
    [Fact]
    public async Task The_alarm_under_a_finger_is_the_same_button_from_second_to_second()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        var screen = AttemptShown();
        var (alarm, clock) = (screen.FindComponent<BleedingAgain>().Instance, Timer(screen));
        Time.Advance(TimeSpan.FromSeconds(1));
        Time.Advance(TimeSpan.FromSeconds(1));
        Assert.NotEqual(clock, Timer(screen));
        Assert.Same(alarm, screen.FindComponent<BleedingAgain>().Instance);
    }

    [Fact]
    public void No_screen_docks_without_it() =>
        Assert.Equal(
            ["Docked.razor"],
            Directory
                .EnumerateFiles(Path.Combine(Repository.Root, "src", "Farhold.App"), "*.razor", SearchOption.AllDirectories)
                .Where(f => File.ReadAllText(f).Contains("<SectionContent", StringComparison.Ordinal))
                .Select(Path.GetFileName)
        );
}
