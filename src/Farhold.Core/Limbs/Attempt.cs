using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Limbs;

/// <summary>How an attempt to convert a tourniquet stands. Only <c>Bled</c> shows that the tourniquet is needed.</summary>
public enum AttemptResult
{
    UnderWay,
    Held,
    Bled,
    Abandoned,
}

/// <summary>One attempt to convert a tourniquet to packing and pressure.</summary>
/// <param name="Ended">When it ended, or when the limb was tightened again; null while under way.</param>
public sealed record Attempt(string Wound, string Tourniquet, Happened Started, Happened? Ended, AttemptResult Result)
{
    /// <summary>The attempts on a limb up to <paramref name="now"/>, in order.</summary>
    /// <remarks>
    /// A limb tightened again after an attempt that held, or during one nobody ended, counts as bled, whatever was written
    /// down, unless the tightening says that it was a precaution or a re-siting: the cautious reading. An end without a
    /// beginning is an attempt of its own.
    /// </remarks>
    public static ImmutableArray<Attempt> On(Limb limb, State state, Instant now)
    {
        var wounds = LimbWounds.Treated(limb, state, now);
        var tightened = state
            .Of(Kind.TourniquetTightened)
            .Where(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb)
            .ToArray();
        var names = tightened.Select(t => t.As<Payload.TourniquetTightened>().Tourniquet).ToHashSet();
        bool Here(string wound, string tourniquet) => names.Contains(tourniquet) || wounds.Contains(wound);

        var starts = state
            .Of(Kind.AttemptStarted)
            .Where(s => s.When.Earliest <= now && s.As<Payload.AttemptStarted>() is var p && Here(p.Wound, p.Tourniquet))
            .ToArray();
        var ends = state
            .Of(Kind.AttemptEnded)
            .Where(e => e.When.Earliest <= now && e.As<Payload.AttemptEnded>() is var p && Here(p.Wound, p.Tourniquet))
            .ToList();

        var attempts = ImmutableArray.CreateBuilder<Attempt>();
        for (var i = 0; i < starts.Length; i++)
        {
            var next = i + 1 < starts.Length ? starts[i + 1].When.Latest : Instant.MaxValue;
            var end = ends.FirstOrDefault(e => e.When.Latest >= starts[i].When.Earliest && e.When.Earliest < next);
            if (end is not null)
                ends.Remove(end);
            attempts.Add(Of(starts[i], end, next, tightened));
        }

        foreach (var end in ends)
            attempts.Add(Of(end, end, Instant.MaxValue, tightened));
        return [.. attempts.OrderBy(a => a.Started.Latest)];
    }

    private static Attempt Of(Dated start, Dated? end, Instant next, Dated[] tightened)
    {
        var (wound, tourniquet) = start.What switch
        {
            Payload.AttemptStarted s => (s.Wound, s.Tourniquet),
            Payload.AttemptEnded e => (e.Wound, e.Tourniquet),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var outcome = end?.As<Payload.AttemptEnded>().Outcome;
        var again = tightened.FirstOrDefault(t =>
            t.When.Latest > start.When.Latest
            && t.When.Earliest < next
            && t.As<Payload.TourniquetTightened>().Why is not (TighteningReason.Precaution or TighteningReason.ReSited)
        );
        var result = outcome switch
        {
            AttemptOutcome.Abandoned => AttemptResult.Abandoned,
            AttemptOutcome.Bled => AttemptResult.Bled,
            _ when again is not null => AttemptResult.Bled,
            AttemptOutcome.Held => AttemptResult.Held,
            null => AttemptResult.UnderWay,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var ended = result == AttemptResult.Bled && outcome != AttemptOutcome.Bled ? again?.When : end?.When;
        return new(wound, tourniquet, start.When, ended, result);
    }
}
