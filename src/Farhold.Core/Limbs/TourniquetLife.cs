using System.Collections.Immutable;
using NodaTime;

namespace Farhold;

/// <summary>One tourniquet on one limb: when it was tightened there, and when it gave way.</summary>
/// <param name="Tightened">Sorted by latest possible time; at least one.</param>
/// <param name="Loosened">Slackened or removed, sorted likewise.</param>
/// <param name="LeftInPlace">False once the last thing told of it is that it was removed.</param>
/// <remarks>
/// Times may be intervals that overlap, so whether it is tight at an instant can be unknown: it is tight in some
/// possible course of events and not in another. Two things at the very same instant count as in unknown order.
/// A tourniquet that turns up on another limb without having been slackened stays tight here: the worse side.
/// </remarks>
internal sealed record TourniquetLife(
    string Tourniquet, Limb Limb, ImmutableArray<Dated> Tightened, ImmutableArray<Dated> Loosened, bool LeftInPlace)
{
    /// <summary>All tourniquets that were ever on the limb up to <paramref name="now"/>, in order of first tightening.</summary>
    public static ImmutableArray<TourniquetLife> On(Limb limb, State state, Instant now)
    {
        var tightened = state.Of(Kind.TourniquetTightened);
        var names = tightened
            .Where(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb)
            .Select(t => t.As<Payload.TourniquetTightened>().Tourniquet)
            .Distinct();
        return [.. names.Select(name => Of(name, limb, state, now))];
    }

    /// <summary>Whether it is tight just after <paramref name="at"/>.</summary>
    public Truth TightAt(Instant at)
    {
        if (!May(Tightened, Loosened, at))
            return Truth.NotMet;
        return May(Loosened, Tightened, at) || Tightened.All(t => t.When.Latest > at) ? Truth.Unknown : Truth.Met;
    }

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

    private static TourniquetLife Of(string name, Limb limb, State state, Instant now)
    {
        var everywhere = state.Of(Kind.TourniquetTightened)
            .Where(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Tourniquet == name).ToArray();
        var slackened = state.Of(Kind.TourniquetSlackened)
            .Where(s => s.As<Payload.TourniquetSlackened>().Tourniquet == name);
        var removed = state.Of(Kind.TourniquetRemoved)
            .Where(r => r.As<Payload.TourniquetRemoved>().Tourniquet == name);
        var loosened = slackened.Concat(removed)
            .Where(l => l.When.Earliest <= now && LimbAt(l, everywhere) == limb)
            .Order(DatedOrder.Instance).ToImmutableArray();
        return new(
            name,
            limb,
            [.. everywhere.Where(t => t.As<Payload.TourniquetTightened>().Limb == limb)],
            loosened,
            loosened is [] || loosened[^1].What is not Payload.TourniquetRemoved);
    }

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
}
