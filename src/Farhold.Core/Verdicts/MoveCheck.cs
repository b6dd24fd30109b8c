using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Verdicts;

/// <summary>One thing to make sure of before the casualty is moved.</summary>
/// <param name="Id">Stays the same while the item does; a limb's ends in its name.</param>
/// <param name="Text">A sentence: what has to be so, or what stands against the move.</param>
/// <param name="State">Not met: it stands against the move. Unknown: the record does not say, so somebody has to look.</param>
/// <param name="Sources">Keys of the protocol's source list.</param>
public sealed record MoveItem(string Id, string Text, Truth State, ImmutableArray<string> Sources)
{
    /// <summary>The move has to wait for it.</summary>
    public bool Holds { get; init; }
}

/// <summary>The check before a move: what the record answers, and what is left to be looked at.</summary>
/// <remarks>
/// Sources: tourniquet and dressing looked at with every movement, and in sight: JTS combat medic module. No attempt and no close watch on
/// the move: TCCC, design. Padding, straps, lines, who gives the word: common practice.
/// </remarks>
public static class MoveCheck
{
    /// <summary>A wound that has to be looked at this often can't be watched on the way (common practice, TCCC; minutes: design).</summary>
    private static readonly Duration Close = Duration.FromMinutes(2);

    /// <summary>From here on pain is eased before anything else that hurts (the protocol's own limit for a soft sign).</summary>
    private const double MuchPain = 5;

    /// <summary>Most decisive first.</summary>
    public static ImmutableArray<MoveItem> Of(State state, Judgement judged, Movement how)
    {
        var far = how is Movement.Walked or Movement.Carried or Movement.Vehicle or Movement.Boat or Movement.Aircraft;
        return
        [
            Bleeding(state, judged),
            .. Attempts(judged),
            .. judged.Observed.Select(w => Watched(w, judged, far)),
            .. judged.Limbs.SelectMany(l => Tied(l, state, judged)),
            Shock(judged),
            Pain(state, judged),
            Warmth(state, judged),
            .. judged.Limbs.IsEmpty && judged.Observed.IsEmpty ? (MoveItem[])[] : [Ask("reach", VerdictTexts.MoveNothingOver, "JTS-medic")],
            .. far ? OnTheWay(state, judged, how) : [],
            Ask("word", VerdictTexts.MoveOneCommands, "common"),
        ];
    }

    /// <summary>Why a move has to wait, a sentence each; empty where nothing that is known stands against it.</summary>
    public static ImmutableArray<string> Against(State state, Judgement judged, Payload.CasualtyMoved move) =>
        [.. Of(state, judged, move.How).Where(i => i is { Holds: true, State: Truth.NotMet }).Select(i => i.Text)];

    private static MoveItem Bleeding(State state, Judgement judged)
    {
        if (judged.Due.FirstOrDefault(d => d.AtOnce) is { } now)
            return new("bleeding", Plain.Line(VerdictTexts.MoveBleedingFirst(now.Text.TrimEnd('.'))), Truth.NotMet, ["common"])
            {
                Holds = true,
            };
        var looked = state
            .Of(Kind.CasualtyLookedOver)
            .LastOrDefault(d => d.When.Latest <= judged.At && d.As<Payload.CasualtyLookedOver>().BleedingElsewhere is not null);
        return
            looked?.As<Payload.CasualtyLookedOver>().BleedingElsewhere == false
            && IsFresh(looked.When, judged, "bleedingElsewhere")
            && !judged.Due.Any(d => CareTask.Is(TaskNames.Effect, d.Task) && d.At <= judged.At)
            ? new("bleeding", VerdictTexts.MoveNothingBleeds(Ago(looked.When, judged)), Truth.Met, ["common"])
            : Ask("bleeding", VerdictTexts.MoveWoundsLooked, "common");
    }

    private static IEnumerable<MoveItem> Attempts(Judgement judged)
    {
        var under = judged
            .Limbs.Where(l => l.Attempt is not null)
            .Select(l => l.Limb)
            .Concat(judged.Observed.Where(w => w.Attempt is not null).Select(w => w.Limb))
            .ToArray();
        foreach (var limb in under)
            yield return new(
                $"attempt.{Wire.Word(limb)}",
                VerdictTexts.MoveAttemptUnderWay(Say.Limb(limb)),
                Truth.NotMet,
                ["TCCC", "design"]
            )
            {
                Holds = true,
            };
        if (under.Length == 0)
            yield return new("attempt", VerdictTexts.MoveNoAttempt, Truth.Met, ["design"]);
        foreach (var limb in judged.Limbs.Where(l => l is { Verdict: Verdict.Attempt, Attempt: null }))
            yield return Ask($"decide.{Wire.Word(limb.Limb)}", VerdictTexts.MoveAttemptPossible(Say.Limb(limb.Limb)), "TCCC", "design");
    }

    private static MoveItem Watched(ObservedLimb limb, Judgement judged, bool far)
    {
        var every = LimbObservation.Every(limb, judged.Protocol.Watch, judged.At);
        var id = $"watch.{Wire.Word(limb.Limb)}";
        var loosened = VerdictTexts.MoveLetGo(Say.Limb(limb.Limb), Ago(limb.Loosened, judged));
        if (limb.Bleeding == Truth.Met || every is null || every <= Close)
            return far
                ? new(
                    id,
                    VerdictTexts.MoveNeedsEyes(
                        char.ToLowerInvariant(loosened[0]).ToString(),
                        loosened[1..],
                        every is { } often ? VerdictTexts.MoveEvery(Say.Duration(often)) : VerdictTexts.MoveUnbroken
                    ),
                    Truth.NotMet,
                    ["TCCC", "design"]
                )
                {
                    Holds = true,
                }
                : Ask(id, VerdictTexts.MoveOneWatches(loosened), "TCCC", "design");
        return Ask(id, VerdictTexts.MoveLooseReady(loosened), "JTS-medic");
    }

    private static IEnumerable<MoveItem> Tied(LimbVerdict limb, State state, Judgement judged)
    {
        var (name, word) = (Say.Limb(limb.Limb), Wire.Word(limb.Limb));
        var looked = LastLook(limb.Limb, state, judged);
        var due = judged.Due.FirstOrDefault(d => d.Limb == limb.Limb && CareTask.Is(LookInterval.Tourniquet, d.Task));
        var seen = looked is { } at ? VerdictTexts.MoveLookedAt(Ago(at, judged)) : VerdictTexts.MoveNotLookedAt;
        yield return limb.Clock.Tight == Truth.Met && looked is not null && !(due?.At <= judged.At)
            ? new($"tight.{word}", VerdictTexts.MoveTight(name, seen), Truth.Met, ["JTS-medic"])
            : Ask($"tight.{word}", VerdictTexts.MoveTightInPlace(name, seen), "JTS-medic");
        yield return Pulse(limb, state, judged);
        yield return Ask($"time.{word}", VerdictTexts.MoveTimeWritten(name), "common");
    }

    private static MoveItem Pulse(LimbVerdict limb, State state, Judgement judged)
    {
        var (name, id) = (Say.Limb(limb.Limb), $"pulse.{Wire.Word(limb.Limb)}");
        var felt = state.WithSign(SignRead.DistalPulse(limb.Limb)).LastOrDefault(s => s.When.Latest <= judged.At);
        if (felt is null || limb.Clock.FirstTightened.Latest > felt.When.Earliest)
            return Ask(id, VerdictTexts.MovePulseUnfelt(name), "Shackelford-2015");
        if (felt.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present)
            return new(id, VerdictTexts.MovePulseFelt(name, Ago(felt.When, judged)), Truth.NotMet, ["Shackelford-2015"]);
        var due = judged.Due.FirstOrDefault(d => d.Limb == limb.Limb && CareTask.Is("pulse-beyond", d.Task));
        var text = VerdictTexts.MoveNoPulse(name, Ago(felt.When, judged));
        return due?.At <= judged.At ? Ask(id, text, "Shackelford-2015") : new(id, text, Truth.Met, ["Shackelford-2015"]);
    }

    private static MoveItem Shock(Judgement judged) =>
        judged.Shock.State switch
        {
            Truth.Met => new("shock", VerdictTexts.MoveShock, Truth.NotMet, ["common", "JTS-shock"]),
            Truth.NotMet => new("shock", VerdictTexts.MoveNoShock, Truth.Met, ["common"]),
            _ => Ask("shock", VerdictTexts.MoveShockLooked, "common", "JTS-shock"),
        };

    private static MoveItem Pain(State state, Judgement judged)
    {
        var last = state.Of(Kind.SignsTaken).LastOrDefault(s => s.When.Latest <= judged.At && s.As<Payload.SignsTaken>().Pain is not null);
        var pain = last?.As<Payload.SignsTaken>().Pain;
        if (pain >= MuchPain)
            return new(
                "pain",
                VerdictTexts.MovePainHigh(Say.Number(pain.Value), Ago(last!.When, judged)),
                Truth.NotMet,
                ["common", "design"]
            );
        var fresh = judged.Protocol.CareFreshness.TryGetValue("pain", out var span) ? span : Duration.Zero;
        return last is not null && last.When.Until(judged.At).Max <= fresh
            ? new("pain", VerdictTexts.MovePain(Say.Number(pain!.Value), Ago(last.When, judged)), Truth.Met, ["common"])
            : Ask("pain", VerdictTexts.MovePainAsked, "common");
    }

    private static MoveItem Warmth(State state, Judgement judged)
    {
        var cold = state
            .Of(Kind.CasualtyLookedOver)
            .LastOrDefault(d => d.When.Latest <= judged.At && d.As<Payload.CasualtyLookedOver>().VeryCold is not null);
        if (cold?.As<Payload.CasualtyLookedOver>().VeryCold == true)
            return new("warmth", VerdictTexts.MoveVeryCold(Ago(cold.When, judged)), Truth.NotMet, ["TCCC-warmth"]);
        return Ask("warmth", VerdictTexts.MoveWrapped, "TCCC-warmth");
    }

    private static IEnumerable<MoveItem> OnTheWay(State state, Judgement judged, Movement how)
    {
        yield return Watcher(state, judged);
        if (LookInterval.Of(judged) is { } every && every > Close)
            yield return Ask("stops", VerdictTexts.MoveStops(Say.Duration(every)), "JTS-crush", "design");
        if (how == Movement.Walked)
            yield break;
        if (!judged.Limbs.IsEmpty)
            yield return Ask("padding", VerdictTexts.MovePadding, "common");
        yield return Ask("straps", VerdictTexts.MoveStraps, "common");
        yield return Ask("lines", VerdictTexts.MoveLines, "common");
        if (
            how switch
            {
                Movement.Vehicle => VerdictTexts.MoveInVehicle,
                Movement.Boat => VerdictTexts.MoveInBoat,
                Movement.Aircraft => VerdictTexts.MoveInAircraft,
                _ => null,
            } is
            { } by
        )
            yield return Ask(Wire.Word(how), by, "common");
    }

    private static MoveItem Watcher(State state, Judgement judged)
    {
        const string Id = "watcher";
        var said = state.Of(Kind.WatchStated).LastOrDefault(w => w.When.Latest <= judged.At);
        return said?.As<Payload.WatchStated>() switch
        {
            { Able: false } => new(Id, VerdictTexts.MoveNoWatcher(Ago(said.When, judged)), Truth.NotMet, ["JTS-medic", "design"]),
            _ => Ask(Id, VerdictTexts.MoveWatcher, "JTS-medic", "design"),
        };
    }

    /// <summary>When tourniquet or wound of a tied limb was last seen.</summary>
    private static Happened? LastLook(Limb limb, State state, Judgement judged)
    {
        var wounds = LimbWounds.Treated(limb, state, judged.At);
        var task = DueList.Name(LookInterval.Tourniquet, limb);
        return state
            .Of(Kind.BleedingChecked)
            .Where(b => wounds.Contains(b.As<Payload.BleedingChecked>().Wound))
            .Concat(state.Of(Kind.TourniquetTightened).Where(t => t.As<Payload.TourniquetTightened>().Limb == limb))
            .Concat(state.Of(Kind.TaskDone).Where(t => t.As<Payload.TaskDone>().Task == task))
            .Where(d => d.When.Latest <= judged.At)
            .Select(d => (Happened?)d.When)
            .MaxBy(w => w!.Value.Earliest);
    }

    private static bool IsFresh(Happened when, Judgement judged, string input) =>
        judged.Protocol.Freshness.TryGetValue(input, out var fresh) && when.Until(judged.At).Max <= fresh;

    private static string Ago(Happened when, Judgement judged) => VerdictTexts.Ago(Say.Elapsed(when.Until(judged.At)));

    private static MoveItem Ask(string id, string text, params ReadOnlySpan<string> sources) => new(id, text, Truth.Unknown, [.. sources]);
}
