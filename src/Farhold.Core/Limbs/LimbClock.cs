using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Limbs;

/// <summary>A stretch of time in which flow to a limb was stopped, surely or possibly.</summary>
public readonly record struct Stoppage(Instant From, Instant To, Truth Stopped);

/// <summary>How long a limb has been without blood flow, as of one instant.</summary>
/// <param name="Tight">Whether a tourniquet is tight now.</param>
/// <param name="Tourniquets">Those that are, or may be, tight now; where none is, those still lying on the limb.</param>
/// <param name="FirstTightened">When flow was first stopped. The limits count from here, whatever was slackened later.</param>
/// <param name="SinceFirstTightened">From then to now.</param>
/// <param name="Occluded">Total time without flow: side-by-side tourniquets count once.</param>
/// <param name="CurrentStretch">
/// Since flow was last stopped; zero if it surely is not now. A second tourniquet beside a tight one does not begin a new
/// stretch. Where it is unknown whether one is tight, from zero to the longest possible.
/// </param>
/// <param name="Stretches">Every time in which flow was, or may have been, stopped, in order.</param>
public sealed record LimbClock(
    Limb Limb,
    Truth Tight,
    ImmutableArray<string> Tourniquets,
    Happened FirstTightened,
    Elapsed SinceFirstTightened,
    Elapsed Occluded,
    Elapsed CurrentStretch,
    ImmutableArray<Stoppage> Stretches
)
{
    /// <summary>The clock of a limb, or null if no tourniquet was ever on it up to <paramref name="now"/>.</summary>
    public static LimbClock? Of(Limb limb, State state, Instant now)
    {
        var lives = TourniquetLife.On(limb, state, now);
        if (lives.IsEmpty)
            return null;
        var stretches = StretchesOf(lives, now);
        var tight = lives.Aggregate(Truth.NotMet, (t, life) => t.Or(life.KnownTightAt(now)));
        var first = new Happened(
            lives.Min(l => l.Tightened.Min(t => t.When.Earliest)),
            lives.Min(l => l.Tightened.Min(t => t.When.Latest))
        );
        var tightOnes = lives.Where(l => l.TightAt(now) != Truth.NotMet);
        var lyingOn = lives.Where(l => l.LeftInPlace);
        return new(
            limb,
            tight,
            [.. (tight == Truth.NotMet ? lyingOn : tightOnes).Select(l => l.Tourniquet)],
            first,
            first.Until(now),
            new(Total(stretches, Truth.Met), Total(stretches, Truth.Unknown)),
            tight == Truth.NotMet ? default : new(Running(stretches, Truth.Met, now), Running(stretches, Truth.Unknown, now)),
            stretches
        );
    }

    /// <summary>When flow came back, where it surely has; null while a tourniquet is, or may be, tight.</summary>
    public Happened? Loosened() =>
        this is { Tight: Truth.NotMet, Stretches: [.., var last] } ? new(last.Stopped == Truth.Met ? last.To : last.From, last.To) : null;

    /// <summary>Passes through what every tourniquet does in order of time, counting how many are tight and how many may be.</summary>
    private static ImmutableArray<Stoppage> StretchesOf(ImmutableArray<TourniquetLife> lives, Instant now)
    {
        var turns = new List<(Instant At, int Tight, int Perhaps)>();
        foreach (var life in lives)
        {
            var before = Truth.NotMet;
            foreach (var (from, tight) in life.Turns(now))
            {
                turns.Add(
                    (from, Count(tight, Truth.Met) - Count(before, Truth.Met), Count(tight, Truth.Unknown) - Count(before, Truth.Unknown))
                );
                before = tight;
            }
        }

        turns.Sort((a, b) => a.At.CompareTo(b.At));
        var stretches = ImmutableArray.CreateBuilder<Stoppage>();
        var (surely, perhaps) = (0, 0);
        for (var i = 0; i < turns.Count; i++)
        {
            (surely, perhaps) = (surely + turns[i].Tight, perhaps + turns[i].Perhaps);
            var (from, to) = (turns[i].At, i + 1 < turns.Count ? turns[i + 1].At : now);
            var stopped =
                surely > 0 ? Truth.Met
                : perhaps > 0 ? Truth.Unknown
                : Truth.NotMet;
            if (from == to || stopped == Truth.NotMet)
                continue;
            if (stretches.Count > 0 && stretches[^1] is var last && last.To == from && last.Stopped == stopped)
                stretches[^1] = last with { To = to };
            else
                stretches.Add(new(from, to, stopped));
        }

        return stretches.ToImmutable();
    }

    private static int Count(Truth truth, Truth asked) => truth == asked ? 1 : 0;

    private static Duration Total(ImmutableArray<Stoppage> stretches, Truth atLeast) =>
        stretches.Where(s => s.Stopped >= atLeast).Aggregate(Duration.Zero, (sum, s) => sum + (s.To - s.From));

    /// <summary>Length of the unbroken run of stretches that reaches up to now.</summary>
    private static Duration Running(ImmutableArray<Stoppage> stretches, Truth atLeast, Instant now)
    {
        var from = now;
        foreach (var stretch in stretches.Reverse())
        {
            if (stretch.To != from || stretch.Stopped < atLeast)
                break;
            from = stretch.From;
        }

        return now - from;
    }
}
