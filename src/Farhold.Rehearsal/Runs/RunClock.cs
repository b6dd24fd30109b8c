using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>How time of a rehearsal passed on the wall's clock: it stood, ran at paces, and was put on.</summary>
/// <param name="Marks">In order; from each of them on it ran so, until it reached the next.</param>
public sealed record RunClock(ImmutableArray<TruthLine.Paced> Marks)
{
    /// <summary>Null where nothing was written down of it.</summary>
    public static RunClock? Of(IEnumerable<TruthLine> truth)
    {
        ImmutableArray<TruthLine.Paced> marks = [.. truth.OfType<TruthLine.Paced>()];
        return marks.IsEmpty ? null : new(marks);
    }

    /// <summary>When the rehearsal began.</summary>
    public Instant From => Marks[0].Wall;

    /// <returns>
    /// Seconds from the scenario's start. Before the first mark time passed as on the wall; where it was put on, a moment of the wall is
    /// the last before that, and one in which the clock stood is that in which it stood.
    /// </returns>
    public double SceneAt(Instant wall)
    {
        if (wall <= Marks[0].Wall)
            return Marks[0].At + (wall - Marks[0].Wall).TotalSeconds;
        var last = Math.Max(0, Index(m => m.Wall <= wall));
        var reached = Marks[last].At + (Marks[last].Rate * (wall - Marks[last].Wall).TotalSeconds);
        return last + 1 < Marks.Length ? Math.Min(reached, Marks[last + 1].At) : reached;
    }

    /// <param name="seconds">From the scenario's start.</param>
    /// <returns>What the wall showed: the first moment where the rehearsal stood, that of the leap where it was put on.</returns>
    public Instant WallAt(double seconds)
    {
        if (seconds < Marks[0].At)
            return Marks[0].Wall + Duration.FromSeconds(seconds - Marks[0].At);
        var first = Index(m => m.At < seconds);
        if (first < 0)
            return Marks[0].Wall;
        var (mark, next) = (Marks[first], first + 1 < Marks.Length ? Marks[first + 1] : null);
        if (mark.Rate <= 0)
            return next?.Wall ?? mark.Wall;
        var reached = mark.Wall + Duration.FromSeconds((seconds - mark.At) / mark.Rate);
        return next is not null && reached > next.Wall ? next.Wall : reached;
    }

    /// <summary>Of the last mark of which something holds; −1 where it holds of none.</summary>
    private int Index(Func<TruthLine.Paced, bool> holds)
    {
        for (var i = Marks.Length - 1; i >= 0; i--)
            if (holds(Marks[i]))
                return i;
        return -1;
    }
}
