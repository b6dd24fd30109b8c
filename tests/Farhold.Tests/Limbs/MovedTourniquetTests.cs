namespace Farhold.Tests.Limbs;

/// <summary>One tourniquet, two limbs.</summary>
public class MovedTourniquetTests
{
    [Fact]
    public void A_loosening_is_of_the_limb_it_was_last_tightened_on()
    {
        var judged = Judged(Some.At("10:00"), Some.At("10:00"), "10:30", "11:00");
        Assert.Equal([Limb.LeftLeg], judged.Limbs.Select(l => l.Limb)); // never slackened there
        Assert.Equal([Limb.RightLeg], judged.Observed.Select(w => w.Limb));
    }

    [Fact]
    public void Where_that_can_not_be_told_no_clock_stops_and_it_is_said()
    {
        var judged = Judged(Some.At("10:00"), Some.At("11:00"), "10:30", "11:30");
        Assert.Equal([Limb.LeftLeg, Limb.RightLeg], judged.Limbs.Select(l => l.Limb));
        Assert.All(judged.Limbs, l => Assert.Equal(Case.Now, l.Clock.Stretches[^1].To));
        Assert.All(judged.Limbs, l => Assert.Equal(Truth.Unknown, l.Clock.Tight));
        Assert.Contains(
            judged.Remarks,
            r => r.Text.StartsWith("it can't be told from which limb tourniquet t1 was loosened", StringComparison.Ordinal)
        );
    }

    private static Judgement Judged(Instant earliest, Instant latest, string right, string slackened) =>
        Judge.At(
            new(
                [
                    Written(1, new(earliest, latest), new Payload.TourniquetTightened("t1", Limb.LeftLeg)),
                    Written(2, Happened.At(Some.At(right)), new Payload.TourniquetTightened("t1", Limb.RightLeg)),
                    Written(3, Happened.At(Some.At(slackened)), new Payload.TourniquetSlackened("t1")),
                ],
                []
            ),
            ShippedRules.Book,
            Case.Now
        );

    private static Entry Written(int number, Happened when, Payload what) =>
        EntryWriting.Write(new("a", number), when, Case.Now, "Ane", what);
}
