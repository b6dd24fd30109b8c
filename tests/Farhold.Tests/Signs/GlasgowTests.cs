using CsCheck;

namespace Farhold.Tests.Signs;

/// <summary>Parts: Teasdale and Jennett 1974; from memory.</summary>
public class GlasgowTests
{
    [Theory]
    [InlineData(4, 5, 6, 15)]
    [InlineData(3, 4, 6, 13)]
    [InlineData(2, 2, 5, 9)]
    [InlineData(1, 1, 1, 3)]
    public void Parts_add_up(int eye, int verbal, int motor, int total) =>
        Assert.Equal(ScoreBounds.Exactly(total), Glasgow.Bounds(new(eye, verbal, motor)));

    [Fact]
    public void A_part_that_can_not_be_tested_leaves_bounds()
    {
        var parts = new GlasgowParts(4, null, 6);
        Assert.Equal(new ScoreBounds(11, 15), Glasgow.Bounds(parts));
        Assert.Equal(new ScoreBounds(3, 15), Glasgow.Bounds(new(null, null, null)));
    }

    [Theory]
    [InlineData(0, 5, 6)]
    [InlineData(5, 5, 6)]
    [InlineData(4, 6, 6)]
    [InlineData(4, 0, 6)]
    [InlineData(4, 5, 7)]
    [InlineData(4, 5, 0)]
    public void A_part_outside_its_scale_is_refused(int eye, int verbal, int motor) =>
        Assert.ThrowsAny<ArgumentException>(() => Glasgow.Bounds(new(eye, verbal, motor)));

    // Totals at the medians of McNarry and Goldhill 2004 (15, 13, 8, 3; from memory) agree with their level only.
    [Theory]
    [InlineData(4, 5, 6, Mental.Alert)]
    [InlineData(3, 4, 6, Mental.Voice)]
    [InlineData(2, 2, 4, Mental.Pain)]
    [InlineData(1, 1, 1, Mental.Unresponsive)]
    public void A_median_total_agrees_with_its_own_level_only(int eye, int verbal, int motor, Mental its)
    {
        foreach (var level in new[] { Mental.Alert, Mental.Voice, Mental.Pain, Mental.Unresponsive })
            Assert.Equal(level == its, GlasgowAgreement.Between(level, new(eye, verbal, motor)).State == Truth.Met);
    }

    // Half-way between those medians, both ends included (design).
    [Theory]
    [InlineData(Mental.Alert, 3, 5, 6, true)] // 14
    [InlineData(Mental.Alert, 3, 5, 5, false)]
    [InlineData(Mental.Confused, 3, 3, 4, false)]
    [InlineData(Mental.Confused, 3, 3, 5, true)] // 11
    [InlineData(Mental.Voice, 4, 5, 6, false)]
    [InlineData(Mental.Voice, 3, 5, 6, true)] // 14
    [InlineData(Mental.Voice, 3, 3, 5, true)] // 11
    [InlineData(Mental.Voice, 3, 2, 5, false)]
    [InlineData(Mental.Pain, 2, 4, 5, false)]
    [InlineData(Mental.Pain, 2, 3, 5, true)] // 10
    [InlineData(Mental.Pain, 1, 1, 4, true)] // 6
    [InlineData(Mental.Pain, 1, 1, 3, false)]
    [InlineData(Mental.Unresponsive, 1, 2, 3, false)]
    [InlineData(Mental.Unresponsive, 1, 2, 2, true)] // 5
    public void A_level_agrees_with_totals_half_way_to_its_neighbours(Mental mental, int eye, int verbal, int motor, bool agrees) =>
        Assert.Equal(Kleene.Of(agrees), GlasgowAgreement.Between(mental, new(eye, verbal, motor)).State);

    [Theory]
    [InlineData(Mental.Alert, 2, 5, 6, Truth.NotMet)]
    [InlineData(Mental.Alert, 4, 4, 6, Truth.Unknown)]
    [InlineData(Mental.Confused, 4, 4, 6, Truth.Met)]
    [InlineData(Mental.Confused, 4, 5, 6, Truth.NotMet)]
    [InlineData(Mental.Pain, 3, 2, 4, Truth.NotMet)]
    [InlineData(Mental.Pain, 2, 2, 6, Truth.NotMet)]
    [InlineData(Mental.Unresponsive, 2, 1, 1, Truth.NotMet)]
    [InlineData(Mental.Unresponsive, 1, 1, 2, Truth.Met)]
    public void Plain_contradictions_and_new_confusion_are_told(Mental mental, int eye, int verbal, int motor, Truth agrees) =>
        Assert.Equal(agrees, GlasgowAgreement.Between(mental, new(eye, verbal, motor)).State);

    [Fact]
    public void A_part_that_can_not_be_tested_may_leave_it_open()
    {
        Assert.Equal(Truth.Unknown, GlasgowAgreement.Between(Mental.Voice, new(3, null, 6)).State);
        Assert.Equal(Truth.NotMet, GlasgowAgreement.Between(Mental.Alert, new(4, null, 1)).State);
        Assert.Equal(Truth.Met, GlasgowAgreement.Between(Mental.Unresponsive, new(1, 1, 1)).State);
        Assert.Equal(Truth.Met, GlasgowAgreement.Between(Mental.Pain, new(2, null, 3)).State);
    }

    [Fact]
    public void A_part_less_known_never_turns_disagreement_into_agreement_or_back() =>
        Gen.Select(Gen.Enum<Mental>(), Gen.Int[1, 4], Gen.Int[1, 5], Gen.Int[1, 6], Gen.Int[0, 2])
            .Sample(
                (mental, eye, verbal, motor, hidden) =>
                {
                    var whole = GlasgowAgreement.Between(mental, new(eye, verbal, motor));
                    var less = GlasgowAgreement.Between(
                        mental,
                        new(hidden == 0 ? null : eye, hidden == 1 ? null : verbal, hidden == 2 ? null : motor)
                    );
                    Assert.True(less.State is Truth.Unknown || less.State == whole.State, $"{whole} became {less}");
                    Assert.NotEmpty(less.Reason);
                }
            );
}
