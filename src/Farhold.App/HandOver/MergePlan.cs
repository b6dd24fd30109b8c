using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.HandOver;

/// <summary>A casualty on this phone that what comes in may be about.</summary>
public sealed record Candidate(CasualtyHead Head, ImmutableArray<StoredLine> Lines, CareRecord Record);

/// <summary>What merging an incoming record would do, told before anything is done.</summary>
/// <param name="Coming">What came.</param>
/// <param name="Source">Where it came from, in words.</param>
/// <param name="Candidates">Who it may be about, where a person has to say; empty once that is known.</param>
public sealed record MergePlan(ComingRecord Coming, string Source, ImmutableArray<Candidate> Candidates)
{
    /// <summary>The casualty it goes into; null while nobody has said.</summary>
    public CasualtyHead? Into { get; private init; }

    /// <summary>The casualty is not on this phone yet.</summary>
    public bool Opens { get; private init; }

    /// <summary>Lines that are not here.</summary>
    public int New { get; private init; }

    public int Same { get; private init; }

    /// <summary>Lines whose id is here with something else: both are kept.</summary>
    public int Conflicting { get; private init; }

    public int Unreadable { get; private init; }

    /// <summary>What of the record here it withdraws or corrects, and nobody has accepted.</summary>
    public ImmutableArray<Retraction> Unsays { get; private init; } = [];

    public bool AddsNothing => New + Conflicting + Unreadable == 0;

    /// <param name="asked">The casualty whose place it was taken in at; null: none.</param>
    public static async Task<MergePlan> OfAsync(
        IncomingFile file,
        string source,
        CasualtyHead? asked,
        Session session,
        ILogStore store,
        IPhone phone
    )
    {
        var coming = await ComingRecord.OfAsync(file, store.Device, session.Now, phone.QuietAsync);
        var plan = new MergePlan(coming, source, []);
        var all = new List<Candidate>();
        foreach (var head in session.Casualties.Where(c => asked is not null || c.Practice == file.Practice))
        {
            var lines = await store.ReadAsync(head.Id);
            all.Add(new(head, lines, await ComingRecord.OfAsync(lines, store.Device, phone.QuietAsync)));
        }

        var its = all.Where(c => coming.IsOf(c.Record, c.Lines)).ToArray();
        if (its.FirstOrDefault(c => c.Head.Id == asked?.Id) is { } here)
            return plan.WithInto(here);
        if (its is [var only] && asked is null)
            return plan.WithInto(only);
        ImmutableArray<Candidate> maybe =
            its.Length > 0 && asked is null ? [.. its] : [.. all.Where(c => asked is null || c.Head.Id == asked.Id || its.Contains(c))];
        return maybe.IsEmpty ? plan.WithNew(session, store) : plan with { Candidates = maybe };
    }

    /// <summary>A person has said: the same as this one.</summary>
    public MergePlan WithInto(Candidate candidate)
    {
        var held = candidate.Lines.Select(l => l.Text).ToHashSet(StringComparer.Ordinal);
        var ids = candidate.Lines.Select(l => IncomingFile.IdOf(l.Text)).OfType<EntryId>().ToHashSet();
        var (fresh, same, conflicting, unreadable) = (0, 0, 0, 0);
        foreach (var line in Coming.File.Lines)
        {
            if (held.Contains(Encoding.UTF8.GetString(line.Bytes.Span)))
                same++;
            else if (line.Id is not { } id)
                unreadable++;
            else if (!ids.Contains(id))
                fresh++;
            else
                conflicting++;
        }

        var entries = candidate.Record.Entries.DistinctBy(e => e.Id).ToDictionary(e => e.Id);
        return this with
        {
            Candidates = [],
            Into = candidate.Head,
            New = fresh,
            Same = same,
            Conflicting = conflicting,
            Unreadable = unreadable,
            Unsays = Retraction.In(Coming.Record.Entries.Where(e => !entries.ContainsKey(e.Id)), id => entries.GetValueOrDefault(id)),
        };
    }

    /// <summary>A person has said, or nobody else is here: another casualty.</summary>
    public MergePlan WithNew(Session session, ILogStore store) =>
        this with
        {
            Candidates = [],
            Into = new CasualtyHead(
                store.NewCasualtyId(),
                Coming.File.Alias.Length > 0 ? Coming.File.Alias : Source,
                Coming.File.Practice,
                session.Now
            ),
            Opens = true,
            New = Coming.File.Lines.Count(l => l.Id is not null),
            Unreadable = Coming.File.Lines.Count(l => l.Id is null),
        };

    /// <summary>Why it can't be merged, or null.</summary>
    public string? Refusal(Texts texts, CasualtyHead? asked = null) =>
        Coming.File.Lines.All(l => l.Id is null) ? texts.TakeNoRecord
        : (Into ?? asked) is { } into && into.Practice != Coming.File.Practice
            ? (into.Practice ? texts.TakeRealIntoPractice : texts.TakePracticeIntoReal)
        : null;
}
