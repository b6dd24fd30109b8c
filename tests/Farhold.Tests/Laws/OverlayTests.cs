using System.Text;
using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What a local protocol may do, by what stands behind it.</summary>
public class OverlayTests
{
    [Fact]
    public void A_local_protocol_that_only_tightens_never_allows_an_attempt_the_shipped_one_does_not()
    {
        var (taken, differ) = (0, 0);
        Gen.Select(Gens.Overlay, Gens.Record, Gens.Record)
            .Sample(
                (overlay, one, two) =>
                {
                    if (Read(overlay) is not { Local.Loosened.IsEmpty: true } local)
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
                },
                iter: Gens.Cases(2_500),
                print: p => $"{System.Text.Encoding.UTF8.GetString(p.Item1.Span)}\n{p.Item2}\n{p.Item3}"
            );
        Assert.True(taken >= Gens.Cases(100) && differ >= Gens.Cases(10), $"{taken} taken, {differ} verdicts differ");
    }

    [Fact]
    public void Whoever_signs_a_limb_past_six_hours_is_left_alone() =>
        Gen.Select(Gens.Overlay, Gens.StrangeRecord, Gen.Int[0, 600])
            .Sample(
                (overlay, written, later) =>
                    Read(overlay) is not { } local
                    || Judge
                        .At(written.Record, ShippedRules.Book.By(local), written.Now + Duration.FromMinutes(later))
                        .Limbs.All(l =>
                            l.Clock.SinceFirstTightened.Max < ShippedProtocol.Protocol.Clock.Limit || l.Verdict == Verdict.LeaveOn
                        ),
                iter: Gens.LongCases(3_000)
            );

    [Fact]
    public void No_hard_limit_is_dropped_or_put_off_and_every_other_shown_word_that_is_new_is_told()
    {
        var taken = 0;
        Gens.Overlay.Sample(
            overlay =>
            {
                if (Read(overlay) is not { } local)
                    return;
                Interlocked.Increment(ref taken);
                Assert.True(local.Clock.Limit <= ShippedProtocol.Protocol.Clock.Limit);
                Assert.All(
                    ShippedProtocol.Protocol.Criteria.Where(c => c.Hard),
                    c => Assert.Contains(local.Criteria, l => l.Id == c.Id && l.Hard && l.Role == c.Role)
                );
                Assert.All(
                    Shown(local).Except(Shown(ShippedProtocol.Protocol)),
                    text => Assert.Contains(local.Local!.Changes, c => c.Contains(text, StringComparison.Ordinal))
                );
                Assert.All(local.Local!.Loosened, l => Assert.Contains(l, local.Local.Changes));
            },
            iter: Gens.Cases(2_500)
        );
        Assert.True(taken >= Gens.Cases(200), $"{taken} taken");
    }

    [Fact]
    public void No_unsigned_one_changes_a_shown_word_a_rule_or_a_step_nor_loosens_a_number()
    {
        var (taken, differ) = (0, 0);
        var shipped = ShippedProtocol.Protocol;
        var words = Shown(shipped).ToArray();
        Gen.Frequency(
                (1, Gens.Overlay),
                (3, Gens.Numbers),
                (1, JsonMutations.Of(Tight).Select(t => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(t)))
            )
            .Sample(
                overlay =>
                {
                    if (Protocols.LocalFile.ReadUnsigned(overlay) is not Read<Protocol>.Usable { Value: { Local: { } local } laid })
                        return;
                    Interlocked.Increment(ref taken);
                    Assert.Equal(words, Shown(laid));
                    Assert.Equal(shipped.Steps, laid.Steps);
                    Assert.Equal(shipped.Tasks, laid.Tasks);
                    Assert.Same(shipped.Watch, laid.Watch);
                    Assert.Empty(local.Orders);
                    Assert.Empty(local.Loosened);
                    Assert.Equal(("unsigned", "", "", (Authority?)null), (local.Id, local.Version, local.Title, local.Authority));
                    Assert.True(
                        laid.Clock.Window <= shipped.Clock.Window
                            && laid.Clock.Limit <= shipped.Clock.Limit
                            && laid.Clock.Soon >= shipped.Clock.Soon
                    );
                    Assert.True(laid.Clock.Limit >= Duration.FromHours(3) && laid.Clock.Window >= Duration.FromHours(1));
                    Assert.All(laid.Freshness, f => Assert.True(f.Value <= shipped.Freshness[f.Key]));
                    Interlocked.Add(ref differ, local.Changes.IsEmpty ? 0 : 1);
                },
                iter: Gens.Cases(2_500),
                print: o => Encoding.UTF8.GetString(o.Span)
            );
        Assert.True(taken >= Gens.Cases(100) && differ >= Gens.Cases(50), $"{taken} taken, {differ} differ");
    }

    private const string Tight =
        """{"local":"hut","version":"1","over":"farhold-base","clock":{"limit":"PT5H","soon":"PT3H"},"freshness":{"pale":"PT10M"},"careFreshness":{"pain":"PT2H"}}""";

    /// <summary>Every sentence of a protocol that a screen or a print may show.</summary>
    private static IEnumerable<string> Shown(Protocol p) =>
        [
            p.Id,
            p.Version,
            p.Title,
            p.Watch.Text,
            p.Effect.Text,
            .. p.Sources.Values.Select(s => s.Title),
            .. p.Criteria.SelectMany(c => (string?[])[c.Text, c.Look, c.Change, .. c.Acts.Select(a => a.Text)]).OfType<string>(),
            .. p.Steps.SelectMany(s => (string[])[s.Text, .. s.Before.Select(b => b.Text)]),
            .. p.Tasks.SelectMany(t => (string?[])[t.Text, t.Reason, t.Instead, t.Child?.Text, t.Child?.Reason]).OfType<string>(),
            .. p.AttemptActs.Concat(p.Cautions).Select(t => t.Text),
        ];

    private static Protocol? Read(ReadOnlyMemory<byte> overlay) => (Protocols.LocalFile.Read(overlay) as Read<Protocol>.Usable)?.Value;
}
