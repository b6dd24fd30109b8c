using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What a local protocol may do without a signature is only ever to hold attempts back.</summary>
public class OverlayTests
{
    [Fact]
    public void A_local_protocol_that_only_tightens_never_allows_an_attempt_the_shipped_one_does_not()
    {
        var (taken, differ) = (0, 0);
        Gen.Select(Gens.Overlay, Gens.Record, Gens.Record).Sample((overlay, one, two) =>
        {
            if (Read(overlay) is not { Local.Authority: null } local)
                return;
            Interlocked.Increment(ref taken);
            foreach (var written in new[] { one, two })
            {
                var shipped = written.Judged().Limbs.ToDictionary(l => l.Limb, l => l.Verdict);
                foreach (var limb in written.Judged(local).Limbs)
                {
                    Assert.False(limb.Verdict == Verdict.Attempt && shipped[limb.Limb] != Verdict.Attempt);
                    if (limb.Verdict != shipped[limb.Limb])
                        Interlocked.Increment(ref differ);
                }
            }
        }, iter: Gens.Cases(2_500), print: p => $"{System.Text.Encoding.UTF8.GetString(p.Item1.Span)}\n{p.Item2}\n{p.Item3}");
        Assert.True(taken >= Gens.Cases(100) && differ >= Gens.Cases(10), $"{taken} taken, {differ} verdicts differ");
    }

    [Fact]
    public void Whoever_signs_a_limb_past_eight_hours_is_left_alone() =>
        Gen.Select(Gens.Overlay, Gens.StrangeRecord, Gen.Int[0, 600]).Sample((overlay, written, later) =>
            Read(overlay) is not { } local
            || Judge.At(written.Record, local, written.Now + Duration.FromMinutes(later)).Limbs.All(l =>
                l.Clock.SinceFirstTightened.Max < LocalReader.FurthestLimit || l.Verdict == Verdict.LeaveOn), iter: Gens.Cases(3_000));

    [Fact]
    public void What_loosens_a_hard_limit_is_always_told() =>
        Gens.Overlay.Sample(overlay =>
        {
            if (Read(overlay) is not { } local)
                return;
            var later = local.Clock.Limit > ShippedProtocol.Protocol.Clock.Limit;
            var dropped = ShippedProtocol.Protocol.Criteria.Where(c => c.Hard).Any(c => local.Criteria.All(l => l.Id != c.Id));
            Assert.True(!(later || dropped) || (local.Local!.Authority is not null && !local.Local.Loosened.IsEmpty));
            Assert.True(local.Local!.Loosened.IsEmpty || local.Local.Authority is not null);
        }, iter: Gens.Cases(2_500));

    private static Protocol? Read(ReadOnlyMemory<byte> overlay) =>
        (LocalReader.Read(overlay, "hut.json", ShippedProtocol.Protocol) as Read<Protocol>.Usable)?.Value;
}
