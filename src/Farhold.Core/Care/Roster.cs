using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>One watch: who sits by the casualty, and from when to when.</summary>
public sealed record RosterShift(string Who, Instant From, Instant To)
{
    public Duration Length => To - From;
}

/// <summary>How much one member of the party can sleep.</summary>
/// <param name="Asleep">Sum of the stretches off watch that are long enough to sleep in.</param>
/// <param name="Longest">The longest of them.</param>
public sealed record RosterRest(string Who, Duration OnShift, Duration Asleep, Duration Longest);

/// <summary>Who watches when, so that somebody always does and everyone sleeps as much as the others.</summary>
/// <remarks>
/// Turns: the party in its order, each for the same time, again and again. As exactly one watches at any time, the sum of
/// all sleep is fixed; turns of one length share it equally, to within one turn, which no other roster of such turns betters.
/// Turns are as long as can be up to <see cref="LongestShift"/> and divide the day, so that everyone's watch comes at the same
/// hours every day. The order is turned by one at every day, so that the bad hours go round.
/// </remarks>
public static class Roster
{
    /// <summary>Longest turn: tired people miss things (design).</summary>
    public static readonly Duration LongestShift = Duration.FromHours(4);

    /// <summary>A stretch off watch shorter than this is no sleep: about one cycle of sleep (common practice).</summary>
    public static readonly Duration LeastSleep = Duration.FromMinutes(90);

    /// <summary>Most members a roster is made for.</summary>
    public const int MostMembers = 8;

    /// <summary>Longest time a roster is made for.</summary>
    public static readonly Duration Longest = Duration.FromHours(72);

    private static readonly Duration Day = Duration.FromHours(24);

    /// <param name="members">One to eight different names, in the order of their first watch.</param>
    /// <exception cref="ArgumentException">No member, too many, or a name twice; or the time is not above 0 and up to 72 h.</exception>
    public static ImmutableArray<RosterShift> Of(IReadOnlyList<string> members, Instant from, Instant to)
    {
        if (members.Count is 0 or > MostMembers || members.Distinct().Count() != members.Count)
            throw new ArgumentException($"A roster is for one to {MostMembers} different people.", nameof(members));
        if (to <= from || to - from > Longest)
            throw new ArgumentException($"A roster is for up to {Longest.TotalHours} h.", nameof(to));
        var turn = Turn(members.Count, to - from);
        var watches = ImmutableArray.CreateBuilder<RosterShift>();
        var perDay = Math.Max(1, (int)Math.Round(Day / turn));
        var start = from;
        for (var i = 0; start < to; i++)
        {
            var shifted = members.Count > 2 ? i / perDay : 0; // two would get a double watch where the days meet
            var end = Instant.Min(start + turn, to);
            Add(watches, members[(i + shifted) % members.Count], start, end);
            start = end;
        }

        return watches.ToImmutable();
    }

    /// <summary>
    /// The part of an endless roster begun at <paramref name="begun"/> that covers an instant and some time after it: the
    /// same whenever it is asked for, whole days apart.
    /// </summary>
    /// <param name="ahead">Up to 48 h.</param>
    /// <exception cref="ArgumentException">As for the whole roster.</exception>
    public static ImmutableArray<RosterShift> Around(IReadOnlyList<string> members, Instant begun, Instant now, Duration ahead)
    {
        var days = now <= begun ? 0 : (int)((now - begun) / Day);
        var from = begun + (Day * days);
        var turned = members.Count > 2 ? days % members.Count : 0;
        return Of([.. members.Skip(turned), .. members.Take(turned)], from, Instant.Max(from + Day, Instant.Max(now, from) + ahead));
    }

    /// <summary>What each gets out of it, in the order given.</summary>
    public static ImmutableArray<RosterRest> Rest(IReadOnlyList<string> members, ImmutableArray<RosterShift> watches) =>
        [.. members.Select(who => Rest(who, watches))];

    /// <summary>Who has the watch at an instant; null outside the roster.</summary>
    public static RosterShift? At(ImmutableArray<RosterShift> watches, Instant at) =>
        watches.FirstOrDefault(w => w.From <= at && at < w.To);

    private static Duration Turn(int members, Duration whole)
    {
        // One round a day if that keeps the turns short enough, else as many as that takes; short times are shared once round.
        var span = Duration.Min(Day, whole);
        var rounds = (int)Math.Ceiling(span / (LongestShift * members));
        return span / (rounds * members);
    }

    private static void Add(ImmutableArray<RosterShift>.Builder watches, string who, Instant from, Instant to)
    {
        if (watches.Count > 0 && watches[^1].Who == who)
            watches[^1] = watches[^1] with { To = to };
        else
            watches.Add(new(who, from, to));
    }

    private static RosterRest Rest(string who, ImmutableArray<RosterShift> watches)
    {
        var (on, asleep, longest) = (Duration.Zero, Duration.Zero, Duration.Zero);
        var off = Duration.Zero;
        foreach (var watch in watches)
        {
            if (watch.Who != who)
            {
                off += watch.Length;
                continue;
            }

            on += watch.Length;
            End();
        }

        End();
        return new(who, on, asleep, longest);

        void End()
        {
            if (off >= LeastSleep)
                (asleep, longest) = (asleep + off, Duration.Max(longest, off));
            off = Duration.Zero;
        }
    }
}
