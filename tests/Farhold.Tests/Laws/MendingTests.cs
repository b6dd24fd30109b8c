using CsCheck;

namespace Farhold.Tests.Laws;

/// <summary>What was mended counts as if it had been right at first; what can't be read or agreed on only makes for caution.</summary>
public class MendingTests
{
    private static readonly Gen<(Written Written, int Which, Payload Other)> Stories = Gen.Select(
        Gens.Record,
        Gen.Int[0, 99],
        Gens.Statement
    );

    /// <summary>The amendment comes from another device, the one that reads, and only after what it amends was written.</summary>
    [Fact]
    public void An_amended_record_equals_one_written_right_at_first() =>
        Stories.Sample(
            s =>
            {
                var (written, which, other) = s;
                var target = written.Entries[which % written.Entries.Length];
                var right = EntryWriting.Write(target.Id, target.Happened, target.Recorded, target.By, other);
                var wrong = EntryWriting.Write(target.Id, target.Happened, target.Recorded, "Nobody", WrongOf(other));
                var mended = new CareRecord(written.Entries.Replace(target, wrong), []) { Writer = "z" };
                mended.Add(
                    EntryWriting.Write(
                        new("z", 1),
                        Happened.At(target.Recorded),
                        target.Recorded,
                        "Tor",
                        new Payload.EntryAmended(target.Id, AmendmentWords(wrong, right))
                    )
                );
                Assert.Equal(Text(new(written.Entries.Replace(target, right), []), written.Now), Text(mended, written.Now));
            },
            iter: Gens.Cases(2_000)
        );

    [Fact]
    public void An_amended_time_equals_one_written_right_at_first() =>
        Gen.Select(Gens.Record, Gen.Int[0, 99], Gens.When)
            .Sample(
                (written, which, when) =>
                {
                    var target = written.Entries[which % written.Entries.Length];
                    if (when.Latest > target.Recorded)
                        return;
                    var right = EntryWriting.Write(target.Id, when, target.Recorded, target.By, target.Payload);
                    var mended = new CareRecord(written.Entries, []) { Writer = "z" };
                    mended.Add(
                        EntryWriting.Write(
                            new("z", 1),
                            Happened.At(target.Recorded),
                            target.Recorded,
                            "Tor",
                            new Payload.EntryAmended(target.Id, AmendmentWords(target, right))
                        )
                    );
                    Assert.Equal(Text(new(written.Entries.Replace(target, right), []), written.Now), Text(mended, written.Now));
                },
                iter: Gens.Cases(2_000)
            );

    /// <summary>On a device of its own, so that leaving it out leaves no gap; withdrawn from the one that reads.</summary>
    [Fact]
    public void A_withdrawn_entry_equals_one_never_written() =>
        Gen.Select(Gens.Record, Gens.When, Gens.Statement)
            .Sample(
                (written, when, what) =>
                {
                    var mistaken = EntryWriting.Write(new("y", 1), when, when.Latest, "Nobody", what);
                    var withdrawal = EntryWriting.Write(
                        new("z", 1),
                        when,
                        when.Latest,
                        "Tor",
                        new Payload.EntryWithdrawn(mistaken.Id, "mistaken")
                    );
                    Assert.Equal(
                        Text(written.Record, written.Now),
                        Text(new([.. written.Entries, mistaken, withdrawal], []) { Writer = "z" }, written.Now)
                    );
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void A_conflict_is_at_least_as_cautious_as_either_variant_alone() =>
        Stories.Sample(
            s =>
            {
                var (written, which, other) = s;
                var one = written.Entries[which % written.Entries.Length];
                var two = EntryWriting.Write(one.Id, one.Happened, one.Recorded, "Tor", other);
                var both = Verdicts(new([.. written.Entries, two], []), written.Now);
                foreach (
                    var alone in new[]
                    {
                        Verdicts(written.Record, written.Now),
                        Verdicts(new(written.Entries.Replace(one, two), []), written.Now),
                    }
                )
                foreach (var (limb, verdict) in alone)
                    Assert.True(both[limb] >= verdict, $"{limb}: {both[limb]} with both, {verdict} with one");
            },
            iter: Gens.Cases(1_500)
        );

    [Fact]
    public void A_line_that_cannot_be_read_hides_nothing_until_someone_has_looked() =>
        Gen.Select(Gens.Record, Gen.Int[0, 99])
            .Sample(
                (written, which) =>
                {
                    var hidden = written.Entries[which % written.Entries.Length];
                    var damage = Gens.Damage(hidden);
                    var record = new CareRecord(written.Entries.Remove(hidden), [damage]);
                    var doubt = Doubt.OfLine(damage).Id;
                    Assert.Contains(doubt, record.Doubts.Select(d => d.Id));
                    Assert.DoesNotContain(Verdict.Attempt, Verdicts(record, written.Now).Values);
                    var before = new CareRecord(written.Entries.Remove(hidden), []);
                    record.Add(EntryWriting.Write(new("z", 1), Happened.At(written.Now), written.Now, "Tor", new Payload.TaskDone(doubt)));
                    if (before.Doubts.IsEmpty) // else the same record without the line has a gap that this one has not
                        Assert.Equal(Text(before, written.Now, limbs: true), Text(record, written.Now, limbs: true));
                },
                iter: Gens.Cases(2_000)
            );

    [Fact]
    public void A_gap_is_told_and_allows_no_attempt() =>
        Gen.Select(Gens.Record, Gen.Int[0, 99])
            .Sample(
                (written, which) =>
                {
                    var lost = written.Entries[which % written.Entries.Length];
                    var record = new CareRecord(written.Entries.Remove(lost), []);
                    var isLast = written.Entries.All(e => e.Id.Device != lost.Id.Device || e.Id.Number <= lost.Id.Number);
                    Assert.Equal(!isLast, record.Doubts.Any(d => d.Id.StartsWith("gap-", StringComparison.Ordinal)));
                    var looked = record.Entries.Any(e =>
                        e.Payload is Payload.TaskDone done && done.Task.StartsWith("gap-", StringComparison.Ordinal)
                    );
                    if (!isLast && !looked)
                        Assert.DoesNotContain(Verdict.Attempt, Verdicts(record, written.Now).Values);
                },
                iter: Gens.Cases(2_000)
            );

    /// <summary>Stands for a limb without a tight tourniquet: there is nothing to decide, any verdict is more cautious.</summary>
    private const Verdict Observed = (Verdict)(-1);

    private static Dictionary<Limb, Verdict> Verdicts(CareRecord record, Instant now)
    {
        var judgement = Judge.At(record, ShippedRules.Book, now);
        return Enum.GetValues<Limb>().ToDictionary(l => l, l => judgement.Limbs.FirstOrDefault(v => v.Limb == l)?.Verdict ?? Observed);
    }

    /// <summary>The judgement as text; with <paramref name="limbs"/> the limbs' verdicts and clocks only.</summary>
    private static string Text(CareRecord record, Instant now, bool limbs = false)
    {
        var judgement = Judge.At(record, ShippedRules.Book, now);
        return System.Text.Encoding.UTF8.GetString(Some.Json(limbs ? judgement with { Doubts = [], Due = [], Remarks = [] } : judgement));
    }

    private static Payload WrongOf(Payload right) =>
        right switch
        {
            Payload.SignsTaken => new Payload.SignsTaken { HeartRate = 350, Pale = true },
            Payload.BleedingChecked p => p with { Wound = "w9", Bleeding = Bleeding.Active },
            Payload.TourniquetTightened p => p with { Limb = Limb.LeftArm, Place = "elsewhere" },
            Payload.WatchStated p => new Payload.WatchStated(!p.Able),
            Payload.HelpExpected p => new Payload.HelpExpected(p.Likely + Duration.FromHours(90), Basis: "hearsay"),
            Payload.AttemptEnded p => p with { Wound = "w8", Outcome = AttemptOutcome.Bled },
            _ => right,
        };

    /// <summary>What has to be replaced in one entry to make another of it: fields that differ, null for those that have to go.</summary>
    private static JsonText AmendmentWords(Entry wrong, Entry right)
    {
        using var before = System.Text.Json.JsonDocument.Parse(wrong.Json.Utf8);
        using var after = System.Text.Json.JsonDocument.Parse(right.Json.Utf8);
        var fields = new List<string>();
        foreach (var member in before.RootElement.EnumerateObject())
            if (!after.RootElement.TryGetProperty(member.Name, out _))
                fields.Add($"\"{member.Name}\":null");
        foreach (var member in after.RootElement.EnumerateObject())
            if (!before.RootElement.TryGetProperty(member.Name, out var old) || old.GetRawText() != member.Value.GetRawText())
                fields.Add($"\"{member.Name}\":{member.Value.GetRawText()}");
        return JsonText.Of($"{{{string.Join(',', fields)}}}");
    }
}
