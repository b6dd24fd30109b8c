namespace Farhold.App.Tests.Attempts;

public class StepTimeTests : LimbTest
{
    /// <summary>Minutes by material: JTS combat medic curriculum (3) and course teaching (10), as in the shipped protocol.</summary>
    [Theory]
    [InlineData(PackingMaterial.HaemostaticGauze, 3)]
    [InlineData(PackingMaterial.PlainGauze, 10)]
    [InlineData(PackingMaterial.Cloth, 10)]
    public async Task Pressure_counts_itself_and_is_logged_as_at_least_the_least_time(PackingMaterial material, int minutes)
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Pack);
        var screen = AttemptShown();
        Button(screen, Texts.PackedWith(Wire.Word(material).Replace('-', ' '))).Click();
        Assert.Equal($"{minutes}:00", Timer(screen));
        Pass(minutes - 0.5);
        Assert.Equal("0:30", Timer(AttemptShown()));
        Assert.False(HasButton(AttemptShown(), Texts.HoldLog($"{minutes}")));
        Assert.Empty(Entries<Payload.PressureHeld>());
        Pass(0.5);
        Assert.Equal([new Payload.PressureHeld("w1", minutes, Counted: true)], Entries<Payload.PressureHeld>());
        Assert.True(HasButton(AttemptShown(), Texts.Dressed));
        Pass(2);
        Assert.Single(Entries<Payload.PressureHeld>());
    }

    [Fact]
    public async Task What_the_phone_counted_is_taken_back_once_and_not_counted_again()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        var screen = AttemptShown();
        Pass(3);
        Button(screen, Texts.Undo).Click();
        Pass(0.1);
        Assert.Single(Entries<Payload.PressureHeld>());
        Assert.True(HasButton(screen, Texts.HoldLog("3")));
    }

    [Fact]
    public async Task Nobody_counted_while_the_screen_was_gone_so_the_carer_is_asked()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        Pass(4);
        Assert.True(HasButton(AttemptShown(), Texts.HoldLog("4")));
        Pass(0.1);
        Assert.Empty(Entries<Payload.PressureHeld>());
    }

    [Fact]
    public async Task The_dressing_screen_still_takes_that_the_packing_soaked_through()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Dress);
        var screen = AttemptShown();
        Button(screen, Texts.HoldPackAgain).Click();
        Button(screen, Texts.PackedWith("cloth")).Click();
        Assert.Equal("10:00", Timer(screen));
    }

    [Fact]
    public async Task Blood_that_clots_badly_is_pressed_on_twice_as_long()
    {
        await ReadyAsync();
        await TellAsync(new Payload.CasualtyLookedOver(BloodThinner: true));
        await AtStepAsync(StepId.Hold);
        Assert.Equal("6:00", Timer(AttemptShown()));
        Assert.Contains(Texts.HoldTwice, AttemptShown().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Long_after_the_time_is_over_only_the_least_is_written_down()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        Pass(45);
        Assert.True(HasButton(AttemptShown(), Texts.HoldLog("3")));
    }

    [Fact]
    public async Task Packing_again_starts_the_count_again()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Hold);
        Pass(2);
        var screen = AttemptShown();
        Assert.Equal("1:00", Timer(screen));
        Button(screen, Texts.HoldPackAgain).Click();
        Button(screen, Texts.PackedWith("haemostatic gauze")).Click();
        Assert.Equal("3:00", Timer(screen));
    }

    [Fact]
    public async Task Slackening_starts_with_a_look_and_takes_a_minute_from_there()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Slacken);
        Pass(4);
        var screen = AttemptShown();
        Assert.False(HasButton(screen, Texts.SlackenLog));
        Button(screen, Texts.SlackenFromNone).Click();
        Assert.Equal("1:00", Timer(screen));
        Pass(0.5);
        Assert.Equal("0:30", Timer(AttemptShown()));
        Assert.Contains(Texts.SlackenBeat(4, 6), AttemptShown().Markup, StringComparison.Ordinal);
        Pass(0.5);
        Button(AttemptShown(), Texts.SlackenLog).Click();
        Assert.Equal("t1", Last<Payload.TourniquetSlackened>().Tourniquet);
        Assert.Equal("15:00", Timer(AttemptShown()));
    }

    [Fact]
    public async Task A_watch_that_was_begun_with_the_last_of_two_counts_from_there()
    {
        await ReadyAsync();
        await TellAsync(1, new Payload.TourniquetTightened("t2", Limb.LeftLeg, Wound: "w1"));
        await AtStepAsync(StepId.Watch);
        Pass(4);
        Assert.Contains(Texts.StepOf(4, 5), AttemptShown().Markup, StringComparison.Ordinal);
        await TellAsync(new Payload.TourniquetSlackened("t2"));
        Assert.Equal("15:00", Timer(AttemptShown()));
    }

    [Fact]
    public async Task It_has_held_only_after_the_whole_watch()
    {
        await ReadyAsync();
        await AtStepAsync(StepId.Watch);
        Pass(14.5);
        Assert.False(HasButton(AttemptShown(), Texts.HeldNone));
        Assert.Equal("0:30", Timer(AttemptShown()));
        Pass(0.5);
        var screen = AttemptShown();
        Button(screen, Texts.HeldNone).Click();
        Assert.Equal(AttemptOutcome.Held, Last<Payload.AttemptEnded>().Outcome);
        Assert.Equal(Bleeding.None, Last<Payload.BleedingChecked>().Bleeding);
        Assert.Contains(Texts.PeriodEvery("1 h 00 min", "2 min"), screen.Markup, StringComparison.Ordinal);
    }
}
