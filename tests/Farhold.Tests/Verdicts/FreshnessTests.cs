namespace Farhold.Tests.Verdicts;

/// <summary>How long what was seen goes on counting (design): still fresh at the end, unknown a minute later.</summary>
public class FreshnessTests
{
    [Theory]
    [InlineData("signs", "shock.heart-rate", "00:15", "00:16")]
    [InlineData("signs", "shock.mental", "00:15", "00:16")]
    [InlineData("signs", "shock.pale", "00:15", "00:16")]
    [InlineData("signs", "shock.systolic", "00:15", "00:16")]
    [InlineData("signs", "looks.clear", "00:15", "00:16")]
    [InlineData("bleeding", "bleeding.active", "00:30", "00:31")]
    [InlineData("watch", "watch.able", "01:00", "01:01")]
    [InlineData("help", "help.soon", "04:00", "04:01")]
    [InlineData("over", "rest.bleeding", "00:30", "00:31")]
    [InlineData("over", "rest.breathing", "00:30", "00:31")]
    [InlineData("over", "rest.cold", "01:00", "01:01")]
    [InlineData("over", "rest.trunk", "04:00", "04:01")]
    public void What_was_seen_too_long_ago_is_unknown(string part, string id, string fresh, string stale)
    {
        Case Seen(string ago) =>
            part switch
            {
                "signs" => Case.Well.Looks(("00:30", Some.GoodSigns), (ago, Some.GoodSigns)),
                "bleeding" => Case.Well.With(part, new Payload.BleedingChecked("w1", Bleeding.None), ago),
                "watch" => Case.Well.With(part, new Payload.WatchStated(true), ago),
                "over" => Case.Well.With(part, Some.NothingElse, ago),
                _ => Case.Well.With(part, new Payload.HelpExpected(Case.Now, null, Case.In("10:00"), Care: HelpCare.Surgery), ago),
            };
        Assert.NotEqual(Truth.Unknown, Seen(fresh).State(id));
        Assert.Equal(Truth.Unknown, Seen(stale).State(id));
        Assert.NotEqual(Verdict.Attempt, Seen(stale).Verdict);
    }

    [Fact]
    public void What_was_said_of_blood_thinners_stays() =>
        Assert.Equal(Truth.NotMet, Case.Well.With("over", Some.NothingElse, "23:00").State("rest.blood-thinner"));

    /// <summary>
    /// What counts only where it was measured: an old good value is as good as none, an old bad one has to be looked at again.
    /// </summary>
    [Theory]
    [InlineData("shock.refill", 2, "00:16", Truth.NotMet)]
    [InlineData("shock.refill", 4, "00:15", Truth.Met)]
    [InlineData("shock.refill", 4, "00:16", Truth.Unknown)]
    [InlineData("rest.breathing", 96, "00:16", Truth.NotMet)]
    [InlineData("rest.breathing", 85, "00:15", Truth.Met)]
    [InlineData("rest.breathing", 85, "00:16", Truth.Unknown)]
    [InlineData("rest.cold", 36, "01:01", Truth.NotMet)]
    [InlineData("rest.cold", 33, "01:00", Truth.Met)]
    [InlineData("rest.cold", 33, "01:01", Truth.Unknown)]
    public void Of_what_counts_when_measured_an_old_bad_value_is_looked_at_again(string id, double value, string ago, Truth state)
    {
        var signs = id switch
        {
            "shock.refill" => new Payload.SignsTaken { CapillaryRefillS = value },
            "rest.breathing" => new Payload.SignsTaken { Spo2 = value },
            _ => new Payload.SignsTaken { TemperatureC = value },
        };
        Assert.Equal(state, Case.Well.And(ago, signs).State(id));
    }
}
