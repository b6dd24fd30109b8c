namespace Farhold.Tests.Verdicts;

/// <summary>The values that stand under a criterion, with their age, and what it needs where it can't be told.</summary>
public class ShownValuesTests
{
    [Theory]
    [InlineData("shock.dizzy", "dizzy false 0:05")]
    [InlineData("shock.mental", "mental alert 0:05")]
    [InlineData("wound.amputation", "woundNature bleeding -")]
    [InlineData("bleeding.active", "bleeding none 0:06")]
    [InlineData("limit.time", "timeOn 40 min -")]
    [InlineData("watch.able", "watchAble true 0:07")]
    [InlineData("materials.dressing", "pressureDressing true -")]
    [InlineData("record.whole", "recordWhole true -")]
    [InlineData("help.soon", "helpSoon false -")]
    [InlineData("shock.systolic", "systolic 124 0:05, ageYears 34 -")]
    [InlineData("rest.blood-thinner", "bloodThinner false -")]
    [InlineData("rest.trunk", "trunkWound false 0:06")]
    [InlineData("looks.clear", "clearLooks true -")]
    public void Each_value_is_shown_with_its_age_where_it_ages(string criterion, string shown)
    {
        var trace = Find(Case.Well, criterion);
        Assert.Equal(shown, Shown(trace));
        Assert.All(trace.Leaves, l => Assert.Null(l.Needs));
    }

    /// <summary>"No: the colour comes back only after 3 s" would be read as a finger that somebody pressed.</summary>
    [Theory]
    [InlineData(null, "not measured")]
    [InlineData(2.0, "not so")]
    [InlineData(4.0, "yes")]
    public void A_refill_that_nobody_timed_is_not_said_to_be_quick(double? refill, string said)
    {
        var limb = Case.Well.Signs(s => s with { CapillaryRefillS = refill }).Limb;
        Assert.Equal(said, VerdictWords.State(limb.Findings.Single(f => f.Criterion.Id == "shock.refill")));
    }

    [Theory]
    [InlineData("attempt.bled", "lastAttempt bled -")]
    [InlineData("attempt.bled", "furtherAttemptAllowed false -")]
    public void What_the_record_tells_of_attempts_does_not_age(string criterion, string shown) =>
        Assert.Contains(shown, Shown(Find(Case.Well.Tried("00:30", "00:20", AttemptOutcome.Bled), criterion)), StringComparison.Ordinal);

    [Fact]
    public void The_time_since_a_failed_attempt_counts_from_its_end()
    {
        var failed = Case.Well.Tried("00:30", "00:20", AttemptOutcome.Bled).Advised();
        Assert.Equal("sinceFailedAttempt 20 min -", Shown(Asked(failed, """{"input":"sinceFailedAttempt","atMost":"PT2H"}""")));
        Assert.Equal("failedAttempts 1 -", Shown(Asked(failed, """{"input":"failedAttempts","atLeast":2}""")));
    }

    [Fact]
    public void A_stale_value_is_shown_as_such_and_asked_for()
    {
        var trace = Find(Case.Well.With("signs", Some.GoodSigns, "00:16"), "shock.pale");
        var leaf = Assert.Single(trace.Leaves);
        Assert.Equal((Truth.Unknown, "pale", true), (leaf.State, leaf.Needs?.Name, leaf.Used.Single().Stale));
        Assert.Equal("pale false 0:16", Shown(trace));
    }

    [Fact]
    public void A_value_seen_between_two_times_is_stale_once_it_may_be()
    {
        Assert.True(Find(Between("00:20", "00:10"), "shock.pale").Leaves.Single().Used.Single().Stale);
        Assert.False(Find(Between("00:15", "00:10"), "shock.pale").Leaves.Single().Used.Single().Stale);
    }

    [Fact]
    public void No_cuff_does_not_go_stale()
    {
        var used = Find(Case.Well.Looks(("09:00", Some.GoodSigns with { Systolic = null, NoPressureCuff = true })), "shock.systolic")
            .Leaves.Single()
            .Used;
        Assert.Contains(used, u => u is { Input: "systolic", Value: "no-cuff", Stale: false });
    }

    [Fact]
    public void Without_a_latest_time_help_is_shown_from_the_likely_one_on_and_once_passed_as_passed()
    {
        var open = Case.Well.With("help", new Payload.HelpExpected(Case.Now + Duration.FromHours(3), null, null));
        Assert.Equal("helpWithin from 3 h 00 min 0:05", Shown(Asked(open, Within)));
        var passed = Case.Well.With(
            "help",
            new Payload.HelpExpected(Case.Now - Duration.FromHours(2), null, Case.Now - Duration.FromHours(1))
        );
        Assert.Equal("helpWithin passed 0:05", Shown(Asked(passed, Within)));
    }

    [Theory]
    [InlineData(60, false)]
    [InlineData(130, true)]
    [InlineData(120, false)]
    [InlineData(250, true)] // up to twelve years no rate alone is a sign
    public void Where_limits_go_by_age_and_it_is_not_known_it_is_asked_for_only_if_it_decides(double heartRate, bool asked)
    {
        var trace = Find(Case.Well.With("person", null).Signs(s => s with { HeartRate = heartRate }), "shock.heart-rate");
        var ages = trace.Leaves.Any(l => l.Needs == Input.AgeYears);
        var child = ShippedProtocol.Protocol.Criteria.Single(c => c.Id == "shock.heart-rate");
        var limits = Compares(child.Condition).SelectMany(c => c.Bands.Select(b => b.Limit).Append(c.Limit)).ToArray();
        Assert.Equal(asked, ages);
        Assert.Equal(asked, heartRate > limits.Min() && heartRate <= limits.Max());
    }

    [Fact]
    public void A_stale_value_is_asked_for_itself_not_the_age() =>
        Assert.All(
            Find(Case.Well.With("person", null).With("signs", Some.GoodSigns with { HeartRate = 130 }, "01:00"), "shock.heart-rate").Leaves,
            l => Assert.NotEqual(Input.AgeYears, l.Needs)
        );

    [Fact]
    public void The_age_that_chose_the_limit_is_shown() =>
        Assert.Contains("ageYears 34 -", Shown(Find(Case.Well, "shock.heart-rate")), StringComparison.Ordinal);

    private static IEnumerable<Condition.Compare> Compares(Condition condition) =>
        condition switch
        {
            Condition.All all => all.Parts.SelectMany(Compares),
            Condition.Any any => any.Parts.SelectMany(Compares),
            Condition.Not not => Compares(not.Part),
            Condition.Compare compare => [compare],
            _ => [],
        };

    private static Case Between(string earliest, string latest) =>
        Case.Well.Looks().And(new Happened(Case.Ago(earliest), Case.Ago(latest)), Some.GoodSigns);

    private const string Within = """{"input":"helpWithin","atMost":"PT2H"}""";

    /// <summary>A question that the shipped protocol does not ask.</summary>
    private static Trace Asked(Case scene, string when)
    {
        var criterion = $$"""{"id":"x","role":"forbids","text":"X.","sources":["common"],"when":{{when}}}""";
        var text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "protocols", "farhold-base.json"))
            .Replace("\"criteria\": [", "\"criteria\": [" + criterion + ",", StringComparison.Ordinal);
        var protocol = Assert.IsType<Read<Protocol>.Usable>(ProtocolReader.Read(System.Text.Encoding.UTF8.GetBytes(text), "p.json")).Value;
        return Judge
            .At(scene.Record, ShippedRules.Book.By(protocol), Case.Now)
            .Limbs.Single()
            .Findings.Single(f => f.Criterion.Id == "x")
            .Trace;
    }

    private static Trace Find(Case scene, string criterion) => scene.Limb.Findings.Single(f => f.Criterion.Id == criterion).Trace;

    private static string Shown(Trace trace) =>
        string.Join(
            ", ",
            trace
                .Leaves.SelectMany(l => l.Used)
                .Select(u => $"{u.Input} {u.Value} {(u.Age is { } age ? Story.Short(age.Max) : "-")}")
                .Distinct()
        );
}
