using NodaTime;

namespace Farhold.Records;

/// <summary>One entry of the log as people read it: first as it counts, then how it came to that.</summary>
/// <param name="When">As it counts: amended, and not later than it was written.</param>
/// <param name="Text">As it counts: amended, if a correction stands. What was written at first is told by the changes.</param>
/// <param name="Changes">Amendments and withdrawals, in the order they were written.</param>
public sealed record LogLine(Entry Entry, Happened When, string Text, bool Withdrawn, IReadOnlyList<string> Changes);

/// <summary>The record as a log: by time, every amendment and withdrawal shown at the entry it is about.</summary>
public static class LogText
{
    private static string NotAccepted => RecordTexts.LogNotAccepted;

    /// <param name="zone">For the times it names; null: UTC.</param>
    public static IReadOnlyList<LogLine> Lines(CareRecord record, DateTimeZone? zone = null)
    {
        var about = record.Entries.Where(e => Target(e) is not null).ToLookup(e => Target(e)!.Value);
        var held = record.Entries.Select(e => e.Id).ToHashSet();
        var open = record.Unaccepted.Select(u => u.By.Id).ToHashSet();
        var counts = record.Readings.SelectMany(r => r.All).GroupBy(d => d.Id).ToDictionary(g => g.Key, g => g.First().When);
        var lines = new List<LogLine>();
        foreach (var entry in record.Entries)
        {
            if (Target(entry) is { } target && held.Contains(target) && about[entry.Id].FirstOrDefault() is null)
                continue;
            var later = about[entry.Id].OrderBy(c => c.Recorded).ThenBy(c => c.Id).ToArray();
            var standing = later.LastOrDefault(c => !open.Contains(c.Id) && Stands(c, about) && Amended(entry, c) is not null);
            lines.Add(
                new(
                    entry,
                    counts.GetValueOrDefault(entry.Id, entry.Happened),
                    EntryText.Of((standing is null ? null : Amended(entry, standing)) ?? entry, zone),
                    later.Any(c => c.Payload is Payload.EntryWithdrawn && !open.Contains(c.Id)),
                    [
                        .. later.Select(c =>
                            Change(c, entry, zone) + (open.Contains(c.Id) ? NotAccepted : Overtaken(c, entry, standing, about))
                        ),
                    ]
                )
            );
        }

        return [.. lines.OrderBy(l => l.When.Latest).ThenBy(l => l.When.Earliest).ThenBy(l => l.Entry.Id)];
    }

    public static void Write(CareRecord record, TextWriter to)
    {
        foreach (var line in Lines(record))
        {
            to.Write($"{Say.Time(line.When)}  {line.Text}{(line.Withdrawn ? RecordTexts.LogWithdrawnMark : "")}\n    {Written(line)}\n");
            foreach (var change in line.Changes)
                to.Write($"    {change}\n");
        }

        foreach (var damaged in record.Damaged)
        {
            var raw = damaged.Raw.ToString();
            to.Write(RecordTexts.LineUnreadable(damaged.Number, Plain.Line(damaged.Explained[0].Reason)) + "\n");
            to.Write(RecordTexts.LogLineSays(Plain.Line(raw.Length > 200 ? raw[..200] + " …" : raw)) + "\n");
        }
    }

    /// <summary>Who wrote it, and when, where that is not when it happened.</summary>
    private static string Written(LogLine line)
    {
        var written = Say.Time(line.Entry.Recorded);
        var happened = line.Entry.Happened == line.When ? "" : RecordTexts.LogEnteredAs(Say.Time(line.Entry.Happened));
        var late = line.When.IsInstant && line.When.Latest == line.Entry.Recorded ? "" : RecordTexts.LogWritten(written);
        return Plain.Line($"{line.Entry.By}, {line.Entry.Id}{late}{happened}");
    }

    private static string Change(Entry change, Entry target, DateTimeZone? zone) =>
        Plain.Line(
            change.Payload switch
            {
                Payload.EntryAmended a => RecordTexts.LogCorrected(AmendmentWords.InWords(a.Replace, target, zone), By(change, zone)),
                Payload.EntryWithdrawn w => RecordTexts.LogWithdrawn(w.Reason, By(change, zone)),
                _ => throw new System.Diagnostics.UnreachableException(),
            }
        );

    /// <summary>Why a correction does not count, where it does not.</summary>
    private static string Overtaken(Entry change, Entry target, Entry? standing, ILookup<EntryId, Entry> about)
    {
        if (change.Payload is not Payload.EntryAmended || standing?.Id == change.Id)
            return "";
        return !Stands(change, about) ? RecordTexts.LogCorrectionWithdrawn
            : Amended(target, change) is null ? RecordTexts.LogCorrectionUnreadable
            : RecordTexts.LogCorrectionOvertaken;
    }

    private static bool Stands(Entry change, ILookup<EntryId, Entry> about) =>
        change.Payload is Payload.EntryAmended && !about[change.Id].Any(w => w.Payload is Payload.EntryWithdrawn);

    /// <summary>The entry with the correction in it; null where that can't be read.</summary>
    private static Entry? Amended(Entry target, Entry change) =>
        Amendments.Apply(target, (Payload.EntryAmended)change.Payload) is Read<Entry>.Usable usable ? usable.Value : null;

    private static string By(Entry change, DateTimeZone? zone) => $"{change.By}, {change.Id}, {Say.Time(change.Recorded, zone)}";

    private static EntryId? Target(Entry entry) => Retraction.TargetOf(entry.Payload);
}
