using System.Text;
using System.Text.RegularExpressions;
using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What is not understood is never good news, whatever it stands in.</summary>
/// <remarks>
/// Not claimed: that a name written wrongly keeps a verdict of <c>leave-on</c>. What it said is no longer known, so that
/// <c>check-first</c> may take its place; an attempt never does.
/// </remarks>
public partial class StrangerTests
{
    private static readonly Gen<(Written Written, int Which, int Where)> Places = Gen.Select(
        Gens.StrangeRecord,
        Gen.Int[0, 999],
        Gen.Int[0, 999]
    );

    [Fact]
    public void A_field_more_that_nobody_knows_never_makes_a_verdict_milder() =>
        Places.Sample(
            p =>
            {
                var entry = p.Written.Entries[p.Which % p.Written.Entries.Length];
                var more = Read(entry.Json.ToString()[..^1] + ",\"mood\":\"calm\"}");
                AssertNotMilder(p.Written, p.Written with { Entries = p.Written.Entries.Replace(entry, more!) });
            },
            iter: Gens.Cases(1_500),
            print: p => p.Written.ToString()
        );

    [Fact]
    public void An_entry_more_of_a_kind_that_nobody_knows_never_makes_a_verdict_milder() =>
        Gen.Select(Gens.StrangeRecord, Gens.When)
            .Sample(
                (written, when) =>
                {
                    var stranger = EntryWriting.Write(new("y", 1), when, when.Latest, "Tor", new Payload.OfNewerVersion("signs.tcken"));
                    AssertNotMilder(written, written with { Entries = written.Entries.Add(stranger) });
                },
                iter: Gens.Cases(1_500)
            );

    /// <summary>Any name of a field, on any level, and any word for a kind.</summary>
    [Fact]
    public void A_name_that_is_written_wrongly_never_turns_another_verdict_into_an_attempt()
    {
        var strange = 0;
        Places.Sample(
            p =>
            {
                var entry = p.Written.Entries[p.Which % p.Written.Entries.Length];
                if (p.Written.Entries.Any(e => e.Payload is Payload.EntryWithdrawn w && w.Target == entry.Id))
                    return; // whoever withdrew it has settled whatever it says
                var line = entry.Json.ToString();
                var names = Name().Matches(line);
                var name = names[p.Where % names.Count];
                var text = line[..(name.Index + name.Length)] + "x" + line[(name.Index + name.Length)..];
                var wrong = Read(text);
                var changed = wrong is null
                    ? p.Written with
                    {
                        Entries = p.Written.Entries.Remove(entry),
                        Damaged = p.Written.Damaged.Add(Damaged(text)),
                    }
                    : p.Written with
                    {
                        Entries = p.Written.Entries.Replace(entry, wrong),
                    };
                Interlocked.Add(ref strange, wrong is null ? 0 : 1);
                var before = Verdicts(p.Written);
                foreach (var (limb, verdict) in Verdicts(changed))
                    Assert.True(verdict != Verdict.Attempt || before.GetValueOrDefault(limb, Verdict.LeaveOn) == Verdict.Attempt, text);
            },
            iter: Gens.Cases(3_000),
            print: p => p.Written.ToString()
        );
        Assert.True(strange >= Gens.Cases(300), $"only {strange} lines that can still be read");
    }

    private static void AssertNotMilder(Written before, Written after)
    {
        var was = Verdicts(before);
        foreach (var (limb, verdict) in Verdicts(after))
            Assert.True(verdict >= was[limb], $"{limb}: {verdict} after {was[limb]}");
    }

    private static Dictionary<Limb, Verdict> Verdicts(Written written) => written.Judged().Limbs.ToDictionary(l => l.Limb, l => l.Verdict);

    private static Entry? Read(string line) =>
        (new EntryReader().Read(Encoding.UTF8.GetBytes(line), "line", 1) as Read<Entry>.Usable)?.Value;

    private static DamagedLine Damaged(string line) =>
        new(1, JsonText.Of(line), ((Read<Entry>.Refused)new EntryReader().Read(Encoding.UTF8.GetBytes(line), "line", 1)).Refusals);

    /// <summary>A word before a colon, and the word for the kind; texts of generated entries hold no colon.</summary>
    [GeneratedRegex("[A-Za-z-]+(?=\":)|(?<=\"kind\":\")[a-z.-]+", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
