using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace Farhold.Records;

/// <summary>Something that may be missing from the record or wrong in it, so that the record can't be relied on as whole.</summary>
/// <param name="Id">
/// Also the id of the task that settles it: a <c>task.done</c> with it says that a person has looked and taken it into account.
/// </param>
/// <param name="CanBeSettled">False where only mending the record helps.</param>
public sealed record Doubt(string Id, string Text, bool CanBeSettled = true)
{
    /// <summary>Design: fields of one entry that are named; the log has all.</summary>
    private const int MaxFields = 3;

    internal const string OpeningsPrefix = "openings-";

    private const string ClockPrefix = "clock-";

    private const string ChainPrefix = "chain-";

    public static Doubt OfLine(DamagedLine line)
    {
        var print = Convert.ToHexStringLower(SHA256.HashData(line.Raw.Utf8.Span).AsSpan(0, 4));
        return new("damage-" + print, RecordTexts.LineUnreadable(line.Number, line.Refusals[0].Reason));
    }

    /// <summary>
    /// What it says is not known, and may be what forbids an attempt. Of the entry as it counts: corrected, it is another doubt.
    /// </summary>
    public static Doubt OfNotUnderstood(Entry entry)
    {
        var print = Convert.ToHexStringLower(SHA256.HashData(CanonicalJson.Of(entry.Json).Utf8.Span).AsSpan(0, 8));
        var text = entry.NotUnderstood is [{ IsKind: true } kind]
            ? RecordTexts.KindUnknown(entry.Id.ToString(), kind.Name)
            : RecordTexts.FieldsUnknown(entry.Id.ToString(), Fields(entry.NotUnderstood));
        return new("unknown-" + print, text);
    }

    public static Doubt OfConflict(EntryId id) => new($"conflict-{id}", RecordTexts.Conflict(id.ToString()));

    /// <summary>Not every way of reading the conflicts was judged.</summary>
    /// <param name="conflicts">Ids under which there are different entries.</param>
    public static Doubt OfManyConflicts(int judged, int conflicts) =>
        new("conflicts-many", RecordTexts.ManyConflicts(conflicts, judged), CanBeSettled: false);

    /// <summary>What one device wrote no longer hangs together. Its id is another as soon as anything about that is.</summary>
    /// <param name="breaks">At least one, in order.</param>
    /// <param name="print">See <see cref="LineChains.Print"/>.</param>
    /// <param name="whose">As people call the device.</param>
    internal static Doubt OfChain(ImmutableArray<ChainBreak> breaks, string whose, string print)
    {
        var more = breaks.Length == 1 ? "" : RecordTexts.ChainMore(breaks.Length - 1, whose);
        return new(ChainPrefix + print, RecordTexts.ChainBroken(breaks[0].At.ToString(), more));
    }

    /// <summary>Whether a task is to see to a chain that does not hold: then it may be that a program honestly rewrote the file.</summary>
    public static bool IsOfChain(string task) => task.StartsWith(ChainPrefix, StringComparison.Ordinal);

    /// <param name="whose">As people call the device.</param>
    /// <param name="ahead">By how much at least.</param>
    internal static Doubt OfClock(string device, string whose, Duration ahead) =>
        new(ClockPrefix + device, RecordTexts.ClockAhead(whose, Say.Duration(ahead)));

    /// <summary>Whether a task is to say which of two clocks is right.</summary>
    public static bool IsOfClock(string task) => task.StartsWith(ClockPrefix, StringComparison.Ordinal);

    /// <summary>Whether the reason given tells more of a task than its id.</summary>
    internal static bool IsNamedByReason(string task) => IsOfChain(task) || IsOfClock(task) || IsOfOpenings(task);

    /// <summary>Whether a task is to see to openings that differ.</summary>
    public static bool IsOfOpenings(string task) => task.StartsWith(OpeningsPrefix, StringComparison.Ordinal);

    public static Doubt OfAmendment(EntryId id, string reason) =>
        new($"amendment-{id}", RecordTexts.AmendmentUnusable(id.ToString(), reason));

    /// <param name="whose">As people call the device.</param>
    internal static Doubt OfGap(string device, string whose, int from, int to) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"gap-{device}-{from}"),
            from == to ? RecordTexts.EntryMissing(device, from, whose) : RecordTexts.EntriesMissing(device, from, to, whose)
        );

    /// <summary>Entries after the last one held, which others have. Its id is another as soon as their number is.</summary>
    /// <param name="whose">As people call the device.</param>
    internal static Doubt OfElsewhere(string device, string whose, int from, int to) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"elsewhere-{device}-{from}-{to}"),
            from == to ? RecordTexts.EntryElsewhere(device, from, whose) : RecordTexts.EntriesElsewhere(device, from, to, whose)
        );

    /// <summary>Lines that others have and of which nothing else is known.</summary>
    /// <param name="names">See <see cref="KnownElsewhere.Unnumbered"/>.</param>
    internal static Doubt OfUnnumbered(ImmutableSortedSet<string> names) =>
        new(
            "elsewhere-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', names))).AsSpan(0, 8)),
            RecordTexts.LinesElsewhere(names.Count)
        );

    /// <summary>The doubts that nobody has surely looked into yet.</summary>
    internal static ImmutableArray<Doubt> Unsettled(ImmutableArray<Doubt> doubts, State state, Instant now)
    {
        if (doubts.IsEmpty)
            return doubts;
        var done = state.Of(Kind.TaskDone).Where(t => t.When.Latest <= now).Select(t => t.As<Payload.TaskDone>().Task).ToHashSet();
        return [.. doubts.Where(d => !d.CanBeSettled || !done.Contains(d.Id))];
    }

    /// <summary>The first few, each with its value.</summary>
    private static string Fields(ImmutableArray<NotUnderstood> all) =>
        string.Join(", ", all.Take(MaxFields).Select(f => $"{f.Name} {f.Says}"))
        + (all.Length <= MaxFields ? "" : RecordTexts.FieldsMore(all.Length - MaxFields));
}

/// <summary>
/// Something odd that does not stop a decision but should be seen. <paramref name="About"/> is null for the whole record.
/// </summary>
public sealed record Remark(EntryId? About, string Text);
