using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>The looks at the signs of shock, newest first, each worked out when it is first asked for.</summary>
/// <remarks>
/// A look is an instant at which every sign was taken within the minutes before. Every entry of signs may end one. A look that
/// was begun and not finished (at least half of the signs, and no whole look within reach) is not clear: what was not written
/// down may have been the sign. A few single readings between two looks are no look, nor is what a step of the first look asks for.
/// </remarks>
internal sealed class LookHistory
{
    /// <summary>Looks longer ago say nothing of now (design): by then a limb is past every limit.</summary>
    private static readonly Duration Longest = Duration.FromHours(24);

    private readonly CasualtyView casualty;
    private readonly LookRules rules;
    private readonly ImmutableArray<Dated> taken;
    private readonly ImmutableArray<Input> needed;
    private readonly Dictionary<int, ShockLook> found = [];
    private ImmutableSortedDictionary<string, Duration>? within;

    public LookHistory(CasualtyView casualty)
    {
        this.casualty = casualty;
        rules = casualty.Protocol.Looks;
        taken = casualty.State.Of(Kind.SignsTaken);
        if (taken.Any(t => t.When.Earliest > casualty.Now))
            taken = [.. taken.Where(t => t.When.Earliest <= casualty.Now)];
        needed = casualty.Protocol.Shock.Needed;
    }

    /// <summary>The signs that have to be known at a look.</summary>
    public ImmutableArray<Input> Needed => needed;

    /// <summary>How long ago the newest look may be: as long as the sign that goes stale first.</summary>
    public Duration Fresh =>
        needed
            .Select(i => casualty.Protocol.Freshness.GetValueOrDefault(i.Name, Duration.MaxValue))
            .DefaultIfEmpty(Duration.MaxValue)
            .Min();

    /// <summary>Those of the last day.</summary>
    public IEnumerable<ShockLook> NewestFirst
    {
        get
        {
            for (var i = taken.Length - 1; i >= 0 && !IsOlder(taken[i], Longest); i--)
                yield return At(i);
        }
    }

    /// <summary>The newest complete look that is still fresh, or null.</summary>
    public ShockLook? Last => NewestFirst.TakeWhile(l => l.When.Until(casualty.Now).Min <= Fresh).FirstOrDefault(l => l.Complete);

    /// <summary>How far apart two clear looks are, with no sign and no unfinished look from the first of them on.</summary>
    /// <param name="setAside">Soft signs that do not count.</param>
    /// <param name="notBefore">Looks up to then do not count.</param>
    /// <param name="enough">Earlier looks are not asked for once the two are this far apart.</param>
    public ClearSpan Clear(ImmutableArray<string> setAside, Instant notBefore, Duration enough)
    {
        ShockLook? newest = null;
        ShockLook? first = null;
        for (var i = taken.Length - 1; i >= 0 && !IsOlder(taken[i], newest is null ? Fresh : Longest); i--)
        {
            var look = At(i);
            if (look.When.Earliest <= notBefore)
                return new(newest, first, Since: true);
            if (!look.ShowsNoMoreThan(setAside) || IsUnfinished(i))
                return new(newest, first, Since: false);
            if (!look.IsClear(setAside))
                continue;
            newest ??= look;
            first = look;
            if (look != newest && newest.Since(look) >= enough)
                return new(newest, first, Since: true);
        }

        return new(newest, first, Since: true);
    }

    /// <summary>At least half of the signs were taken here, and no look within reach has them all.</summary>
    private bool IsUnfinished(int index)
    {
        if (IsOfFirstLook(taken[index]))
            return false;
        var look = At(index);
        if (look.Complete || look.Known * 2 < needed.Length)
            return look.Known == 0 && Nothing(taken[index]);
        for (var i = index + 1; i < taken.Length && taken[i].When.Latest <= look.When.Earliest + rules.Within; i++)
            if (At(i).Complete)
                return false;
        return Alone(index) * 2 >= needed.Length;
    }

    /// <summary>How many signs the entries from the last whole look up to this one hold.</summary>
    private int Alone(int index)
    {
        var seen = new HashSet<Input>();
        for (var i = index; i >= 0 && taken[i].When.Latest >= taken[index].When.Latest - rules.Within && !At(i).Complete; i--)
            if (!IsOfFirstLook(taken[i]))
                seen.UnionWith(needed.Where(n => InputSigns.Of(n) is { } sign && sign.Tells(taken[i])));
        return seen.Count;
    }

    /// <summary>Written with a step of the first look, which asks for these signs and no others: nothing was left out.</summary>
    private bool IsOfFirstLook(Dated entry) =>
        casualty.State.Of(Kind.StepLooked).Any(s => s.Id.Device == entry.Id.Device && s.When == entry.When);

    private bool IsOlder(Dated entry, Duration age) => entry.When.Until(casualty.Now).Min > age;

    private static bool Nothing(Dated entry) => entry.As<Payload.SignsTaken>() == new Payload.SignsTaken();

    /// <summary>"No cuff", said after a look, shows nothing of the casualty, and must not make the look a later one.</summary>
    private ShockLook At(int index)
    {
        if (!found.TryGetValue(index, out var look))
            found.Add(
                index,
                look = IsOnlyOfCuff(taken[index]) && index > 0 ? Look(taken[index]) with { When = At(index - 1).When } : Look(taken[index])
            );
        return look;
    }

    private static bool IsOnlyOfCuff(Dated entry) => entry.As<Payload.SignsTaken>() == new Payload.SignsTaken { NoPressureCuff = true };

    private ShockLook Look(Dated entry)
    {
        var at = Instant.Min(entry.When.Latest, casualty.Now);
        var then = casualty.At(at);
        within ??= needed.Append(Input.ShockIndex).ToImmutableSortedDictionary(i => i.Name, _ => rules.Within, StringComparer.Ordinal);
        var evaluator = new CriterionEvaluator(within, new Scene(then, null, [])) { PossiblyFresh = true };
        var findings = casualty.Protocol.Shock.Seen.Select(evaluator.Of).ToArray();
        ImmutableArray<string> Shown(Func<Criterion, bool> which) =>
            [.. findings.Where(f => f.State == Truth.Met && which(f.Criterion)).Select(f => f.Criterion.Id)];
        var known = needed.Count(i => evaluator.IsKnown(i, rules.Within));
        return new(
            entry.When,
            known == needed.Length,
            Shown(c => c.IsStrongSign),
            Shown(c => !c.IsStrongSign),
            findings.Any(f => f.State == Truth.Unknown),
            known,
            Readings(evaluator, Input.HeartRate).Select(r => (double?)r.High).Max(),
            Readings(evaluator, Input.Systolic).Where(r => r.Word is null).Select(r => (double?)r.Low).Min()
        );
    }

    private ImmutableArray<Reading> Readings(CriterionEvaluator evaluator, Input input) =>
        needed.Contains(input) && evaluator.IsKnown(input, rules.Within) ? evaluator.Readings(input) : [];
}

/// <summary>The newest and the first of a run of looks without a sign.</summary>
/// <param name="Since">No sign at all was seen before them, as far back as it mattered.</param>
internal sealed record ClearSpan(ShockLook? Newest, ShockLook? First, bool Since)
{
    /// <summary>Null where there is no clear look.</summary>
    public Duration? Apart =>
        Newest is null ? null
        : Newest == First ? Duration.Zero
        : Newest.Since(First!);
}
