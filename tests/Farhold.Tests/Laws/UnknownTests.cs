using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>Unknown is never good news.</summary>
/// <remarks>
/// Not claimed, because the rules say otherwise: that attempts of the past may be forgotten (they are events, not observations; what
/// is derived from them is always known and stands on its worse side), or an express no; that refill, saturation and temperature
/// matter where nobody measured them; that help nobody knows of is asked for where nobody can be reached.
/// </remarks>
public class UnknownTests
{
    /// <summary>They count when measured.</summary>
    private static readonly Input[] Measured = [Input.CapillaryRefillS, Input.Spo2, Input.TemperatureC];

    private static readonly Gen<Input> AnyInput = Gen.OneOf(Gens.LookedAt.Except(Measured).ToArray());

    [Fact]
    public void Knowing_less_never_turns_another_verdict_into_an_attempt() =>
        Gen.Select(Gens.StrangeRecord, Gens.Protocol, AnyInput)
            .Sample(
                (written, protocol, input) =>
                {
                    foreach (var state in written.Record.Readings)
                    {
                        if (
                            input == Input.HelpWithin
                            && new CasualtyView(state, ShippedRules.Book.By(protocol), written.Now, []).Advice.Unreached
                        )
                            continue;
                        var known = Told.Limbs(state, protocol, written.Now).ToDictionary(l => l.Limb, l => l.Verdict);
                        foreach (var limb in Told.Limbs(Told.Without(state, input), protocol, written.Now))
                            if (limb.Verdict == Verdict.Attempt && known[limb.Limb] != Verdict.Attempt)
                                return false;
                    }

                    return true;
                },
                iter: Gens.Cases(2_500)
            );

    /// <summary>
    /// Of what counts when measured only a bad value matters: with good ones only, the verdict is that without them or better.
    /// </summary>
    [Fact]
    public void Leaving_out_a_good_value_of_what_counts_when_measured_never_makes_for_an_attempt() =>
        Gen.Select(Gens.StrangeRecord, Gen.OneOf(Measured))
            .Sample(
                (written, input) =>
                {
                    var state = written.Record.Readings[0];
                    if (state.Of(Kind.SignsTaken).Select(s => s.As<Payload.SignsTaken>()).Any(IsBad))
                        return true;
                    var known = Told.Limbs(state, ShippedProtocol.Protocol, written.Now).ToDictionary(l => l.Limb, l => l.Verdict);
                    return Told.Limbs(Told.Without(state, input), ShippedProtocol.Protocol, written.Now)
                        .All(l => l.Verdict != Verdict.Attempt || known[l.Limb] == Verdict.Attempt);
                },
                iter: Gens.Cases(1_500)
            );

    /// <summary>A bad sign, or one that is asked back, such as 50 °C: taken away, its question goes with it.</summary>
    private static bool IsBad(Payload.SignsTaken s) =>
        s is { CapillaryRefillS: >= 3 } or { Spo2: < 90 } or { TemperatureC: < 34 }
        || Implausible.Of(s, null).Any(o => Measured.Any(m => m.Name == o.Field));

    [Fact]
    public void What_the_shipped_protocol_asks_for_is_needed_for_an_attempt()
    {
        Input[] asked =
        [
            Input.HeartRate,
            Input.RespiratoryRate,
            Input.Systolic,
            Input.Mental,
            Input.Dizzy,
            Input.Pale,
            Input.Cool,
            Input.Clammy,
            Input.RadialPulse,
            Input.WoundNature,
            Input.Bleeding,
            Input.WatchAble,
            Input.Packing,
            Input.PressureDressing,
            Input.BleedingElsewhere,
            Input.TrunkWound,
            Input.BreathingHard,
            Input.VeryCold,
            Input.BloodThinner,
        ];
        var attempts = 0;
        Gens.Record.Sample(
            written =>
            {
                var state = written.Record.Readings[0];
                foreach (var before in Told.Limbs(state, ShippedProtocol.Protocol, written.Now).Where(l => l.Verdict == Verdict.Attempt))
                {
                    Interlocked.Increment(ref attempts);
                    foreach (var input in asked.Where(i => !IsLifted(before, i)))
                    {
                        var after = Told.Limbs(Told.Without(state, input), ShippedProtocol.Protocol, written.Now)
                            .Single(l => l.Limb == before.Limb);
                        if (IsLifted(after, input))
                            continue; // a wound in the record stands in for the look, and is lifted
                        Assert.NotEqual(Verdict.Attempt, after.Verdict);
                        Assert.NotEqual(Verdict.AwaitHelp, after.Verdict);
                        // A wound in the record says of itself what the look denied: then it stands, and is not unknown.
                        if (
                            after.Verdict == Verdict.CheckFirst
                            && !after.Findings.Any(f => f.Against == Truth.Met && f.Criterion.Condition.Inputs.Contains(input))
                        )
                            Assert.Contains(input, after.CheckFirst);
                    }

                    if (before.Attempt is null && !new CasualtyView(state, ShippedRules.Book, written.Now, []).Advice.Unreached)
                        Assert.Equal(
                            [Input.HelpSoon],
                            Told.Limbs(Told.Without(state, Input.HelpWithin), ShippedProtocol.Protocol, written.Now)
                                .Single(l => l.Limb == before.Limb)
                                .CheckFirst
                        );
                }
            },
            iter: Gens.Cases(1_500)
        );
        Assert.True(attempts >= Gens.Cases(50), $"only {attempts} attempts among the generated records");

        // A wound of the trunk or a medicine in the record stays known without the look that said the same, and stays lifted.
        static bool IsLifted(LimbVerdict limb, Input input) =>
            limb.Findings.Any(f => f.Lifted != Lift.None && f.Criterion.Condition.Inputs.Contains(input));
    }

    [Fact]
    public void An_unknown_finding_never_turns_another_verdict_into_an_attempt() =>
        Gen.Select(Gens.Record, Gens.Protocol, Gen.Int[0, 40])
            .Sample(
                (written, protocol, which) =>
                {
                    foreach (var limb in Told.Limbs(written.Record.Readings[0], protocol, written.Now))
                    {
                        var at = which % limb.Findings.Length;
                        var hidden = limb.Findings.SetItem(
                            at,
                            new(limb.Findings[at].Criterion, limb.Findings[at].Trace with { State = Truth.Unknown })
                        );
                        if (LimbJudge.Decide(hidden) == Verdict.Attempt)
                            return false;
                    }

                    return true;
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void A_met_contraindication_never_goes_with_an_attempt_unless_it_is_lifted() =>
        Gen.Select(Gens.StrangeRecord, Gens.Protocol)
            .Sample(
                (written, protocol) =>
                    written
                        .Judged(protocol)
                        .Limbs.All(l =>
                            l.Verdict != Verdict.Attempt
                            || l.Findings.All(f =>
                                f.Criterion.Role switch
                                {
                                    Role.Requires => f.State == Truth.Met,
                                    Role.Soft => f.State != Truth.Unknown,
                                    Role.Asks => f.State == Truth.NotMet || (f.State == Truth.Met && f.Lifted != Lift.None),
                                    _ => f.State == Truth.NotMet,
                                }
                            )
                        ),
                iter: Gens.Cases(2_500)
            );

    [Fact]
    public void Generated_records_come_to_every_verdict()
    {
        var counts = new int[4];
        Gens.StrangeRecord.Sample(
            written =>
            {
                foreach (var limb in written.Judged().Limbs)
                    Interlocked.Increment(ref counts[(int)limb.Verdict]);
            },
            iter: 2_000
        );
        Assert.All(counts, n => Assert.True(n >= 5, $"attempt, await, check, leave: {string.Join(", ", counts)}"));
    }
}
