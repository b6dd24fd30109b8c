namespace Farhold.App.Tests.Respond;

public class FirstLookScreenTests : CareTest
{
    [Fact]
    public async Task From_the_first_question_to_the_last_with_a_leg_that_bleeds()
    {
        await StartAsync();
        var look = Show<FirstLookScreen>();
        Answer(look, "An arm or a leg bleeds", expected: "An arm or a leg bleeds");
        Answer(look, "Left leg", expected: "Left leg: press hard");
        Assert.Equal(Bleeding.Active, Last<Payload.BleedingChecked>().Bleeding);
        Answer(look, "Tourniquet on; it stopped", expected: "Does blood run");
        Answer(look, "Nothing else bleeds", expected: "Do they speak");
        Answer(look, "Airway is free", expected: "whole bare chest");
        Answer(look, "Looked: nothing, breathing is easy", expected: "pulse at the wrist");
        Answer(look, "Strong; skin warm, dry and pink", expected: "wet or shivering");
        Answer(look, "Dry and warm", expected: "Awake and clear");
        Answer(look, "Awake and clear, nothing on the head", expected: "belly and hips");
        Answer(look, "Looked: nothing, not pregnant", expected: "Blood thinners?");
        Answer(look, "Asked: none of these", expected: "What happened?");
        Answer(look, "Fall", expected: "When did it happen?");
        Answer(look, "10 to 30 minutes ago", expected: "First look done");

        Assert.Empty(FirstLook.At(State, Now).Unknown);
        Assert.Equal(Limb.LeftLeg, Last<Payload.TourniquetTightened>().Limb);
        Assert.False(Last<Payload.CasualtyOpened>().Pregnant);
        Assert.Empty(Last<Payload.CasualtyOpened>().Allergies);
        var injury = State.Of(Kind.InjuryStated).Single();
        Assert.Equal(new Happened(Now - Duration.FromMinutes(30), Now - Duration.FromMinutes(10)), injury.When);
        Assert.Equal(Mechanism.Fall, injury.As<Payload.InjuryStated>().Mechanism);
    }

    [Fact]
    public async Task Paused_it_goes_on_where_it_was_left()
    {
        await StartAsync();
        Answer(Show<FirstLookScreen>(), "Looked: nothing bleeds", expected: "Do they speak");
        var now = Show<NowScreen>();
        Assert.Contains("not looked at yet: Airway, Breathing and chest", Text(now.Find(".look-prompt")), StringComparison.Ordinal);
        Assert.Contains("Do they speak", Text(Show<FirstLookScreen>().Find("main")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_is_taken_back_as_a_whole()
    {
        await StartAsync();
        var look = Show<FirstLookScreen>();
        Answer(look, "Looked: nothing bleeds", expected: "Do they speak");
        Tap(look, "Undo");
        look.WaitForAssertion(() => Assert.Contains("Does blood run", Text(look.Find("main")), StringComparison.Ordinal));
        Assert.Empty(State.Of(Kind.StepLooked));
        Assert.Empty(State.Of(Kind.CasualtyLookedOver));
    }

    [Fact]
    public async Task What_nobody_can_say_is_asked_no_more_but_stays_unknown()
    {
        await StartAsync();
        foreach (var step in Enum.GetValues<LookStep>().SkipLast(1))
            await LogAsync(1, new Payload.StepLooked(step, StepFound.Nothing));
        var look = Show<FirstLookScreen>();
        Answer(look, "Nobody can say", expected: "What happened?");
        Answer(look, "Nobody can say", expected: "First look done");
        Assert.Equal([LookStep.Background], FirstLook.At(State, Now).Unknown);
        Assert.Contains("Not looked at", Text(look.Find("main")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_step_can_be_looked_at_again()
    {
        await StartAsync();
        foreach (var step in Enum.GetValues<LookStep>())
            await LogAsync(1, new Payload.StepLooked(step, step == LookStep.Cold ? StepFound.NotLooked : StepFound.Nothing));
        var look = Show<FirstLookScreen>();
        Tap(look, "Look again: Cold");
        Answer(look, "Dry and warm", expected: "First look done");
        Assert.Empty(FirstLook.At(State, Now).Unknown);
    }

    private static void Answer(Bunit.IRenderedComponent<Frame> look, string answer, string expected)
    {
        Tap(look, answer);
        look.WaitForAssertion(() => Assert.Contains(expected, Text(look.Find("main")), StringComparison.Ordinal));
    }
}
