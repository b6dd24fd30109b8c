using System.Collections.Immutable;

namespace Farhold.Limbs;

/// <summary>Entries that count for little because they do not fit the others: kept, shown, and told of.</summary>
public static class Oddities
{
    public static ImmutableArray<Remark> Of(State state) =>
        [.. Loosened(state).Concat(Moved(state)).Concat(Attempts(state)).OrderBy(r => r.About)];

    private static IEnumerable<Remark> Loosened(State state)
    {
        var tightenings = Tightened(state);
        foreach (var entry in state.Of(Kind.TourniquetSlackened).Concat(state.Of(Kind.TourniquetRemoved)))
        {
            var name = entry.What switch
            {
                Payload.TourniquetSlackened s => s.Tourniquet,
                Payload.TourniquetRemoved r => r.Tourniquet,
                _ => throw new System.Diagnostics.UnreachableException(),
            };
            Dated[] tightened = [.. tightenings[name]];
            if (tightened.Length == 0)
                yield return new(entry.Id, $"tourniquet {name} was never tightened in this record");
            else if (entry.When.SurelyBefore(tightened.MinBy(t => t.When.Earliest)!.When))
                yield return new(entry.Id, $"tourniquet {name} is loosened before it was tightened; this changes no clock");
            else if (TourniquetLife.LimbAt(entry, tightened) is null)
                yield return new(entry.Id, $"it can't be told from which limb tourniquet {name} was loosened; the clocks of all keep running. Amend the times");
        }
    }

    /// <summary>On another limb without having been slackened: the clock of the first limb keeps running.</summary>
    private static IEnumerable<Remark> Moved(State state)
    {
        foreach (var lives in state.Of(Kind.TourniquetTightened).GroupBy(t => t.As<Payload.TourniquetTightened>().Tourniquet))
        {
            foreach (var (before, after) in lives.Zip(lives.Skip(1)))
            {
                var (from, to) = (before.As<Payload.TourniquetTightened>().Limb, after.As<Payload.TourniquetTightened>().Limb);
                if (from != to && TourniquetLife.On(from, state, after.When.Latest)
                    .Any(l => l.Tourniquet == lives.Key && l.TightAt(after.When.Earliest) != Truth.NotMet))
                {
                    yield return new(after.Id, $"tourniquet {lives.Key} was not slackened on the {Say.Limb(from)} before; "
                        + "the clock there keeps running. Enter when it was slackened, or amend its name");
                }
            }
        }
    }

    private static IEnumerable<Remark> Attempts(State state)
    {
        var tightenings = Tightened(state);
        foreach (var entry in state.Of(Kind.AttemptStarted))
        {
            var name = entry.As<Payload.AttemptStarted>().Tourniquet;
            if (!tightenings.Contains(name))
                yield return new(entry.Id, $"tourniquet {name} was never tightened in this record");
        }
    }

    private static ILookup<string, Dated> Tightened(State state) =>
        state.Of(Kind.TourniquetTightened).ToLookup(t => t.As<Payload.TourniquetTightened>().Tourniquet);
}
