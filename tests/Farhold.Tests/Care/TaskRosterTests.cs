using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Care;

public class TaskRosterTests
{
    private static readonly string[] Party = ["Ane", "Tor", "Liv", "Odd", "Siv", "Per", "Una", "Jon"];
    private static readonly Duration Hours = Duration.FromHours(12);

    private static readonly Gen<(Written Written, int People, Rhythm Nights)> Any = Gen.Select(
        Gens.Record,
        Gen.Int[1, 8],
        SomeRhythm.Any(Some.At("09:00"))
    );

    [Fact]
    public void Every_due_task_is_given_to_whoever_has_the_watch() =>
        Any.Sample(
            any =>
            {
                var (judged, roster) = Of(any);
                foreach (var due in judged.Due.Where(d => (d.Until ?? d.At) < judged.At + Hours - Duration.FromHours(2)))
                    Assert.Contains(roster.Tasks, t => t.Due.Task == due.Task && t.At >= (due.Until ?? due.At));
                Assert.All(roster.Tasks, t => Assert.Equal(Roster.At(roster.Watches, t.At)!.Who, t.Who[0]));
            },
            iter: Gens.Cases(150)
        );

    [Fact]
    public void A_task_comes_again_within_its_interval_and_the_queue_before_it() =>
        Any.Sample(
            any =>
            {
                var (judged, roster) = Of(any);
                foreach (var task in judged.Protocol.Tasks.Where(t => t.Once is null && t.Night is null && t.Scope == TaskScope.Casualty))
                {
                    var times = roster.Tasks.Where(t => t.Due.Task == task.Id).Select(t => t.At).ToArray();
                    var interval = (judged.Unstable ? task.Unstable : null) ?? task.Every;
                    Assert.All(
                        times.Zip(times.Skip(1)),
                        pair => Assert.True(pair.Second - pair.First <= interval + (TaskRoster.Takes * judged.Due.Length))
                    );
                }
            },
            iter: Gens.Cases(150)
        );

    [Fact]
    public void Nobody_does_two_things_at_once() =>
        Any.Sample(
            any =>
            {
                var (_, roster) = Of(any);
                foreach (var who in Party)
                {
                    var busy = roster.Tasks.Where(t => t.Who.Contains(who)).OrderBy(t => t.At).ToArray();
                    Assert.All(busy.Zip(busy.Skip(1)), pair => Assert.True(pair.First.End <= pair.Second.At));
                }

                Assert.All(roster.Tasks, t => Assert.Equal(t.Who.Length, t.Who.Distinct().Count()));
            },
            iter: Gens.Cases(150)
        );

    [Fact]
    public void What_takes_two_has_two_unless_one_is_alone() =>
        Any.Sample(
            any => Assert.All(Of(any).Roster.Tasks, t => Assert.Equal(any.People > 1 ? t.Due.People : 1, t.Who.Length)),
            iter: Gens.Cases(100)
        );

    /// <summary>
    /// Every way of choosing who helps with the turning, tried one by one: nobody could make the worst off sleep longer by more than a
    /// sleep is long.
    /// </summary>
    [Theory]
    [InlineData(3, 6)]
    [InlineData(3, 9)]
    [InlineData(4, 8)]
    public void No_choice_of_helpers_lets_the_worst_off_sleep_much_longer(int people, int hours)
    {
        var judged = Case.Well.With("person", new Payload.CasualtyOpened("Runa", AgeYears: 34), "10:00").Judgement;
        var (members, to) = (Party[..people], Case.Now + Duration.FromHours(hours));
        var roster = TaskRoster.Of(judged, members, Roster.Of(members, Case.Now, to), Rhythm.None, to);
        var turns = roster.Tasks.Where(t => t.Due.People == 2).ToArray();
        (string Who, Instant At)[] own = [.. roster.Tasks.Select(t => (t.Who[0], t.At))]; // may run past the end of a watch
        var best = Duration.Zero;
        for (var code = 0; code < (int)Math.Pow(people - 1, turns.Length); code++)
        {
            var rest = code;
            var helping = own.ToList();
            foreach (var turn in turns)
            {
                helping.Add((members.Where(m => m != turn.Who[0]).ElementAt(rest % (people - 1)), turn.At));
                rest /= people - 1;
            }

            best = Duration.Max(best, members.Min(m => Asleep(m, roster.Watches, helping)));
        }

        var ours = roster.Rest.Min(r => r.Asleep);
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"ours {ours}, best {best}, longest {string.Join(", ", roster.Rest.Select(r => r.Longest))}"
        );
        Assert.True(turns.Length >= 3);
        Assert.Equal(ours, members.Min(m => Asleep(m, roster.Watches, [.. own, .. turns.Select(t => (t.Who[1], t.At))])));
        Assert.True(ours <= best && best - ours <= Roster.LeastSleep, $"ours {ours}, best {best}");
    }

    [Fact]
    public void A_roster_goes_on_the_same_whenever_it_is_asked_for() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[0, 60 * 48])
            .Sample(
                (people, minutes) =>
                {
                    var (begun, now) = (Some.At("20:00"), Some.At("20:00") + Duration.FromMinutes(minutes));
                    var whole = Roster.Of(Party[..people], begun, begun + Roster.Longest);
                    var part = Roster.Around(Party[..people], begun, now, Duration.FromHours(20));
                    for (var at = now; at < now + Duration.FromHours(20) && at < begun + Roster.Longest; at += Duration.FromMinutes(30))
                        Assert.Equal(Roster.At(whole, at)!.Who, Roster.At(part, at)!.Who);
                }
            );

    private static (Judgement Judged, TaskRoster Roster) Of((Written Written, int People, Rhythm Nights) any)
    {
        var watches = Roster.Of(Party[..any.People], any.Written.Now, any.Written.Now + Hours);
        var judged = Judge.At(any.Written.Record, ShippedRules.Book, any.Written.Now, any.Nights.With(watches));
        return (judged, TaskRoster.Of(judged, Party[..any.People], watches, any.Nights, any.Written.Now + Hours));
    }

    /// <summary>Counted minute by minute: a sleep is at least an hour and a half without watch or help.</summary>
    private static Duration Asleep(string who, ImmutableArray<RosterShift> watches, List<(string Who, Instant At)> helping)
    {
        var (sum, off) = (0, 0);
        for (var at = watches[0].From; at <= watches[^1].To; at += Duration.FromMinutes(1))
        {
            var up =
                at == watches[^1].To
                || Roster.At(watches, at)!.Who == who
                || helping.Any(h => h.Who == who && h.At <= at && at < h.At + TaskRoster.Takes);
            if (up && off >= 90)
                sum += off;
            off = up ? 0 : off + 1;
        }

        return Duration.FromMinutes(sum);
    }
}
