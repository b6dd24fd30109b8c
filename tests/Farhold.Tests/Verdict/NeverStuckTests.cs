using CsCheck;

namespace Farhold.Tests.Verdicts;

/// <summary>
/// A casualty who is well, with material and somebody to watch, always comes to a decision: the carer only has to do what the first
/// thing due asks.
/// </summary>
public class NeverStuckTests
{
    [Theory]
    [InlineData(Link.None, 45)]
    [InlineData(Link.Allows, 45)]
    [InlineData(Link.Refuses, 45)]
    [InlineData(Link.Silent, 65)] // half an hour of it is waiting for an answer
    public void Whoever_does_what_is_asked_reaches_a_decision_in_time(Link link, int minutes) =>
        World.Any.Sample(world =>
        {
            var carer = new Carer(world with { Link = link });
            Assert.True(carer.Decides(Duration.FromMinutes(minutes)), carer.Story);
        }, iter: Gens.Cases(1_500), threads: 1);
}
