using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>A due task given to someone.</summary>
/// <param name="At">When it is begun: when due, or as soon after it as whoever has the watch is free.</param>
/// <param name="Who">Whoever has the watch, and who helps where it takes two.</param>
public sealed record SharedTask(Instant At, DueTask Due, ImmutableArray<string> Who)
{
    /// <summary>It takes more people than there are.</summary>
    public bool TooFew => Who.Length < Due.People;

    public Instant End => At + TaskRoster.Takes;
}

/// <summary>Who has the watch when, who does what in it, and how much everyone sleeps.</summary>
public sealed record TaskRoster(ImmutableArray<RosterShift> Watches, ImmutableArray<SharedTask> Tasks, ImmutableArray<RosterRest> Rest)
{
    /// <summary>How long a task is taken to last (design): one after the other, so that nobody does two at once.</summary>
    public static readonly Duration Takes = Duration.FromMinutes(5);

    /// <summary>
    /// All tasks fall to whoever has the watch. Where one takes two, that one helps who leaves everybody the longest unbroken
    /// sleep; of those equal, who loses the least, then who sleeps most. The casualty is taken to stay as now; what is due once and done
    /// is not asked for again.
    /// </summary>
    /// <param name="watches">Reaching at least from the instant judged to <paramref name="to"/>.</param>
    /// <param name="nights">Day and night; the changes of watch are added to it.</param>
    public static TaskRoster Of(
        Judgement judged,
        IReadOnlyList<string> members,
        ImmutableArray<RosterShift> watches,
        Rhythm nights,
        Instant to
    )
    {
        var ahead = watches
            .Where(w => w.To > judged.At && w.From < to)
            .Select(w => w with { From = Instant.Max(w.From, judged.At), To = Instant.Min(w.To, to) })
            .ToImmutableArray();
        var coming = new Coming(judged, nights.With(watches));
        var shared = ImmutableArray.CreateBuilder<SharedTask>();
        var free = members.ToDictionary(m => m, _ => judged.At);
        while (coming.Next(to) is { } due)
        {
            var (on, at) = OnShift(ahead, free, Instant.Max(due.At, judged.At), to);
            if (on is null)
                break;
            var helper = due.People > 1 ? Helper(members, on, at, ahead, shared, free) : null;
            shared.Add(new(at, due, helper is null ? [on] : [on, helper]));
            free[on] = at + Takes;
            if (helper is not null)
                free[helper] = at + Takes;
            coming.Done(due, at);
        }

        return new(ahead, shared.ToImmutable(), [.. members.Select(m => RestOf(m, ahead, shared))]);
    }

    /// <summary>Who has the watch when the task can be begun; a task that runs into the next watch falls to that one.</summary>
    private static (string? Who, Instant At) OnShift(
        ImmutableArray<RosterShift> watches,
        Dictionary<string, Instant> free,
        Instant due,
        Instant to
    )
    {
        var at = due;
        while (at < to && Roster.At(watches, at) is { } watch)
        {
            at = Instant.Max(at, free[watch.Who]);
            if (at < watch.To)
                return (watch.Who, at);
        }

        return (null, at);
    }

    private static string? Helper(
        IReadOnlyList<string> members,
        string on,
        Instant at,
        ImmutableArray<RosterShift> watches,
        IReadOnlyList<SharedTask> shared,
        Dictionary<string, Instant> free
    )
    {
        var now = members.ToDictionary(m => m, m => RestOf(m, watches, shared));
        return members
            .Where(m => m != on && free[m] <= at)
            .Select(m => (Who: m, Then: RestOf(m, watches, [.. shared, new(at, Two, [m])])))
            .OrderByDescending(c => members.Min(m => m == c.Who ? c.Then.Longest : now[m].Longest))
            .ThenBy(c => now[c.Who].Asleep - c.Then.Asleep)
            .ThenByDescending(c => c.Then.Asleep)
            .Select(c => c.Who)
            .FirstOrDefault();
    }

    private static readonly DueTask Two = new(Instant.MinValue, "", null, "", [], false);

    private static RosterRest RestOf(string who, ImmutableArray<RosterShift> watches, IReadOnlyList<SharedTask> shared)
    {
        if (watches.IsEmpty)
            return new(who, default, default, default);
        var up = watches
            .Where(w => w.Who == who)
            .Select(w => (w.From, w.To))
            .Concat(shared.Where(s => s.Who.Contains(who)).Select(s => (From: s.At, To: s.End)))
            .OrderBy(s => s.From);
        var (on, asleep, longest) = (Duration.Zero, Duration.Zero, Duration.Zero);
        var since = watches[0].From;
        foreach (var (from, to) in up.Append((watches[^1].To, watches[^1].To)))
        {
            if (from - since is var off && off >= Roster.LeastSleep)
                (asleep, longest) = (asleep + off, Duration.Max(longest, off));
            since = Instant.Max(since, to);
        }

        foreach (var watch in watches.Where(w => w.Who == who))
            on += watch.Length;
        return new(who, on, asleep, longest);
    }

    /// <summary>The due list played on: each task comes again after it was done.</summary>
    private sealed class Coming(Judgement judged, Rhythm rhythm)
    {
        private readonly List<DueTask> open = [.. judged.Due.Select(d => d.Until is { } until ? d with { At = until, Until = null } : d)];

        /// <summary>What comes next: of what is due together, checks before comfort.</summary>
        public DueTask? Next(Instant to)
        {
            var next = DueList.InOrder(open.Where(d => d.At < to)).ToArray();
            if (next.Length == 0)
                return null;
            var first = next.Min(d => d.At);
            var together = Instant.Max(first, judged.At);
            return next.First(d => d.At <= together);
        }

        public void Done(DueTask due, Instant at)
        {
            open.Remove(due);
            var task = judged.Protocol.Tasks.FirstOrDefault(t => CareTask.Is(t.Id, due.Task));
            if (task is { Once: null, Every: not null })
                open.Add(due with { At = TaskPlanner.Next(task, at, judged.Unstable, rhythm).At, Overdue = false });
            else if (judged.Observed.FirstOrDefault(w => due.Task == "watch." + Wire.Word(w.Limb)) is { } watched)
                open.Add(due with { At = at + Look(watched.Loosened.Until(at).Min), Overdue = false });
        }

        private Duration Look(Duration since) =>
            judged.Protocol.Watch.Periods.First(p => p.Until is null || since < p.Until).Every ?? Duration.FromMinutes(5);
    }
}
