namespace Farhold.App.Tests.Now;

public class WhyScreenTests : CareTest
{
    [Fact]
    public async Task Every_criterion_is_shown_with_its_state_its_values_and_how_well_its_source_is_known()
    {
        await ReadyAsync(Well with { HeartRate = 131 });
        var why = Text(Show<WhyScreen>((nameof(WhyScreen.LimbName), "left-leg")).Find("main"));
        Assert.All(Desk.Picture!.Protocol.Criteria, c => Assert.Contains(c.Text, why, StringComparison.Ordinal));
        Assert.Contains("heart rate 131 /min, 1 min old", why, StringComparison.Ordinal);
        Assert.Contains("[read-2]", why, StringComparison.Ordinal);
        Assert.Contains("Holcomb et al. 2023, tourniquet conversion and replacement, PMC10662576 [read]", why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_limb_without_a_verdict_says_so()
    {
        await StartAsync();
        Assert.Contains("needs a verdict now", Show<WhyScreen>((nameof(WhyScreen.LimbName), "left-arm")).Markup, StringComparison.Ordinal);
    }

    /// <summary>At a glance "no: the wound bleeds" is a wound that bleeds.</summary>
    [Fact]
    public async Task What_is_not_so_is_said_to_be_not_so()
    {
        await ReadyAsync(Well);
        Assert.Contains(
            "Not so: The wound bleeds although the tourniquet is on",
            Text(Show<WhyScreen>((nameof(WhyScreen.LimbName), "left-leg")).Find("main")),
            StringComparison.Ordinal
        );
    }
}
