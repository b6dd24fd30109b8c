using static Farhold.Tests.Story;

namespace Farhold.Tests.Limbs;

/// <summary>An attempt is taken up where the record left it. Step times are the shipped protocol's; all read at 12:00.</summary>
public class AttemptProgressTests
{
    private static readonly (string, Payload)[] Start = [("10:00", Tight("t1", wound: "w1")), ("11:00", Begun())];

    private static readonly Payload Gauze = new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze);

    private static readonly Payload Dressed = new Payload.DressingApplied("w1", DressingKind.Pressure);

    [Fact]
    public void Without_an_attempt_under_way_there_is_none()
    {
        Assert.Null(Of(Start[0]));
        Assert.Null(Of([.. Start, ("11:30", Ended(AttemptOutcome.Held))]));
    }

    [Fact]
    public void It_begins_with_packing()
    {
        var progress = Of(Start)!;
        Assert.Equal(Enum.GetValues<StepId>(), progress.Steps.Select(s => s.Step.Id));
        Assert.Equal(progress.Steps[0], progress.Current);
        Assert.Equal((When("11:00"), Some.At("11:00"), null), (progress.Current!.Began, progress.Current.NotBefore, progress.Current.Done));
        Assert.All(progress.Steps.Skip(1), s => Assert.Equal((null, null, null), (s.Began, s.NotBefore, s.Done)));
    }

    [Theory]
    [InlineData(PackingMaterial.HaemostaticGauze, "11:05")]
    [InlineData(PackingMaterial.PlainGauze, "11:12")]
    [InlineData(PackingMaterial.Cloth, "11:12")]
    public void How_long_to_hold_goes_by_what_the_wound_was_packed_with(PackingMaterial material, string notBefore)
    {
        var progress = Of([.. Start, ("11:02", new Payload.WoundPacked("w1", material))])!;
        Assert.Equal(When("11:02"), progress.Steps[0].Done);
        Assert.Equal(
            (StepId.Hold, When("11:02"), Some.At(notBefore)),
            (progress.Current!.Step.Id, progress.Current.Began, progress.Current.NotBefore)
        );
    }

    [Fact]
    public void Step_after_step_until_the_watch()
    {
        var progress = Of([.. Start, ("11:02", Gauze), ("11:06", Hold(3)), ("11:08", Dressed), ("11:10", Slack("t1"))])!;
        Assert.Equal([When("11:02"), When("11:06"), When("11:08"), When("11:10"), null], progress.Steps.Select(s => s.Done));
        Assert.Equal([When("11:00"), When("11:02"), When("11:06"), When("11:08"), When("11:10")], progress.Steps.Select(s => s.Began));
        Assert.Equal(
            [Some.At("11:00"), Some.At("11:05"), Some.At("11:06"), Some.At("11:09"), Some.At("11:25")],
            progress.Steps.Select(s => s.NotBefore!.Value)
        );
        Assert.Equal(StepId.Watch, progress.Current!.Step.Id);
    }

    [Fact]
    public void A_step_begun_between_two_times_lasts_from_the_later() =>
        Assert.Equal(Some.At("11:09"), Of([.. Start, ("11:02-11:06", Gauze)])!.Current!.NotBefore);

    [Theory]
    [InlineData(2, 1, true)]
    [InlineData(2, 2, true)]
    [InlineData(1, 1, false)]
    public void Minutes_held_in_pieces_add_up(double first, double second, bool enough)
    {
        var progress = Of([.. Start, ("11:02", Gauze), ("11:04", Hold(first)), ("11:06", Hold(second))])!;
        Assert.Equal(enough ? When("11:06") : null, progress.Steps[1].Done);
    }

    [Fact]
    public void Held_at_another_wound_does_not_count() =>
        Assert.Equal(StepId.Hold, Of([.. Start, ("11:02", Gauze), ("11:06", new Payload.PressureHeld("w2", 10))])!.Current!.Step.Id);

    [Theory]
    [InlineData("w2", DressingKind.Pressure)]
    [InlineData("w1", DressingKind.Plain)]
    public void Only_a_pressure_dressing_on_this_wound_will_do(string wound, DressingKind kind) =>
        Assert.Equal(
            StepId.Dress,
            Of([.. Start, ("11:02", Gauze), ("11:06", Hold(3)), ("11:08", new Payload.DressingApplied(wound, kind))])!.Current!.Step.Id
        );

    [Fact]
    public void Packing_another_wound_is_not_this_ones() =>
        Assert.Equal(StepId.Pack, Of([.. Start, ("11:02", new Payload.WoundPacked("w2", PackingMaterial.Cloth))])!.Current!.Step.Id);

    [Fact]
    public void Slackening_another_tourniquet_is_not_this_ones() =>
        Assert.Equal(
            StepId.Slacken,
            Of([
                .. Start,
                ("10:30", Tight("t2")),
                ("11:02", Gauze),
                ("11:06", Hold(3)),
                ("11:08", Dressed),
                ("11:10", Slack("t2")),
            ])!.Current!.Step.Id
        );

    [Fact]
    public void What_was_done_before_the_step_began_does_not_count_and_at_that_instant_does()
    {
        Assert.Equal(StepId.Pack, Of([.. Start, ("10:59", Gauze)])!.Current!.Step.Id);
        Assert.Equal(StepId.Hold, Of([.. Start, ("11:00", Gauze)])!.Current!.Step.Id);
        Assert.Equal(StepId.Hold, Of([.. Start, ("10:50-11:00", Gauze)])!.Current!.Step.Id);
    }

    [Fact]
    public void What_is_done_this_moment_counts_and_later_does_not()
    {
        Assert.Equal(StepId.Hold, Of([.. Start, ("12:00", Gauze)])!.Current!.Step.Id);
        Assert.Equal(StepId.Pack, Of([.. Start, ("12:01", Gauze)])!.Current!.Step.Id);
    }

    [Fact]
    public void Packed_twice_the_last_packing_counts() =>
        Assert.Equal(
            Some.At("11:20"),
            Of([.. Start, ("11:02", Gauze), ("11:10", new Payload.WoundPacked("w1", PackingMaterial.Cloth))])!.Current!.NotBefore
        );

    private static Payload.PressureHeld Hold(double minutes) => new("w1", minutes);

    private static AttemptProgress? Of(params (string, Payload)[] said)
    {
        var state = Story.Of(said);
        var casualty = new CasualtyView(state, ShippedRules.Book, Case.Now, []);
        return AttemptProgress.Of(new(casualty, LimbClock.Of(Limb.LeftLeg, state, Case.Now), Attempt.On(Limb.LeftLeg, state, Case.Now)));
    }
}
