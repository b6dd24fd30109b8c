using static Farhold.Tests.Story;

namespace Farhold.Tests.Verdicts;

/// <summary>What to do next on a limb; all read at 12:00.</summary>
public class NextActTests
{
    private static readonly (string, Payload)[] Ready =
    [
        ("11:20", Wound("w1", Limb.LeftLeg)),
        ("11:20", Tight("t1", wound: "w1")),
        ("11:50", Some.NothingElse),
        ("11:50", new Payload.BleedingChecked("w1", Bleeding.None)),
        ("11:50", new Payload.WatchStated(true)),
        ("11:50", new Payload.SuppliesStated("haemostatic-gauze", 2)),
        ("11:50", new Payload.SuppliesStated(Supplies.PressureDressing, 1)),
        ("11:50", new Payload.HelpExpected(Some.At("20:00"), Latest: Some.At("20:00"), Care: HelpCare.Surgery)),
    ];

    [Fact]
    public void A_second_look_to_come_has_its_time_beside_the_sentence()
    {
        var judged = At12([.. Ready, ("11:55", Some.GoodSigns)]);
        var act = Assert.Single(judged.Limbs).Act;
        Assert.Equal((Some.At("12:05"), "looks.clear"), (act.NotBefore, act.Decides?.Criterion.Id));
        Assert.DoesNotContain(act.Text, char.IsDigit);
        Assert.Contains("2031-05-04 12:05 UTC", act.Said(), StringComparison.Ordinal);
        Assert.Contains("2031-05-05 00:05 UTC+12", act.Said(DateTimeZone.ForOffset(Offset.FromHours(12))), StringComparison.Ordinal);
        Assert.Equal(Some.At("12:05"), judged.Due.Single(d => d.Task == "next.left-leg").At);
    }

    [Fact]
    public void A_second_look_that_may_be_taken_waits_for_nothing()
    {
        var act = Assert.Single(At12([.. Ready, ("11:46", Some.GoodSigns)]).Limbs).Act;
        Assert.Null(act.NotBefore);
        Assert.Equal(act.Text, act.Said());
        Assert.StartsWith("Second look", act.Text, StringComparison.Ordinal);
    }

    /// <summary>Each thing that stands against an attempt names what would change it, not only the first.</summary>
    [Fact]
    public void What_would_change_a_leave_on_is_named_for_everything_that_stands()
    {
        var limb = Case
            .Well.Signs(s => s with { HeartRate = 140 })
            .And("00:30", new Payload.AttemptStarted("w1", "t1"), new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled))
            .Limb;
        var standing = limb
            .Reasons.Where(r => r.Against == Truth.Met)
            .Select(r => r.Criterion.Change)
            .OfType<string>()
            .Distinct()
            .ToArray();
        Assert.True(standing.Length > 1);
        Assert.Equal(standing, limb.Act.Changes);
    }

    /// <summary>An input that has no words for how to look is named.</summary>
    [Fact]
    public void What_to_look_at_is_never_empty() =>
        Assert.All(
            Input.All,
            input =>
                Assert.StartsWith(
                    input.Look.Length > 0 ? input.Look : InputWords.Name(input.Name),
                    VerdictWords.Look(input, Case.Well.Limb),
                    StringComparison.Ordinal
                )
        );

    private static Judgement At12(params (string When, Payload What)[] story) =>
        Judge.At(Written(story), ShippedRules.Book, Some.At("12:00"));
}
