namespace Farhold.Rehearsal.Tests;

/// <summary>Each scenario that ships, run by its scripted carer: what its title says is what happens.</summary>
public class ScenarioTests
{
    [Fact]
    public void Held_at_once_holds_for_more_than_an_hour()
    {
        var session = Shipped.Run("held-at-once");
        Assert.DoesNotContain(session.Truth, l => l is TruthLine.Failed);
        Assert.Equal([false], session.Frames[^1].Tight);
        Assert.True(session.Time - Slackened(session) > 3_600);
        Assert.True(session.Frames[^1].Flow[0] < 1);
        Assert.Equal(Verdict.Attempt, Known(session, Begun(session)));
    }

    [Fact]
    public void Needless_bleeds_no_more_when_it_is_let_out()
    {
        var session = Shipped.Run("needless");
        var at = Slackened(session);
        Assert.All(session.Frames.Where(f => f.At > at), f => Assert.True(f.Flow[0] < 1));
        // And it would have clotted by itself: nobody does anything but let it out.
        var bare = Headless.Run(
            Shipped.Scenario("needless"),
            Shipped.Acts("""{"at":"PT1M","entry":{"kind":"tourniquet.slackened","tourniquet":"t1"}}""")
        );
        Assert.True(bare.Frames[^1].LostMl < 250 && bare.Frames[^1].Flow[0] < 1);
    }

    [Fact]
    public void A_child_is_judged_by_a_childs_limits_and_loses_a_childs_blood()
    {
        var session = Shipped.Run("child");
        Assert.DoesNotContain(session.Truth, l => l is TruthLine.Failed);
        Assert.InRange(session.Frames[^1].Vitals.BloodVolume + session.Frames[^1].LostMl, 1_900, 3_200);
        Assert.Equal(10, session.Record.Select(e => e.Payload).OfType<Payload.CasualtyOpened>().Single().AgeYears);
        Assert.Equal(Verdict.Attempt, Known(session, Begun(session)));
        Assert.Contains(session.Scenario.KnownLimits, l => l.Contains("12 years", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_limbs_are_let_out_one_after_the_other_and_both_hold()
    {
        var session = Shipped.Run("two-limbs");
        Assert.Equal([false, false], session.Frames[^1].Tight);
        Assert.DoesNotContain(session.Truth, l => l is TruthLine.Failed);
        var between = session.Frames.Where(f => !f.Tight[0] && f.Tight[1]).ToArray();
        Assert.True(between.Length >= 15, "one limb has held for a quarter of an hour before the next");
        Assert.Contains(session.Scenario.KnownLimits, l => l.Contains("left leg", StringComparison.Ordinal));
        var starts = session.Record.Where(e => e.Payload is Payload.AttemptStarted).ToArray();
        Assert.Equal(Verdict.Attempt, Known(session, starts[0], Limb.LeftLeg));
        Assert.Equal(Verdict.Attempt, Known(session, starts[1], Limb.RightArm));
    }

    [Fact]
    public void Bled_at_slackening_bleeds_as_it_is_let_out_and_is_caught()
    {
        var session = Shipped.Run("bled-at-slackening");
        var failed = session.Truth.OfType<TruthLine.Failed>().Single();
        Assert.InRange(failed.At - Slackened(session), 0, 120);
        Assert.Equal([true], session.Frames[^1].Tight);
        Assert.True(session.Frames[^1].Flow[0] < 1);
        Assert.Null(session.Scenario.Injects.FirstOrDefault());
        // Not caught, it is the end.
        var alone = Headless.Run(session.Scenario, new([.. Shipped.Script("bled-at-slackening").Deeds.Where(d => d.At < 1_690)]));
        Assert.True(alone.Frames[^1].LostMl > session.Frames[^1].LostMl + 1_000);
    }

    [Fact]
    public void Bled_after_a_move_holds_for_forty_minutes_until_the_casualty_is_lifted()
    {
        var session = Shipped.Run("bled-after-a-move");
        var failed = session.Truth.OfType<TruthLine.Failed>().Single();
        Assert.InRange(failed.At - Slackened(session), 2_400, 2_520);
        Assert.Equal(failed.At, session.Truth.OfType<TruthLine.Injected>().Single(i => i.Inject == "sledge").At);
        Assert.Equal([true], session.Frames[^1].Tight);
    }

    [Fact]
    public void Cold_and_dark_kills_by_cold_unless_somebody_wraps_him()
    {
        var wrapped = Shipped.Run("cold-and-dark");
        var bare = Headless.Run(
            wrapped.Scenario,
            new([.. Shipped.Script("cold-and-dark").Deeds.Where(d => d is not Deed.Does { Act.Act: Act.Cover })])
        );
        Assert.True(wrapped.Frames[^1].Vitals.CoreTemperature > 35, $"{wrapped.Frames[^1].Vitals.CoreTemperature}");
        Assert.True(bare.Frames[^1].Vitals.CoreTemperature < 33, $"{bare.Frames[^1].Vitals.CoreTemperature}");
        Assert.Contains(bare.Truth, l => l is TruthLine.Injected { Inject: "still" });
        Assert.DoesNotContain(wrapped.Truth, l => l is TruthLine.Injected { Inject: "still" });
        Assert.Equal(
            Verdict.LeaveOn,
            Judge.At(Until(wrapped, wrapped.At(1_000)), ShippedRules.Book, wrapped.At(1_000)).Limbs.Single().Verdict
        );
    }

    /// <summary>Rabbit and dog muscle in the model: nearly all dead after six hours in the warm, some less in the cool.</summary>
    [Fact]
    public void Found_late_has_to_stay_tied_and_letting_it_out_floods_the_heart_with_potassium()
    {
        var left = Shipped.Run("found-late");
        Assert.Equal([true], left.Frames[^1].Tight);
        Assert.Equal(Verdict.LeaveOn, Known(left, left.Record[^1]));
        Assert.True(left.Frames[^1].DeadMuscle > 0.5, $"{left.Frames[^1].DeadMuscle}");
        var let = Headless.Run(
            left.Scenario,
            Shipped.Acts(
                """{"at":"PT1M","entry":{"kind":"wound.packed","wound":"w1","material":"haemostatic-gauze"}}""",
                """{"at":"PT4M","entry":{"kind":"dressing.applied","wound":"w1","dressing":"pressure"}}""",
                """{"at":"PT6M","entry":{"kind":"tourniquet.slackened","tourniquet":"t1"}}"""
            )
        );
        Assert.True(
            let.Frames.Max(f => f.Potassium) > left.Frames.Max(f => f.Potassium) + 1,
            $"{let.Frames.Max(f => f.Potassium)} against {left.Frames.Max(f => f.Potassium)}"
        );
    }

    [Fact]
    public void A_warning_sign_comes_on_day_two_and_the_record_shows_it()
    {
        var session = Shipped.Run("warning-on-day-two");
        Assert.Equal(Truth.NotMet, Infection(session, 6_000).Min());
        Assert.Contains(Truth.Met, Infection(session, 11_400));

        static IEnumerable<Truth> Infection(RehearsalSession session, double at) =>
            WarningSigns.Of(Until(session, session.At(at)), ShippedRules.Book, session.At(at), "infection").Select(f => f.State);
    }

    [Theory, MemberData(nameof(All))]
    public void Every_scenario_ends_with_an_unbroken_practice_record_and_a_truth_that_reruns(string name)
    {
        var session = Shipped.Run(name);
        var text = string.Concat(session.Record.Select(e => e.Json + "\n"));
        var read = Shipped.Usable(RecordReader.Read(System.Text.Encoding.UTF8.GetBytes(text), name));
        Assert.Empty(read.Damaged);
        var record = CareRecord.Of(read);
        Assert.Empty(record.Breaks);
        Assert.Empty(record.Doubts);
        Assert.All(session.Record, e => Assert.Contains("\"practice\":true", e.Json.ToString(), StringComparison.Ordinal));
        var seal = Assert.IsType<Payload.NoteWritten>(session.Record[0].Payload).Text;
        Assert.Contains(RehearsalSession.SealOf(session.Scenario.Hash, session.Seed), seal, StringComparison.Ordinal);
        var truth = Shipped.Usable(TruthFile.Read(System.Text.Encoding.UTF8.GetBytes(TruthFile.Write(session.Truth)), name));
        Assert.Null(Shipped.Usable(truth.Again(Shipped.Scenario(name), name)).Differs);
    }

    [Theory, MemberData(nameof(All))]
    public void Another_seed_varies_what_the_scenario_lets_vary_and_nothing_else(string name)
    {
        var scenario = Shipped.Scenario(name);
        Assert.Same(scenario, Variation.Of(scenario, scenario.Seed));
        var (one, again) = (Variation.Of(scenario, 4_711), Variation.Of(scenario, 4_711));
        Assert.Equal(one.Wounds.Select(w => w.BleedMlPerMin), again.Wounds.Select(w => w.BleedMlPerMin));
        Assert.NotEqual(
            (scenario.Wounds[0].BleedMlPerMin, scenario.Casualty.MassKg, scenario.Surroundings.AirC),
            (one.Wounds[0].BleedMlPerMin, one.Casualty.MassKg, one.Surroundings.AirC)
        );
        Assert.Equal(scenario.Wounds.Select(w => w.Name), one.Wounds.Select(w => w.Name));
        if (scenario.Vary.BleedMlPerMin is var (from, to))
            Assert.All(one.Wounds, w => Assert.InRange(w.BleedMlPerMin, from, to));
    }

    public static TheoryData<string> All => [.. Shipped.Names];

    private static Entry Begun(RehearsalSession session) => session.Record.First(e => e.Payload is Payload.AttemptStarted);

    private static CareRecord Until(RehearsalSession session, Instant at) => new(session.Record.Where(e => e.Recorded <= at), []);

    /// <summary>The verdict by all that was in the record before an entry.</summary>
    private static Verdict Known(RehearsalSession session, Entry entry, Limb? limb = null)
    {
        var record = new CareRecord(session.Record.Where(e => e.Id.Number < entry.Id.Number), []);
        var limbs = Judge.At(record, ShippedRules.Book, entry.Recorded).Limbs;
        return limbs.First(l => limb is null || l.Limb == limb).Verdict;
    }

    private static double Slackened(RehearsalSession session) =>
        session.Truth.OfType<TruthLine.Began>().Last(b => b.Act is Act.Slacken && b.At >= 0).Until;
}
