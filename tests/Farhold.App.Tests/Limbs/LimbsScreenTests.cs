namespace Farhold.App.Tests.Limbs;

public class LimbsScreenTests : LimbTest
{
    [Fact]
    public async Task The_line_is_a_picture_with_a_name_and_stands_in_words_too()
    {
        await ReadyAsync();
        var screen = Shown();
        var picture = screen.Find("svg[role=img]");
        Assert.All(picture.GetAttribute("aria-labelledby")!.Split(' '), id => Assert.NotEmpty(screen.Find($"#{id}").TextContent));
        Assert.Contains("First tightened", screen.Find("details").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clock_that_is_not_known_exactly_is_a_range()
    {
        await ReadyAsync();
        await Logbook.WriteAsync(
            Session.Open!,
            new Payload.TourniquetTightened("t2", Limb.RightArm),
            new Happened(Now - Duration.FromMinutes(80), Now - Duration.FromMinutes(62))
        );
        Assert.Contains("1 h 02 min to 1 h 20 min", Shown().Find("[aria-labelledby=limb-right-arm]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_goes_on_counting_while_it_is_shown()
    {
        await ReadyAsync();
        var screen = Shown();
        Assert.Contains("40 min", screen.Find("dl").TextContent, StringComparison.Ordinal);
        Pass(3);
        screen.WaitForAssertion(() => Assert.Contains("43 min", screen.Find("dl").TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_says_how_attempts_went_and_what_the_clock_brings()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        await TellAsync(new Payload.BleedingChecked("w1", Bleeding.Active));
        await TellAsync(new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));
        await TellAsync(new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled));
        var text = Shown().Find("[aria-labelledby=limb-left-leg]").TextContent;
        Assert.Contains(Texts.ResultBled, text, StringComparison.Ordinal);
        Assert.Contains("the time limit of 6 h since first tightening", text, StringComparison.Ordinal);
    }

    private IRenderedComponent<LimbsScreen> Shown() => Render<LimbsScreen>(p => p.Add(s => s.Casualty, Casualty));
}
