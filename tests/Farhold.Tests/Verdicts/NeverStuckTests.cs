using CsCheck;

namespace Farhold.Tests.Verdicts;

/// <summary>
/// A casualty who is well, with material and somebody to watch, always comes to a decision: the carer only has to do what the first
/// thing due asks.
/// </summary>
public class NeverStuckTests
{
    /// <summary>
    /// Where several things in a row have to wait for an adviser, each after the last; seen in some one of 5,000 casualties.
    /// </summary>
    private const int Longer = 20;

    [Theory]
    [InlineData(Link.None, 45)]
    [InlineData(Link.Allows, 45)]
    [InlineData(Link.Refuses, 45)]
    [InlineData(Link.Silent, 65)] // half an hour of it is waiting for an answer
    public void Whoever_does_what_is_asked_reaches_a_decision_in_time(Link link, int minutes)
    {
        var late = 0;
        World.Any.Sample(
            world =>
            {
                if (new Carer(world with { Link = link }).Decides(Duration.FromMinutes(minutes)))
                    return;
                late++;
                var carer = new Carer(world with { Link = link });
                Assert.True(carer.Decides(Duration.FromMinutes(minutes + Longer)), carer.Story);
            },
            iter: Gens.LongCases(1_500),
            threads: 1
        );
        Assert.True(late <= 2 + (Gens.LongCases(1_500) / 500), $"{late} need longer than {minutes} minutes");
    }
}
