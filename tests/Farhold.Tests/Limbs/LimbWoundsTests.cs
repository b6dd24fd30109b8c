using System.Collections.Immutable;
using static Farhold.Tests.Story;

namespace Farhold.Tests.Limbs;

public class LimbWoundsTests
{
    [Fact]
    public void Those_its_tourniquets_name_and_no_other() =>
        Assert.Equal(
            ["w2"],
            Treated(
                ("08:00", Wound("w1", Limb.LeftLeg)),
                ("08:00", Wound("w2", Limb.LeftLeg)),
                ("08:10", Tight("t1", wound: "w2")),
                ("08:20", Tight("t2"))
            )
        );

    [Fact]
    public void Where_none_is_named_all_found_on_the_limb() =>
        Assert.Equal(
            ["w1", "w2"],
            Treated(
                ("08:00", Wound("w1", Limb.LeftLeg)),
                ("08:05", Wound("w2", Limb.LeftLeg)),
                ("08:06", Wound("w2", Limb.LeftLeg)),
                ("08:07", Wound("w3", Limb.RightLeg)),
                ("12:01", Wound("w4", Limb.LeftLeg)),
                ("08:10", Tight("t1")),
                ("08:10", Tight("t2", Limb.RightLeg, "w3"))
            )
        );

    [Fact]
    public void Found_or_named_this_moment_counts_and_later_does_not()
    {
        Assert.Equal(["w1"], Treated(("08:00", Tight("t1")), ("12:00", Wound("w1", Limb.LeftLeg))));
        Assert.Equal(["w1"], Treated(("12:00", Tight("t1", wound: "w1"))));
        Assert.Empty(Treated(("12:01", Tight("t1", wound: "w1"))));
    }

    [Fact]
    public void What_was_said_of_a_wound_treated_here_is_of_this_limb_wherever_it_was_found()
    {
        (string, Payload)[] said =
        [
            ("08:00", Wound("w1", Limb.LeftLeg)),
            ("08:01", Wound("w2", Limb.LeftArm)),
            ("08:02", Wound("w3", Limb.RightLeg)),
            ("08:10", Tight("t1", wound: "w2")),
        ];
        Assert.Equal(["w1", "w2"], LimbWounds.On(Limb.LeftLeg, Story.Of(said), Case.Now).Select(w => w.As<Payload.WoundFound>().Wound));
    }

    private static WoundNames Treated(params (string, Payload)[] said) => LimbWounds.Treated(Limb.LeftLeg, Story.Of(said), Case.Now);
}
