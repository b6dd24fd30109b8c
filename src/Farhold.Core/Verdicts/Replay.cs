using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>An instant at which the outcome changed.</summary>
/// <param name="JustAfter">The outcome at the instant itself is still the old one: something expires only when its time is over.</param>
/// <param name="Because">At least one cause, in words.</param>
public sealed record Turn(Instant At, bool JustAfter, ImmutableArray<string> Because, Outcome Before, Outcome After, Judgement Judgement);

/// <summary>Every change of the outcome over a record's time, and because of what.</summary>
/// <remarks>
/// Judged with everything the record knows today: amendments, withdrawals and back-dated entries count from the time they
/// are about, so this is what would have been said with hindsight, not what a screen showed then. Between two turns the
/// outcome is constant. The cost is one to three judgements for every instant at which anything can change.
/// </remarks>
public static class Replay
{
    private static readonly Duration Instantly = Duration.FromNanoseconds(1);

    /// <summary>The turns up to <paramref name="until"/> (included), in order, found one by one as they are asked for.</summary>
    public static IEnumerable<Turn> Of(CareRecord record, Rulebook rules, Instant until)
    {
        var before = Outcome.Nothing;
        Judgement? last = null;
        foreach (var moment in Moments.Of(record, rules.Protocol).Where(m => m.At <= until))
        {
            foreach (var justAfter in (bool[])[false, true])
            {
                var judged = Judge.At(record, rules, justAfter ? moment.At + Instantly : moment.At);
                var after = Outcome.Of(judged);
                if (!after.Equals(before))
                    yield return new(moment.At, justAfter, Because(moment, justAfter, last, judged), before, after, judged);
                (before, last) = (after, judged);
            }
        }
    }

    private static ImmutableArray<string> Because(Moment moment, bool justAfter, Judgement? last, Judgement judged)
    {
        var expired = Stale(judged).Except(last is null ? [] : Stale(last)).ToHashSet();
        var causes = moment.Causes.Where(c => c.Expires is { } input ? justAfter && expired.Contains(input) : !justAfter || !c.IsEntry);
        var words = Words(causes);
        return words.IsEmpty ? Words(moment.Causes) : words;
    }

    /// <summary>What several entries or inputs do at one instant is said once for each kind of cause.</summary>
    private static ImmutableArray<string> Words(IEnumerable<Cause> causes) =>
        [
            .. causes
                .GroupBy(c => c.Expires is null ? c.Text : c.Tail)
                .Select(g =>
                    g.First().Expires is null
                        ? g.Key
                        : string.Join(", ", g.Select(c => InputWords.Name(c.Expires!)).Distinct()) + " " + g.Key
                ),
        ];

    private static IEnumerable<string> Stale(Judgement judgement)
    {
        var used = judgement.Limbs.SelectMany(l => l.Findings).Concat(judgement.Shock.Signs).SelectMany(f => f.Used);
        return used.GroupBy(u => u.Input).Where(g => g.Any(u => u.Stale)).Select(g => g.Key);
    }
}
