namespace Farhold.Tests.Verdicts;

/// <summary>A limit on a clock that is known only as a range is judged on the side that stands against an attempt.</summary>
public class WorseSideTests
{
    /// <summary>Tightened between two hours and one hour ago.</summary>
    private static readonly Case Range = Case
        .Well.With("tourniquet", null)
        .And(new Happened(Case.Ago("02:00"), Case.Ago("01:00")), new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1"));

    [Theory]
    [InlineData("forbids", "above", "PT90M", Truth.Met)]
    [InlineData("forbids", "above", "PT121M", Truth.NotMet)]
    [InlineData("forbids", "below", "PT90M", Truth.Met)]
    [InlineData("forbids", "below", "PT59M", Truth.NotMet)]
    [InlineData("requires", "above", "PT90M", Truth.NotMet)]
    [InlineData("requires", "above", "PT59M", Truth.Met)]
    [InlineData("requires", "below", "PT90M", Truth.NotMet)]
    [InlineData("requires", "below", "PT121M", Truth.Met)]
    public void Both_ends_of_a_clock_count_where_they_are_worse(string role, string comparison, string limit, Truth state) =>
        Assert.Equal(state, Asked(role, $$"""{"input":"sinceFirstTightened","{{comparison}}":"{{limit}}"}"""));

    [Theory]
    [InlineData("forbids", Truth.Met)]
    [InlineData("requires", Truth.NotMet)]
    public void The_worse_side_turns_round_with_a_negation(string role, Truth state) =>
        Assert.Equal(state, Asked(role, """{"not":{"input":"sinceFirstTightened","below":"PT90M"}}"""));

    [Fact]
    public void What_is_shown_is_the_range_itself()
    {
        var finding = Range.Limb.Findings.Single(f => f.Criterion.Id == "limit.time");
        Assert.Equal("1 h 00 min to 2 h 00 min", Assert.Single(finding.Used).Value);
    }

    private static Truth Asked(string role, string when)
    {
        var local = $$"""
            {"local":"x","version":"1","title":"X","over":"farhold-base","criteria":[{"id":"x.clock","role":"{{role}}","text":"X.","sources":["common"],"when":{{when}}}]}
            """;
        var protocol = Assert.IsType<Read<Protocol>.Usable>(Farhold.Tests.Protocols.LocalFile.Read(local)).Value;
        return Judge
            .At(Range.Record, ShippedRules.Book.By(protocol), Case.Now)
            .Limbs.Single()
            .Findings.Single(f => f.Criterion.Id == "x.clock")
            .State;
    }
}
