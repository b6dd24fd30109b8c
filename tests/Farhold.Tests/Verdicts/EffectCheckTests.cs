using static Farhold.Tests.Story;

namespace Farhold.Tests.Verdicts;

/// <summary>
/// Has it stopped? Asked after every tightening; where it bled, again at 5, 15 and 30 minutes and every 15 up to two hours (design).
/// </summary>
public class EffectCheckTests
{
    private static readonly (string, Payload)[] Tied = [("11:00", Wound("w1", Limb.LeftLeg)), ("11:00", Tight("t1", wound: "w1"))];

    /// <summary>Seen to bleed under the tourniquet, and tightened again.</summary>
    private static readonly (string, Payload)[] Again = [.. Tied, ("11:10", Looked(Bleeding.Active)), ("11:11", Tight("t1", wound: "w1"))];

    [Fact]
    public void After_a_tightening_it_is_the_first_thing_asked()
    {
        var due = All(Tied)[0];
        Assert.Equal(("effect.left-leg", Some.At("11:00"), true, true), (due.Task, due.At, due.Overdue, due.Leads));
        Assert.StartsWith("Has it stopped?", due.Text, StringComparison.Ordinal);
        Assert.False(All([("11:59", Tight("t1", wound: "w1"))])[0].Overdue); // nobody has been late within a minute
    }

    [Fact]
    public void A_look_since_answers_it_where_it_never_bled()
    {
        Assert.Null(Effect([.. Tied, ("11:01", Looked(Bleeding.None))]));
        Assert.NotNull(Effect([.. Tied, ("10:59", Looked(Bleeding.None))]));
        Assert.NotNull(Effect([.. Tied, ("11:01", new Payload.BleedingChecked("w2", Bleeding.None))]));
        Assert.NotNull(Effect([.. Tied, ("11:01", Looked(Bleeding.None)), ("11:30", Tight("t2", wound: "w1"))]));
    }

    [Theory]
    [InlineData("11:58", false)]
    [InlineData("11:56", true)]
    public void While_pressure_has_to_be_held_nobody_can_look(string packed, bool asked) =>
        Assert.Equal(
            asked,
            Effect([
                .. Tied,
                ("11:55", new Payload.AttemptStarted("w1", "t1")),
                (packed, new Payload.WoundPacked("w1", PackingMaterial.HaemostaticGauze)),
            ])
                is not null
        );

    [Theory]
    [InlineData("11:12", "11:16")]
    [InlineData("11:16", "11:26")]
    [InlineData("11:27", "11:41")]
    [InlineData("11:41", "11:56")]
    [InlineData("11:57", "12:11")]
    public void Where_it_bled_it_is_asked_again_and_again(string looked, string next) =>
        Assert.Equal(Some.At(next), Effect([.. Again, (looked, Looked(Bleeding.None))])!.At);

    [Fact]
    public void Up_to_two_hours() =>
        Assert.Null(
            Effect([
                ("09:00", Tight("t1", wound: "w1")),
                ("09:10", Looked(Bleeding.Active)),
                ("09:11", Tight("t1", wound: "w1")),
                ("11:12", Looked(Bleeding.None)),
            ])
        );

    [Fact]
    public void After_an_attempt_that_bled_as_well() =>
        Assert.Equal(
            Some.At("11:45"),
            Effect([
                .. Tied,
                ("11:05", Looked(Bleeding.None)),
                ("11:20", Begun()),
                ("11:40", Ended(AttemptOutcome.Bled)),
                ("11:41", Looked(Bleeding.None)),
            ])!.At
        );

    private static Payload.BleedingChecked Looked(Bleeding bleeding) => new("w1", bleeding);

    private static DueTask? Effect((string, Payload)[] said) => All(said).SingleOrDefault(d => d.Task == "effect.left-leg");

    private static System.Collections.Immutable.ImmutableArray<DueTask> All((string, Payload)[] said) =>
        Judge.At(Written(said), ShippedRules.Book, Case.Now).Due;
}
