using CsCheck;

namespace Farhold.Tests.WayOut;

/// <summary>A plan under way: what happened tells of the rest as filtering many trials by it does.</summary>
public class SoFarTests
{
    private const int Many = 400_000;

    private static readonly Instant Start = Some.At("08:00");

    [Theory, InlineData(45), InlineData(90), InlineData(15)]
    public void A_stage_that_took_so_long_tells_of_the_next_as_filtering_does(int minutes)
    {
        var plan = SomePlan.Of("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":30,"p90":120}""", "\"correlation\":0.6,");
        var all = Ran(plan, null, Many);
        var (first, care) = (all.SecondsTo(0).ToArray(), all.SecondsToCare.ToArray());
        var filtered = first.Zip(care).Where(p => Math.Abs(p.First - (60 * minutes)) < 60).Select(p => p.Second - p.First);
        var told = Ran(plan, new([new("1", StageState.Done, After(minutes))], After(minutes)), 20_000);
        Alike(filtered, told.SecondsToCare.ToArray().Select(s => s - (60 * minutes)));
    }

    [Theory, InlineData(40), InlineData(100)]
    public void A_stage_that_goes_on_tells_of_itself_and_the_next_as_filtering_does(int minutes)
    {
        var plan = SomePlan.Of("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":30,"p90":120}""", "\"correlation\":0.6,");
        var all = Ran(plan, null, Many);
        var filtered = all.SecondsTo(0).ToArray().Zip(all.SecondsToCare.ToArray()).Where(p => p.First > 60 * minutes).Select(p => p.Second);
        Alike(filtered, Ran(plan, new([], After(minutes)), 20_000).SecondsToCare.ToArray());
    }

    [Fact]
    public void A_helicopter_that_does_not_come_tells_of_the_pace_as_filtering_does()
    {
        var plan = SomePlan.Of(
            """{"first":[{"name":"h","probability":0.6,"legs":[{"mode":"aircraft","low":30,"likely":40,"high":60}]},{"legs":[{"mode":"wait","p10":100,"p90":400}]}]}""",
            "\"weather\":0.8,\"correlation\":0.5,"
        );
        var all = Ran(plan, null, Many);
        var (flown, ground) = (all.SecondsTo(1).ToArray(), all.SecondsTo(2).ToArray());
        var filtered = flown.Zip(ground).Where(p => double.IsNaN(p.First)).Select(p => p.Second);
        var soFar = new SoFar([new("1.1.1", StageState.Failed, After(1)), new("1.2.1", StageState.Begun, Start)], After(1));
        Alike(filtered, Ran(plan, soFar, 20_000).SecondsToCare.ToArray());
    }

    [Fact]
    public void A_helicopter_nobody_has_seen_is_as_likely_as_filtering_leaves_it()
    {
        var plan = SomePlan.Of(
            """{"first":[{"name":"h","probability":0.6,"legs":[{"mode":"aircraft","low":30,"likely":60,"high":180}]},{"legs":[{"mode":"carry","distanceKm":6,"packaging":false}]}]}""",
            "\"weather\":0.5,"
        );
        // The carry was begun at once; at 80 min nothing has been seen in the air.
        var soFar = new SoFar([new("1.2.1", StageState.Begun, Start)], After(80));
        var told = Ran(plan, soFar, 20_000);
        var all = Ran(plan, null, Many);
        var (flown, ground) = (all.SecondsTo(1).ToArray(), all.SecondsTo(2).ToArray());
        var filtered = Enumerable.Range(0, Many).Where(t => !(flown[t] <= 4800) && Late(ground[t])).ToArray();
        var came = filtered.Average(t => double.IsNaN(flown[t]) ? 0 : 1);
        Assert.Equal(came, told.SecondsTo(1).ToArray().Average(s => double.IsNaN(s) ? 0 : 1), 0.02);

        static bool Late(double s) => s > 4800;
    }

    // The ground ahead differs from the ground behind by a spread of 0.15, so filtering lets what is noted differ by as much.
    [Fact]
    public void The_pace_so_far_tells_of_the_pace_ahead_as_filtering_does()
    {
        const string leg = """{"mode":"carry","distanceKm":2,"packaging":false}""";
        var plan = SomePlan.Of($"{leg},{leg}");
        var light = Darkness.Of([], Start + Duration.FromDays(10));
        var all = Ran(plan, null, Many, light);
        var (first, care) = (all.SecondsTo(0).ToArray(), all.SecondsToCare.ToArray());
        var noise = new Rng(77);
        var filtered = Enumerable
            .Range(0, Many)
            .Where(t => Math.Abs((first[t] * Math.Exp(0.15 * NormalLaw.Quantile(noise.Uniform((ulong)t)))) - 5400) < 60)
            .Select(t => care[t] - first[t]);
        var soFar = new SoFar([new("1", StageState.Done, After(90))], After(90));
        var told = Ran(plan, soFar, 20_000, light);
        Alike(filtered, told.SecondsToCare.ToArray().Select(s => s - 5400));
    }

    [Fact]
    public void A_delay_so_far_never_makes_arrival_earlier() =>
        Gen.Select(Gen.Int[0, 10], Gen.Int[1, 400], Gen.Int[1, 200], Gen.Bool)
            .Sample(
                (rho, minutes, later, carry) =>
                {
                    var first = carry ? """{"mode":"carry","distanceKm":3,"packaging":false}""" : """{"mode":"wait","p10":20,"p90":80}""";
                    var plan = SomePlan.Of(
                        $$"""{{first}},{"mode":"walk","distanceKm":3},{"mode":"carry","distanceKm":2,"packaging":false}""",
                        FormattableString.Invariant($"\"correlation\":{rho / 10.0},\"from\":{{\"lat\":1,\"lon\":2}},")
                    );
                    var now = Ran(plan, new([], After(minutes)), 300).SecondsToCare.ToArray();
                    var then = Ran(plan, new([], After(minutes + later)), 300).SecondsToCare.ToArray();
                    // The grid of the shared luck is a twentieth of a score wide: a trial at the very end of what bearers last may fall
                    // to either side of it.
                    Assert.All(
                        now.Zip(then),
                        pair => Assert.True(pair.Second >= pair.First * 0.98 || double.IsInfinity(pair.First), $"{pair}")
                    );
                    Assert.True(then.Count(double.IsInfinity) >= now.Count(double.IsInfinity) - 2);
                    Assert.All(then, s => Assert.True(s >= (minutes + later) * 60));
                    Assert.True(then.Where(double.IsFinite).Sum() >= now.Where(double.IsFinite).Sum() || then.Any(double.IsInfinity));
                },
                iter: 40
            );

    [Fact]
    public void A_stage_done_ends_when_it_was_done_and_one_given_up_never()
    {
        var plan = SomePlan.Of("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":30,"p90":120}""");
        var done = Ran(plan, new([new("1", StageState.Done, After(50)), new("2", StageState.Done, After(75))], After(80)), 50);
        Assert.All(done.SecondsToCare.ToArray(), s => Assert.Equal(75 * 60, s));
        var given = Ran(plan, new([new("2", StageState.Failed, After(70))], After(80)), 50);
        Assert.All(given.SecondsToCare.ToArray(), s => Assert.Equal(double.PositiveInfinity, s));
    }

    // By hand: at 08:50 the helicopter is known not to come, so the carry of two hours sets out then.
    [Fact]
    public void Nobody_waits_on_for_what_is_known_not_to_come()
    {
        var plan = SomePlan.Of(
            """{"name":"message","mode":"wait","p10":10,"p90":40},{"waitFor":{"name":"h","probability":0.6,"legs":[{"mode":"aircraft","p10":20,"p90":90}]},"onward":{"legs":[{"mode":"aircraft","low":20,"likely":25,"high":40}]},"otherwise":{"name":"carry out","legs":[{"mode":"wait","low":120,"likely":120,"high":120}]}}"""
        );
        var soFar = new SoFar([new("1", StageState.Done, After(40)), new("2.1.1", StageState.Failed, After(50))], After(50));
        var ran = Ran(plan, soFar, 500);
        Assert.All(ran.SecondsToCare.ToArray(), s => Assert.Equal(170 * 60, s, 1e-6));
        var outlook = Outlook.Of(ran, []);
        Assert.StartsWith("In all trials carry out: between", ArrivalWords.Sentences(outlook)[0], StringComparison.Ordinal);
        Assert.Equal(
            TimeSpan.Zero,
            DecisionTime.Of(ran, (Deadline?)null, TestContext.Current.CancellationToken)!.Best.Wait!.Value.ToTimeSpan()
        );
        // Before that it has not been seen, and nobody has set out.
        var waiting = Ran(plan, new([new("1", StageState.Done, After(40))], After(50)), 500).SecondsToCare.ToArray();
        Assert.All(waiting, s => Assert.True(s > 50 * 60));
    }

    [Fact]
    public void What_is_marked_later_than_now_is_not_known_yet()
    {
        var plan = SomePlan.Of("""{"mode":"wait","p10":20,"p90":80},{"mode":"wait","p10":30,"p90":120}""");
        Assert.Equal(
            Ran(plan, new([], After(10)), 50).SecondsToCare.ToArray(),
            Ran(plan, new([new("1", StageState.Done, After(30))], After(10)), 50).SecondsToCare.ToArray()
        );
    }

    private static Simulation Ran(Plan plan, SoFar? soFar, int trials, Darkness? darkness = null) =>
        new Simulation(CompiledPlan.Of(plan, darkness ?? SomePlan.Nights, soFar), new Rng(9), SamplingLimits.Exactly(trials)).Run(
            TestContext.Current.CancellationToken
        );

    private static Instant After(double minutes) => Start + Duration.FromMinutes(minutes);

    /// <summary>Ten, fifty and ninety of a hundred within 4 %.</summary>
    private static void Alike(IEnumerable<double> filtered, IEnumerable<double> told)
    {
        var (brute, ours) = (filtered.Order().ToArray(), told.Order().ToArray());
        Assert.True(brute.Length > 1500, $"{brute.Length} trials left to compare with");
        foreach (var p in new[] { 0.1, 0.5, 0.9 })
            Assert.Equal(1, ours[(int)(p * ours.Length)] / brute[(int)(p * brute.Length)], 0.04);
    }
}
