using System.Collections.Immutable;

namespace Farhold.Limbs;

/// <summary>Entries that count for little because they do not fit the others: kept, shown, and told of.</summary>
public static class Oddities
{
    public static ImmutableArray<Remark> Of(State state) =>
        [.. Loosened(state).Concat(Moved(state)).Concat(Attempts(state)).Concat(MovedInAttempts(state)).OrderBy(r => r.About)];

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
                yield return new(entry.Id, LimbTexts.NeverTightened(name));
            else if (entry.When.SurelyBefore(tightened.MinBy(t => t.When.Earliest)!.When))
                yield return new(entry.Id, LimbTexts.LoosenedBefore(name));
            else if (TourniquetLife.LimbAt(entry, tightened) is null)
                yield return new(entry.Id, LimbTexts.LimbUnknown(name));
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
                if (
                    from != to
                    && TourniquetLife
                        .On(from, state, after.When.Latest)
                        .Any(l => l.Tourniquet == lives.Key && l.TightAt(after.When.Earliest) != Truth.NotMet)
                )
                {
                    yield return new(after.Id, LimbTexts.MovedWithout(lives.Key, Say.Limb(from)));
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
                yield return new(entry.Id, LimbTexts.NeverTightened(name));
        }
    }

    /// <summary>On the move nobody can keep eyes and hands on the wound.</summary>
    private static IEnumerable<Remark> MovedInAttempts(State state) =>
        from move in state.Of(Kind.CasualtyMoved)
        from limb in Enum.GetValues<Limb>()
        where Attempt.On(limb, state, move.When.Latest).Any(a => a.Result == AttemptResult.UnderWay)
        select new Remark(move.Id, LimbTexts.MovedInAttempt(Say.Limb(limb)));

    private static ILookup<string, Dated> Tightened(State state) =>
        state.Of(Kind.TourniquetTightened).ToLookup(t => t.As<Payload.TourniquetTightened>().Tourniquet);
}
