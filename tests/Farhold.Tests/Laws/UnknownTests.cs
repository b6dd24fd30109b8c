using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>Unknown is never good news.</summary>
/// <remarks>
/// Not claimed: that attempts of the past may be forgotten. They are events, not observations; a record without the
/// failed attempt is the record of another casualty. What is derived from them is always known and stands on its worse side.
/// </remarks>
public class UnknownTests
{
    private static readonly Gen<Input> AnyInput = Gen.OneOf(Gens.LookedAt.ToArray());

    [Fact]
    public void Knowing_less_never_turns_another_verdict_into_an_attempt() =>
        Gen.Select(Gens.StrangeRecord, Gens.Protocol, AnyInput).Sample((written, protocol, input) =>
        {
            foreach (var state in written.Record.Readings)
            {
                var known = Told.Limbs(state, protocol, written.Now).ToDictionary(l => l.Limb, l => l.Verdict);
                foreach (var limb in Told.Limbs(Told.Without(state, input), protocol, written.Now))
                    if (limb.Verdict == Verdict.Attempt && known[limb.Limb] != Verdict.Attempt)
                        return false;
            }

            return true;
        }, iter: Gens.Cases(2_500));

    [Fact]
    public void What_the_shipped_protocol_asks_for_is_needed_for_an_attempt()
    {
        var asked = ShippedProtocol.Protocol.Criteria.SelectMany(c => c.Condition.Inputs).Distinct()
            .Intersect(Gens.LookedAt).Except([Input.SinceFirstTightened, Input.RecordWhole, Input.Oversight]).ToArray();
        var attempts = 0;
        Gens.Record.Sample(written =>
        {
            var state = written.Record.Readings[0];
            foreach (var before in Told.Limbs(state, ShippedProtocol.Protocol, written.Now).Where(l => l.Verdict == Verdict.Attempt))
            {
                Interlocked.Increment(ref attempts);
                foreach (var input in asked)
                {
                    var after = Told.Limbs(Told.Without(state, input), ShippedProtocol.Protocol, written.Now).Single(l => l.Limb == before.Limb);
                    Assert.Equal(Verdict.CheckFirst, after.Verdict);
                    Assert.Contains(input, after.CheckFirst);
                }
            }
        }, iter: Gens.Cases(1_500));
        Assert.True(attempts >= Gens.Cases(50), $"only {attempts} attempts among the generated records");
    }

    [Fact]
    public void An_unknown_finding_never_turns_another_verdict_into_an_attempt() =>
        Gen.Select(Gens.Record, Gens.Protocol, Gen.Int[0, 40]).Sample((written, protocol, which) =>
        {
            foreach (var limb in Told.Limbs(written.Record.Readings[0], protocol, written.Now))
            {
                var at = which % limb.Findings.Length;
                var hidden = limb.Findings.SetItem(at, limb.Findings[at] with { Trace = limb.Findings[at].Trace with { State = Truth.Unknown } });
                if (LimbJudge.Decide(hidden) == Verdict.Attempt)
                    return false;
            }

            return true;
        }, iter: Gens.Cases(2_000));

    [Fact]
    public void A_met_contraindication_never_goes_with_an_attempt() =>
        Gen.Select(Gens.StrangeRecord, Gens.Protocol).Sample((written, protocol) =>
            written.Judged(protocol).Limbs.All(l => l.Verdict != Verdict.Attempt || l.Findings.All(f => f.State == f.Criterion.Role switch
            {
                Role.Requires => Truth.Met,
                _ => Truth.NotMet,
            })), iter: Gens.Cases(2_500));

    [Fact]
    public void Generated_records_come_to_every_verdict()
    {
        var counts = new int[4];
        Gens.StrangeRecord.Sample(written =>
        {
            foreach (var limb in written.Judged().Limbs)
                Interlocked.Increment(ref counts[(int)limb.Verdict]);
        }, iter: 2_000);
        Assert.All(counts, n => Assert.True(n >= 5, $"attempt, await, check, leave: {string.Join(", ", counts)}"));
    }
}
