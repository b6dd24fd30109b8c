using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Limbs;

/// <summary>One tourniquet on one limb: when it was tightened there, and when it gave way.</summary>
/// <param name="Tightened">Sorted by latest possible time; at least one.</param>
/// <param name="Loosened">Slackened or removed, sorted likewise.</param>
/// <param name="LeftInPlace">False once the last thing told of it is that it was removed.</param>
/// <param name="PerhapsLoosened">Slackened or removed here or on another limb: no clock stops, but nobody knows that it is still
/// tight.</param>
/// <remarks>
/// Times may be intervals that overlap, so whether it is tight at an instant can be unknown: it is tight in some
/// possible course of events and not in another. Two things at the very same instant count as in unknown order.
/// A tourniquet that turns up on another limb without having been slackened stays tight here: the worse side.
/// </remarks>
internal sealed record TourniquetLife(
    string Tourniquet,
    Limb Limb,
    ImmutableArray<Dated> Tightened,
    ImmutableArray<Dated> Loosened,
    bool LeftInPlace,
    ImmutableArray<Dated> PerhapsLoosened
)
{
    /// <summary>All tourniquets that were ever on the limb up to <paramref name="now"/>, in order of first tightening.</summary>
    public static ImmutableArray<TourniquetLife> On(Limb limb, State state, Instant now)
    {
        if (!state.Of(Kind.TourniquetTightened).Any(t => IsOn(t, limb)))
            return [];
        var tightened = state
            .Of(Kind.TourniquetTightened)
            .Where(t => t.When.Earliest <= now)
            .ToLookup(t => t.As<Payload.TourniquetTightened>().Tourniquet);
        var loosened = state
            .Of(Kind.TourniquetSlackened)
            .Concat(state.Of(Kind.TourniquetRemoved))
            .Where(l => l.When.Earliest <= now)
            .ToLookup(l => NameOf(l.What));
        var names = state
            .Of(Kind.TourniquetTightened)
            .Where(t => t.When.Earliest <= now && IsOn(t, limb))
            .Select(t => t.As<Payload.TourniquetTightened>().Tourniquet)
            .Distinct();
        return [.. names.Select(name => Of(name, limb, [.. tightened[name]], loosened[name]))];
    }

    /// <summary>
    /// Every instant up to <paramref name="now"/> at which it turns tight, or may: between two neighbouring ends of its intervals
    /// nothing changes, so one look between them is enough.
    /// </summary>
    public IEnumerable<(Instant From, Truth Tight)> Turns(Instant now)
    {
        var ends = Tightened
            .Concat(Loosened)
            .SelectMany(d => (Instant[])[d.When.Earliest, d.When.Latest])
            .Append(now)
            .Where(t => t <= now)
            .Distinct()
            .Order()
            .ToArray();
        var (tight, loose) = (new Passing(Tightened), new Passing(Loosened));
        var last = Truth.NotMet;
        for (var i = 0; i + 1 < ends.Length; i++)
        {
            var at = ends[i] + ((ends[i + 1] - ends[i]) / 2);
            var (maybeTight, maybeLoose) = (tight.May(loose, at), loose.May(tight, at));
            var truth =
                !maybeTight ? Truth.NotMet
                : maybeLoose || Tightened[0].When.Latest > at ? Truth.Unknown
                : Truth.Met;
            if (truth != last)
                yield return (ends[i], truth);
            last = truth;
        }
    }

    /// <summary>Whether it is tight just after <paramref name="at"/>.</summary>
    public Truth TightAt(Instant at)
    {
        if (!May(Tightened, Loosened, at))
            return Truth.NotMet;
        return May(Loosened, Tightened, at) || Tightened.All(t => t.When.Latest > at) ? Truth.Unknown : Truth.Met;
    }

    /// <summary>
    /// Whether it is known to be tight just after <paramref name="at"/>; unlike for the clock, what may have happened elsewhere counts.
    /// </summary>
    public Truth KnownTightAt(Instant at) =>
        TightAt(at) is var tight
        && tight == Truth.Met
        && PerhapsLoosened.Any(l => !Tightened.Any(t => l.When.SurelyBefore(t.When) && t.When.Latest <= at))
            ? Truth.Unknown
            : tight;

    /// <summary>Could the last thing that happened up to <paramref name="at"/> be one of <paramref name="these"/>?</summary>
    /// <remarks>If at all, then with the one that can come latest, placed as late as it can be.</remarks>
    private static bool May(ImmutableArray<Dated> these, ImmutableArray<Dated> others, Instant at)
    {
        var placed = Instant.MinValue;
        foreach (var one in these)
            if (one.When.Earliest <= at)
                placed = Instant.Max(placed, Instant.Min(one.When.Latest, at));
        if (placed == Instant.MinValue)
            return false;
        foreach (var other in others)
            if (other.When.Earliest > placed && other.When.Latest <= at)
                return false;
        return true;
    }

    private static TourniquetLife Of(string name, Limb limb, Dated[] everywhere, IEnumerable<Dated> loosenings)
    {
        var moved = everywhere.Any(t => !IsOn(t, limb));
        var begun = everywhere.Min(t => t.When.Earliest);
        var placed = loosenings
            .Select(l => (Loosened: l, On: moved ? LimbAt(l, everywhere) : limb))
            .Where(l => l.Loosened.When.Latest >= begun)
            .ToArray();
        var loosened = placed.Where(l => l.On == limb).Select(l => l.Loosened).Order(DatedOrder.Instance).ToImmutableArray();
        return new(
            name,
            limb,
            [.. everywhere.Where(t => IsOn(t, limb))],
            loosened,
            loosened is [] || loosened[^1].What is not Payload.TourniquetRemoved,
            [.. placed.Where(l => l.On is null).Select(l => l.Loosened)]
        );
    }

    private static bool IsOn(Dated tightened, Limb limb) => tightened.As<Payload.TourniquetTightened>().Limb == limb;

    private static string NameOf(Payload loosened) =>
        loosened switch
        {
            Payload.TourniquetSlackened s => s.Tourniquet,
            Payload.TourniquetRemoved r => r.Tourniquet,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>
    /// The limb that a slackening or removal is about: where the tourniquet was last tightened before it. Null where times
    /// overlap so that it may be either of two: then neither limb's clock stops, which is the worse side.
    /// </summary>
    internal static Limb? LimbAt(Dated loosened, IReadOnlyCollection<Dated> everywhere)
    {
        var surelySince = Instant.MinValue;
        foreach (var t in everywhere)
            if (t.When.Latest <= loosened.When.Earliest)
                surelySince = Instant.Max(surelySince, t.When.Earliest);
        Limb? limb = null;
        foreach (var t in everywhere)
        {
            if (t.When.Earliest > loosened.When.Latest || t.When.Latest < surelySince)
                continue;
            var here = t.As<Payload.TourniquetTightened>().Limb;
            if (limb is { } other && other != here)
                return null;
            limb = here;
        }

        return limb;
    }

    /// <summary>What <see cref="May"/> asks of a list, for instants that only grow: each entry is passed once.</summary>
    private sealed class Passing(ImmutableArray<Dated> entries)
    {
        private readonly Dated[] byEarliest = [.. entries.OrderBy(e => e.When.Earliest)];
        private int begun;
        private int over;
        private Instant latest = Instant.MinValue;
        private Instant surelySince = Instant.MinValue;

        /// <inheritdoc cref="TourniquetLife.May"/>
        public bool May(Passing others, Instant at)
        {
            Pass(at);
            others.Pass(at);
            return begun > 0 && others.surelySince <= Instant.Min(latest, at);
        }

        private void Pass(Instant at)
        {
            for (; begun < byEarliest.Length && byEarliest[begun].When.Earliest <= at; begun++)
                latest = Instant.Max(latest, byEarliest[begun].When.Latest);
            for (; over < entries.Length && entries[over].When.Latest <= at; over++)
                surelySince = Instant.Max(surelySince, entries[over].When.Earliest);
        }
    }
}
