using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>A look back over a record: what was known when, delays, gaps, and what went as the protocol asks.</summary>
/// <param name="Until">Up to then.</param>
/// <param name="Points">In order of time.</param>
/// <remarks>
/// Pure. Verdicts are those of <see cref="Replay"/>: with all that the record knows now; beside what was done stands the verdict by what
/// had been written down by then. Of entries in conflict the first reading is gone by.
/// </remarks>
public sealed record LookBack(Instant Until, Rulebook Rules, ImmutableArray<ReviewPoint> Points)
{
    /// <summary>What went as the protocol asks.</summary>
    public IEnumerable<ReviewPoint> Right => Points.Where(p => p.Fits == Truth.Met);

    /// <param name="turns">Of <see cref="Replay.Of"/> up to the same instant; null: they are found here.</param>
    public static LookBack Of(CareRecord record, Rulebook rules, Instant until, IReadOnlyList<Turn>? turns = null)
    {
        var scene = new ReviewScene(record, rules, until, turns ?? [.. Replay.Of(record, rules, until)]);
        return new(
            until,
            rules,
            [
                .. ReviewLimbs
                    .Of(scene)
                    .Concat(ReviewLooks.Of(scene))
                    .Concat(ReviewPeople.Of(scene))
                    .Select(p => p.When.Latest > until ? p with { When = new(p.When.Earliest, until) } : p)
                    .OrderBy(p => p.When.Earliest)
                    .ThenBy(p => p.When.Latest)
                    .ThenBy(p => p.Kind)
                    .ThenBy(p => p.Limb)
                    .ThenBy(p => p.Entries.IsEmpty ? default : p.Entries[0]),
            ]
        );
    }
}
