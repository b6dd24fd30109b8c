using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

/// <summary>From a set of entries, one for each id, to the state: withdrawals, amendments, and clocks that ran back.</summary>
internal sealed class RecordFold
{
    /// <summary>Differences between clock readings up to this are the clock being set right, not an error (a design choice).</summary>
    public static readonly Duration ClockTolerance = Duration.FromMinutes(2);

    private readonly IReadOnlyDictionary<EntryId, Entry> entries;
    private readonly ClocksAhead ahead;
    private IReadOnlyDictionary<string, Duration> older = ImmutableSortedDictionary<string, Duration>.Empty;
    private readonly HashSet<EntryId> withdrawn = [];
    private readonly Dictionary<EntryId, (Entry Amendment, Entry Amended)> amended = [];

    private RecordFold(IReadOnlyDictionary<EntryId, Entry> entries, ClocksAhead ahead) =>
        (this.entries, this.ahead, Apart) = (entries, ahead, NamesApart.Of(entries));

    public List<Doubt> Doubts { get; } = [];

    public List<Remark> Remarks { get; } = [];

    public State State { get; private set; } = State.Empty;

    public NamesApart Apart { get; }

    public static RecordFold Of(IReadOnlyDictionary<EntryId, Entry> entries, ClocksAhead ahead)
    {
        var folding = new RecordFold(entries, ahead);
        folding.Withdraw();
        folding.older = ahead.Standing(folding.withdrawn);
        folding.Doubts.AddRange(folding.older.Select(d => Doubt.OfClock(d.Key, DeviceWords.Of(d.Key, entries.Values), d.Value)));
        folding.Amend();
        folding.State = State.Of(folding.Effective());
        if (Openings.Differ(folding.State.Of(Kind.CasualtyOpened)) is { } differ)
            folding.Doubts.Add(differ);
        return folding;
    }

    /// <summary>The entry as it counts, with a time no later than it was written.</summary>
    public static Dated Date(Entry entry, Instant written, Duration clockRanBack)
    {
        var when = entry.Happened.NotAfter(written);
        if (clockRanBack > Duration.Zero)
            when = new(when.Earliest - clockRanBack, when.Latest);
        return new(entry.Id, when, entry.Recorded, entry.By, entry.Payload);
    }

    private void Withdraw()
    {
        foreach (var entry in entries.Values)
        {
            if (entry.Payload is not Payload.EntryWithdrawn { Target: var target })
                continue;
            if (!entries.TryGetValue(target, out var held))
                Remarks.Add(new(entry.Id, RecordTexts.WithdrawsMissing(target.ToString())));
            else if (held.Payload is Payload.EntryWithdrawn)
                Remarks.Add(new(entry.Id, RecordTexts.WithdrawsWithdrawal(target.ToString())));
            else
                withdrawn.Add(target);
        }
    }

    /// <summary>Of several amendments of one entry the one with the greatest (recorded, id) counts; a broken one never does.</summary>
    private void Amend()
    {
        var amendments = entries
            .Values.Where(e => e.Payload is Payload.EntryAmended && !withdrawn.Contains(e.Id))
            .OrderByDescending(e => e.Recorded)
            .ThenByDescending(e => e.Id);
        foreach (var entry in amendments)
        {
            var amendment = (Payload.EntryAmended)entry.Payload;
            if (!entries.TryGetValue(amendment.Target, out var target))
                Remarks.Add(new(entry.Id, RecordTexts.AmendsMissing(amendment.Target.ToString())));
            else if (target.Payload is Payload.EntryAmended or Payload.EntryWithdrawn)
                Remarks.Add(new(entry.Id, RecordTexts.AmendsAmendment(target.Id.ToString())));
            else if (withdrawn.Contains(target.Id) || amended.ContainsKey(target.Id))
                continue;
            else if (Amendments.Apply(target, amendment) is Read<Entry>.Usable usable)
                amended.Add(target.Id, (entry, usable.Value));
            else
                Doubts.Add(Doubt.OfAmendment(entry.Id, Reason(Amendments.Apply(target, amendment))));
        }
    }

    private IEnumerable<Dated> Effective()
    {
        var ranBack = ClocksThatRanBack();
        Remarks.AddRange(Apart.Remarks);
        foreach (var entry in entries.Values)
        {
            if (withdrawn.Contains(entry.Id))
                continue;
            var counts = amended.TryGetValue(entry.Id, out var change) ? change.Amended : entry;
            if (!counts.NotUnderstood.IsEmpty)
                Doubts.Add(Doubt.OfNotUnderstood(counts));
            if (entry.Payload is Payload.EntryAmended or Payload.EntryWithdrawn)
                continue;
            var back = ranBack.GetValueOrDefault(entry.Id);
            counts = Apart.Read(counts);
            if (change.Amendment is { } amendment)
            {
                var byHand = Amendments.ReplacesTime((Payload.EntryAmended)amendment.Payload);
                var written = Instant.Max(ahead.Written(entry), ahead.Written(amendment));
                yield return Date(Older(counts, byHand ? amendment.Id.Device : entry.Id.Device), written, byHand ? Duration.Zero : back);
            }
            else
            {
                if (entry.Happened.Earliest > entry.Recorded + ClockTolerance)
                    Remarks.Add(new(entry.Id, RecordTexts.HappenedAfterWritten));
                yield return Date(Older(counts, entry.Id.Device), ahead.Written(entry), back);
            }
        }
    }

    /// <summary>As much older as it may be by a clock that is ahead.</summary>
    private Entry Older(Entry entry, string clock) =>
        older.TryGetValue(clock, out var by) ? entry with { Happened = new(entry.Happened.Earliest - by, entry.Happened.Latest) } : entry;

    /// <summary>By how much an entry may be older than it says, because its device's clock later showed an earlier time.</summary>
    private Dictionary<EntryId, Duration> ClocksThatRanBack()
    {
        var found = new Dictionary<EntryId, Duration>();
        foreach (var device in entries.Values.GroupBy(e => e.Id.Device))
        {
            var earliestLater = Instant.MaxValue;
            foreach (var entry in device.OrderByDescending(e => e.Id.Number))
            {
                if (entry.Recorded - ClockTolerance > earliestLater)
                    found.Add(entry.Id, entry.Recorded - earliestLater);
                earliestLater = Instant.Min(earliestLater, entry.Recorded);
            }
        }

        foreach (var device in found.GroupBy(f => f.Key.Device).OrderBy(d => d.Key, StringComparer.Ordinal))
        {
            var last = device.MaxBy(f => f.Key);
            Remarks.Add(new(last.Key, RecordTexts.ClockRanBack(DeviceWords.Of(device.Key, entries.Values), Say.Duration(last.Value))));
        }

        return found;
    }

    private static string Reason(Read<Entry> read) => ((Read<Entry>.Refused)read).Refusals[0].Reason;
}
